// The laws of distances in space; figures derived.
#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "geometry/space.h"

namespace squaredig::geometry {
namespace {

using Triangle = std::array<Point3, 3>;

// The least of many pairs of points: never below the true distance, and close above it.
double by_points(const Point3& a, const Point3& b, const Triangle& t) {
  double least = 1e9;
  const int n = 60;
  for (int i = 0; i <= n; ++i)
    for (int j = 0; j <= n; ++j)
      for (int k = 0; j + k <= n; ++k) {
        const double s = static_cast<double>(i) / n, u = static_cast<double>(j) / n,
                     v = static_cast<double>(k) / n, w = 1 - u - v;
        const double dx = a.x + s * (b.x - a.x) - (w * t[0].x + u * t[1].x + v * t[2].x);
        const double dy = a.y + s * (b.y - a.y) - (w * t[0].y + u * t[1].y + v * t[2].y);
        const double dz = a.z + s * (b.z - a.z) - (w * t[0].z + u * t[1].z + v * t[2].z);
        least = std::min(least, std::sqrt(dx * dx + dy * dy + dz * dz));
      }
  return least;
}

TEST(Space, OrderOfEndsAndCornersChangesNothing_space_1) {
  constexpr unsigned kSeed = 8;
  std::mt19937 random(kSeed);
  std::uniform_real_distribution<double> at(-3, 3);
  const auto point = [&] { return Point3{at(random), at(random), at(random)}; };
  for (int i = 0; i < 40; ++i) {
    const Point3 a = point(), b = point();
    const Triangle t{point(), point(), point()};
    const double d = nearest(a, b, t).distance;
    EXPECT_NEAR(nearest(b, a, t).distance, d, 1e-9) << kSeed;
    EXPECT_NEAR(nearest(a, b, Triangle{t[2], t[1], t[0]}).distance, d, 1e-9) << kSeed;
    const double points = by_points(a, b, t);
    EXPECT_LE(d, points + 1e-9) << kSeed;
    EXPECT_NEAR(d, points, 0.12) << kSeed;
  }
}

TEST(Space, PiercingIsDistanceZero_space_2) {
  const Triangle t{Point3{0, 0, 0}, {4, 0, 0}, {0, 4, 0}};
  const auto through = nearest({1, 1, -2}, {1, 1, 5}, t);
  EXPECT_EQ(through.distance, 0);
  EXPECT_NEAR(through.at.z, 0, 1e-12);
  EXPECT_NEAR(nearest({1, 1, 2}, {1, 1, 5}, t).distance, 2, 1e-12);
  EXPECT_NEAR(nearest({-3, 1, -5}, {-3, 1, 5}, t).distance, 3, 1e-12);
  // parallel above an edge, and beyond it
  EXPECT_NEAR(nearest({-1, 0, 2}, {6, 0, 2}, t).distance, 2, 1e-12);
  EXPECT_NEAR(nearest({-1, -3, 4}, {6, -3, 4}, t).distance, 5, 1e-12);
}

TEST(Space, SegmentsInPlan) {
  EXPECT_EQ(nearest({0, 0}, {4, 4}, {0, 4}, {4, 0}).distance, 0);
  EXPECT_NEAR(nearest({0, 0}, {4, 4}, {0, 4}, {4, 0}).at.x, 2, 1e-12);
  EXPECT_NEAR(nearest({0, 0}, {4, 0}, {1, 2}, {3, 3}).distance, 2, 1e-12);
  EXPECT_NEAR(nearest({0, 0}, {4, 0}, {7, 4}, {9, 4}).distance, 5, 1e-12);
}

}  // namespace
}  // namespace squaredig::geometry
