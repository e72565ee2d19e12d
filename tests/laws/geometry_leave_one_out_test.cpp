// The laws of heights without a vertex.
#include <gtest/gtest.h>

#include <cmath>
#include <numeric>
#include <random>

#include "geometry/leave_one_out.h"
#include "geometry/locate.h"
#include "geometry/triangulate.h"

namespace squaredig::geometry {
namespace {

constexpr unsigned kSeed = 77;

std::vector<Point3> scattered(double (*height)(double, double)) {
  std::mt19937 random(kSeed);
  std::uniform_real_distribution<double> at(0, 40);
  std::vector<Point3> points;
  for (int i = 0; i < 120; ++i) {
    const double x = at(random), y = at(random);
    points.push_back({x, y, height(x, y)});
  }
  return points;
}

std::vector<Index> all_of(const Surface& surface) {
  std::vector<Index> vertices(surface.vertices.size());
  std::iota(vertices.begin(), vertices.end(), 0);
  return vertices;
}

TEST(LeaveOneOut, OnAPlaneTheHeightIsItsOwn_leave_one_out_1) {
  const auto made =
      triangulate({scattered([](double x, double y) { return 3 + 0.2 * x - 0.1 * y; }), {}, {}, 0});
  const auto heights = heights_without(made.surface, all_of(made.surface));
  std::size_t told = 0;
  for (std::size_t v = 0; v < heights.size(); ++v)
    if (heights[v]) {
      ++told;
      EXPECT_NEAR(*heights[v], made.surface.vertices[v].z, 1e-9);
    }
  EXPECT_GT(told, 90U);
}

TEST(LeaveOneOut, EqualsTheWholeTriangulatedAgain_leave_one_out_2) {
  const auto points =
      scattered([](double x, double y) { return std::sin(x / 3) + std::cos(y / 4); });
  const auto made = triangulate({points, {}, {}, 0});
  const auto heights = heights_without(made.surface, all_of(made.surface));
  for (std::size_t v = 0; v < heights.size(); ++v) {
    if (!heights[v]) continue;
    auto fewer = points;
    fewer.erase(fewer.begin() + made.source[v]);
    const auto again = triangulate({fewer, {}, {}, 0});
    const Locator locator(again.surface);
    EXPECT_NEAR(*heights[v], locator.height_at(made.surface.vertices[v].plan()).value(), 1e-9)
        << kSeed;
  }
}

}  // namespace
}  // namespace squaredig::geometry
