// The law of parts of a ground.
#include <gtest/gtest.h>

#include "ground/part.h"

namespace squaredig::ground {
namespace {

TEST(Part, EveryVertexKeepsItsSourceAndSigmas_part_1) {
  GroundSurface ground;
  ground.sigma_common = Length::millimetres(5);
  for (int i = 0; i < 20; ++i)
    for (const double y : {0.0, 1.0}) {
      const auto n = static_cast<double>(ground.source.size());
      ground.surface.vertices.push_back({static_cast<double>(i), y, 0.5 * i});
      ground.source.push_back(static_cast<geometry::Index>(100 + ground.source.size()));
      ground.sigma_height.push_back(Length::millimetres(n));
      ground.sigma_plan.push_back(Length::millimetres(2 * n));
    }
  for (geometry::Index i = 0; i < 19; ++i) {
    ground.surface.triangles.push_back({2 * i, 2 * i + 2, 2 * i + 1});
    ground.surface.triangles.push_back({2 * i + 2, 2 * i + 3, 2 * i + 1});
  }
  geometry::link_neighbours(ground.surface);
  const std::vector<geometry::Point2> seed{{10.2, 0.3}};
  const auto part = part_of(ground, seed, {grid_point(9.5, 0), grid_point(11.5, 1)});
  ASSERT_EQ(part.source.size(), 8U);
  EXPECT_EQ(part.sigma_common, ground.sigma_common);
  for (std::size_t i = 0; i < part.source.size(); ++i) {
    const auto whole = static_cast<std::size_t>(part.source[i] - 100);
    EXPECT_EQ(part.surface.vertices[i], ground.surface.vertices[whole]);
    EXPECT_EQ(part.sigma_height[i], ground.sigma_height[whole]);
    EXPECT_EQ(part.sigma_plan[i], ground.sigma_plan[whole]);
  }
}

}  // namespace
}  // namespace squaredig::ground
