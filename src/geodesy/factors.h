// From lengths on the grid to lengths on the ground.
//
// Frame and units: metres; heights above the ellipsoid where the name says so.
// Laws: factors.1 ground x combined = grid; factors.2 the combined factor is the product of its two
//   parts.
// Accuracy: one rounding per operation. A height wrong by 6.5 m changes the factor by 1 ppm.
// Errors: none.
// Source: elevation factor R / (R + h) and combined factor: NOAA Manual NOS NGS 5, section 4.4.
#pragma once

#include "geodesy/grid.h"

namespace squaredig::geodesy {

// Length on the ellipsoid over length at height h above it: R / (R + h).
// Requires: radius > 0 and height > -radius.
Ratio elevation_factor(Length radius, Length ellipsoidal_height);

// Grid length over ground length.
Ratio combined_factor(Ratio point_scale, Ratio elevation);
Length to_ground_length(Length grid, Ratio combined);

// Everything about one place of work, as the result tells it.
struct WorkFactors {
  GridFactors grid;
  Ratio elevation;
  Ratio combined;
};
WorkFactors work_factors(const Grid& grid, GridPoint at, Length ellipsoidal_height);

}  // namespace squaredig::geodesy
