// What stands between lengths in the field and lengths on the grid, for one place of work.
//
// Frame and units: the grid; heights of the job's datum. Grid length = arc at the ellipsoid x
// scale. Laws: work_scale.1 a stated factor gives grid = ground x factor at the instrument's own
// height;
//   work_scale.2 without a grid, grid lengths are ground lengths at the instrument's height.
// Accuracy: point scale by a quadratic through five points 1 km apart: 1e-9 over 10 km; mean radius
//   of the place for all its lines.
// Errors: Refusal as geodesy::Grid::open.
// Source: combined factor: NOAA Manual NOS NGS 5, section 4.4.
#pragma once

#include <functional>

#include "field/field_input.h"
#include "field/ray.h"
#include "quantity/result_head.h"

namespace squaredig::field {

struct WorkScale {
  Earth earth;
  Length separation;  // of geoid and ellipsoid, at the place
  std::function<Ratio(GridPoint, Length above_ellipsoid)> grid_over_arc;
};

// What had to be assumed goes to `head`.
WorkScale work_scale(const FieldInput& input, GridPoint near, ResultHead& head);

}  // namespace squaredig::field
