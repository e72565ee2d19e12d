#include <gtest/gtest.h>

#include "design/footprint.h"
#include "geometry/slab.h"
#include "grounds.h"

namespace squaredig {
namespace {

TEST(Footprint, PartsTileTheWidenedOutlineAndNoMore_footprint_1) {
  auto input = testing::plain_pit(1, 1, 0, Batter{});
  input.tank.corner_a.reset();
  input.tank.outline = {grid_point(0, 0), grid_point(0, 14), grid_point(6, 14),
                        grid_point(6, 5), grid_point(15, 5), grid_point(15, 0)};
  const auto tank = design::place_tank(input);
  const geometry::SiteFrame frame;
  const auto area = [&](double beyond) {
    double sum = 0;
    for (const auto& part : design::footprint_parts(tank, frame, Length::metres(beyond), {}))
      sum += geometry::area_of(part);
    return sum;
  };
  EXPECT_NEAR(area(0), 14 * 6 + 9 * 5, 1e-9);
  const auto parts = design::footprint_parts(tank, frame, Length{}, {});
  for (std::size_t i = 0; i < parts.size(); ++i)
    for (std::size_t j = 0; j < i; ++j)
      EXPECT_TRUE(geometry::split_at(parts[i], parts[j]).inside.empty());
  // half a metre on every side: 15 x 7 and 9 x 6
  EXPECT_NEAR(area(0.5), 15 * 7 + 9 * 6, 1e-9);
  EXPECT_THROW(area(-4), Refusal);
}

design::DesignInput outlined(const std::vector<GridPoint>& clockwise) {
  auto input = testing::plain_pit(1, 1, 0, Batter{});
  input.tank.corner_a.reset();
  input.tank.outline = clockwise;
  return input;
}

double dug_volume(const design::DesignInput& input) {
  testing::MadeSurvey survey(testing::grid_surface(150, 37.3, [](double, double) { return 2.0; }));
  return design::excavate(input, survey).dug.volume;
}

// Work must not double with every re-entrant corner: these have 23 and 22 of them.
TEST(Footprint, ManyReEntrantCornersAreCoveredInTime) {
  std::vector<GridPoint> stair{grid_point(0, 0)};
  double area = 0;
  for (int i = 0; i < 24; ++i) {
    const double x = 2.0 * i, top = 96 - 3.0 * i;
    stair.push_back(grid_point(x, top));
    stair.push_back(grid_point(x + 2, top));
    area += 2 * top;
  }
  stair.push_back(grid_point(48, 0));
  EXPECT_NEAR(dug_volume(outlined(stair)), 2 * area, 1e-8 * area);

  std::vector<GridPoint> comb{grid_point(0, 0)};
  area = 5.0 * (8 * 11 + 4);
  for (int i = 0; i < 12; ++i) {
    const double x = 8.0 * i, top = 15 + i % 3;
    comb.insert(comb.end(), {grid_point(x, top), grid_point(x + 4, top)});
    area += 4 * (top - 5);
    if (i < 11) comb.insert(comb.end(), {grid_point(x + 4, 5), grid_point(x + 8, 5)});
  }
  comb.push_back(grid_point(92, 0));
  EXPECT_NEAR(dug_volume(outlined(comb)), 2 * area, 1e-8 * area);
  const auto tank = design::place_tank(outlined(comb));
  double tiled = 0;
  for (const auto& part : design::footprint_parts(tank, geometry::SiteFrame{}, Length{}, {}))
    tiled += geometry::area_of(part);
  EXPECT_NEAR(tiled, area, 1e-8);
}

}  // namespace
}  // namespace squaredig
