#include "geodesy/factors.h"

namespace squaredig::geodesy {

Ratio elevation_factor(Length radius, Length ellipsoidal_height) {
  return Ratio::of(radius / (radius + ellipsoidal_height));
}

Ratio combined_factor(Ratio point_scale, Ratio elevation) {
  return Ratio::of(point_scale.value() * elevation.value());
}

Length to_ground_length(Length grid, Ratio combined) { return grid / combined.value(); }

WorkFactors work_factors(const Grid& grid, GridPoint at, Length ellipsoidal_height) {
  const GridFactors f = grid.factors(at);
  const Ratio elevation = elevation_factor(f.mean_radius, ellipsoidal_height);
  return {f, elevation, combined_factor(f.point_scale, elevation)};
}

}  // namespace squaredig::geodesy
