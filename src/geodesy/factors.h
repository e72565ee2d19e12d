// Between lengths on the ground and lengths on the grid.
//
// Frame and units: metres; heights above the ellipsoid where the name says so.
// Laws: factors.1 grid = ground x combined, and back; factors.2 the combined factor is the product
// of
//   its two parts.
// Accuracy: one rounding per operation. A height wrong by 6.5 m changes the factor by 1 ppm.
// Errors: none.
// Source: elevation factor R / (R + h) and combined factor: NOAA Manual NOS NGS 5, section 4.4;
// line
//   scale by Simpson's rule over the two ends and the middle: GDA2020 Technical Manual v1.3.
#pragma once

#include "geodesy/grid.h"

namespace squaredig::geodesy {

// Length on the ellipsoid over length at height h above it: R / (R + h).
// Requires: radius > 0 and height > -radius.
Ratio elevation_factor(Length radius, Length ellipsoidal_height);

// Grid length over ground length.
Ratio combined_factor(Ratio point_scale, Ratio elevation);
Length to_grid_length(Length ground, Ratio combined);
Length to_ground_length(Length grid, Ratio combined);

// Everything about one place of work, as the result tells it.
struct WorkFactors {
  GridFactors grid;
  Ratio elevation;
  Ratio combined;
};
WorkFactors work_factors(const Grid& grid, GridPoint at, Length ellipsoidal_height);

// Grid length over ellipsoid length of a straight grid line: (k1 + 4 km + k2) / 6.
Ratio line_scale(const Grid& grid, GridPoint from, GridPoint to);

}  // namespace squaredig::geodesy
