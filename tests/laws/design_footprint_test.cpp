#include <gtest/gtest.h>

#include "design/footprint.h"
#include "geometry/slab.h"
#include "grounds.h"

namespace squaredig {
namespace {

// What the rings cover together: each adds what those before it leave.
double covered(const std::vector<geometry::Polygon>& rings) {
  double area = 0;
  for (std::size_t i = 0; i < rings.size(); ++i) {
    std::vector<geometry::Polygon> rest{rings[i]};
    for (std::size_t j = 0; j < i; ++j) {
      std::vector<geometry::Polygon> next;
      for (const auto& polygon : rest) {
        auto split = geometry::split_at(polygon, rings[j]);
        next.insert(next.end(), split.outside.begin(), split.outside.end());
      }
      rest = std::move(next);
    }
    for (const auto& polygon : rest) area += geometry::area_of(polygon);
  }
  return area;
}

TEST(Footprint, RingsCoverTheWidenedOutlineAndNoMore_footprint_1) {
  auto input = testing::plain_pit(1, 1, 0, Batter{});
  input.tank.corner_a.reset();
  input.tank.outline = {grid_point(0, 0), grid_point(0, 14), grid_point(6, 14),
                        grid_point(6, 5), grid_point(15, 5), grid_point(15, 0)};
  const auto tank = design::place_tank(input);
  const geometry::SiteFrame frame;
  const auto area = [&](double beyond) {
    return covered(design::footprint_rings(tank, frame, Length::metres(beyond), {}));
  };
  EXPECT_NEAR(area(0), 14 * 6 + 9 * 5, 1e-9);
  // half a metre on every side: 15 x 7 and 9 x 6
  EXPECT_NEAR(area(0.5), 15 * 7 + 9 * 6, 1e-9);
  EXPECT_THROW(area(-4), Refusal);
}

}  // namespace
}  // namespace squaredig
