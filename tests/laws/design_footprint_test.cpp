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

}  // namespace
}  // namespace squaredig
