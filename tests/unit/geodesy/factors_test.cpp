#include "geodesy/factors.h"

#include <gtest/gtest.h>

namespace squaredig::geodesy {
namespace {

TEST(Factors, GroundTimesCombinedIsGrid_factors_1) {
  // 24 m on the ground at 0.9996 are 9.6 mm short on the grid: arithmetic
  EXPECT_NEAR(to_ground_length(Length::metres(24 - 0.0096), Ratio::of(0.9996)).in_metres(), 24,
              1e-14);
}

TEST(Factors, CombinedIsTheProductOfItsParts_factors_2) {
  const Grid grid = Grid::open("EPSG:2157", {"job.toml", 1, 1});
  const WorkFactors f = work_factors(grid, grid_point(715830.25, 734697.6), Length::metres(117));
  EXPECT_DOUBLE_EQ(f.combined.value(), f.grid.point_scale.value() * f.elevation.value());
  const double radius = f.grid.mean_radius.in_metres();
  EXPECT_DOUBLE_EQ(f.elevation.value(), radius / (radius + 117));
  // the mean radius lies between the polar radius of curvature over the pole and at the equator
  EXPECT_GT(radius, 6356752.314);
  EXPECT_LT(radius, 6399593.626);
}

}  // namespace
}  // namespace squaredig::geodesy
