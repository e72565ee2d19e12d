#include "geometry/locate.h"

#include <gtest/gtest.h>

#include <cmath>

#include "unit/geometry/grounds.h"

namespace squaredig::geometry {
namespace {
using namespace testing;

bool inside(const std::array<Point3, 3>& c, Point2 p, double grace) {
  for (std::size_t i = 0; i < 3; ++i)
    if (orient(c[i].plan(), c[(i + 1) % 3].plan(), p) < -grace) return false;
  return true;
}

TEST(Locate, AgreesWithTryingEveryTriangle) {
  TriangulationInput input = points_alone(random_points(600, 50, 61));
  input.longest_edge = 3;
  const Surface s = triangulate(input).surface;
  const Locator locator(s);
  std::mt19937 random(62);
  for (int i = 0; i < 3000; ++i) {
    const Point2 p{random_millimetres(random, 60) - 5, random_millimetres(random, 60) - 5};
    bool any = false;
    for (std::size_t t = 0; t < s.triangles.size(); ++t)
      any |= inside(s.corners(static_cast<Index>(t)), p, 0);
    const auto found = locator.triangle_at(p);
    ASSERT_EQ(found.has_value(), any) << "seed 62: " << p.x << " " << p.y;
    EXPECT_EQ(locator.height_at(p).has_value(), any);
    if (found) {
      EXPECT_TRUE(inside(s.corners(*found), p, 1e-9));
      EXPECT_NEAR(*locator.height_at(p), s.plane(*found).at(p), 1e-9);
    }
  }
}

TEST(Locate, NothingOutsideAndNothingInNothing) {
  const Locator nothing{Surface{}};
  EXPECT_FALSE(nothing.triangle_at({0, 0}));
  EXPECT_TRUE(nothing.triangles_in({-1, -1}, {1, 1}).empty());
  const Surface s = triangulate(points_alone(exact_grid(5, 5, 1))).surface;
  const Locator locator(s);
  EXPECT_FALSE(locator.height_at({-0.001, 2}));
  EXPECT_FALSE(locator.height_at({2, 4.001}));
  EXPECT_FALSE(locator.height_at({1e6, 1e6}));
  EXPECT_TRUE(locator.height_at({4, 4}));
}

TEST(Locate, TrianglesInABoxAreAllThatMeetIt) {
  const Surface s = triangulate(points_alone(random_points(400, 40, 63))).surface;
  const Locator locator(s);
  std::mt19937 random(64);
  for (int i = 0; i < 200; ++i) {
    const Point2 low{random_millimetres(random, 40), random_millimetres(random, 40)};
    const Point2 high{low.x + random_millimetres(random, 8), low.y + random_millimetres(random, 3)};
    const std::vector<Index> found = locator.triangles_in(low, high);
    EXPECT_TRUE(std::is_sorted(found.begin(), found.end()));
    EXPECT_EQ(std::adjacent_find(found.begin(), found.end()), found.end());
    for (std::size_t t = 0; t < s.triangles.size(); ++t) {
      const auto c = s.corners(static_cast<Index>(t));
      const auto in_box = [&](const Point3& v) {
        return v.x >= low.x && v.x <= high.x && v.y >= low.y && v.y <= high.y;
      };
      const bool box_near = std::max({c[0].x, c[1].x, c[2].x}) >= low.x &&
                            std::min({c[0].x, c[1].x, c[2].x}) <= high.x &&
                            std::max({c[0].y, c[1].y, c[2].y}) >= low.y &&
                            std::min({c[0].y, c[1].y, c[2].y}) <= high.y;
      bool meets = in_box(c[0]) || in_box(c[1]) || in_box(c[2]);
      for (int k = 0; k <= 10 && !meets; ++k)  // points of the box that lie in the triangle
        for (int m = 0; m <= 10; ++m)
          meets |= inside(
              c, {low.x + k * 0.1 * (high.x - low.x), low.y + m * 0.1 * (high.y - low.y)}, 0);
      const bool has = std::binary_search(found.begin(), found.end(), static_cast<Index>(t));
      EXPECT_TRUE(!meets || has) << "triangle " << t;
      EXPECT_TRUE(!has || box_near) << "triangle " << t;
    }
  }
}

TEST(Locate, LongThinTrianglesAcrossTheWhole) {
  std::vector<Point3> points;
  for (int i = 0; i < 200; ++i) points.push_back({i * 1.0, i * 1.0 + (i % 2) * 0.001, i * 0.5});
  points.push_back({0, 199, 7});
  const Surface s = triangulate(points_alone(points)).surface;
  const Locator locator(s);
  for (std::size_t t = 0; t < s.triangles.size(); ++t) {
    const auto c = s.corners(static_cast<Index>(t));
    const Point2 middle{(c[0].x + c[1].x + c[2].x) / 3, (c[0].y + c[1].y + c[2].y) / 3};
    EXPECT_EQ(locator.triangle_at(middle), static_cast<Index>(t));
  }
}

}  // namespace
}  // namespace squaredig::geometry
