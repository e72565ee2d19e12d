#include "geodesy/factors.h"

namespace squaredig::geodesy {

Ratio elevation_factor(Length radius, Length ellipsoidal_height) {
  return Ratio::of(radius / (radius + ellipsoidal_height));
}

Ratio combined_factor(Ratio point_scale, Ratio elevation) {
  return Ratio::of(point_scale.value() * elevation.value());
}

Length to_grid_length(Length ground, Ratio combined) { return ground * combined.value(); }

Length to_ground_length(Length grid, Ratio combined) { return grid / combined.value(); }

WorkFactors work_factors(const Grid& grid, GridPoint at, Length ellipsoidal_height) {
  const GridFactors f = grid.factors(at);
  const Ratio elevation = elevation_factor(f.mean_radius, ellipsoidal_height);
  return {f, elevation, combined_factor(f.point_scale, elevation)};
}

Ratio line_scale(const Grid& grid, GridPoint from, GridPoint to) {
  const GridPoint middle{from.easting + (to.easting - from.easting) * 0.5,
                         from.northing + (to.northing - from.northing) * 0.5};
  const double k1 = grid.factors(from).point_scale.value();
  const double km = grid.factors(middle).point_scale.value();
  const double k2 = grid.factors(to).point_scale.value();
  return Ratio::of((k1 + 4 * km + k2) / 6);
}

}  // namespace squaredig::geodesy
