#include "geometry/fit_plane.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <random>

namespace squaredig::geometry {
namespace {

std::vector<Point3> random_points(std::mt19937& random, int n) {
  std::uniform_real_distribution<double> unit(0, 1);
  std::vector<Point3> points;
  for (int i = 0; i < n; ++i)
    points.push_back({24 * unit(random), 9.6 * unit(random), 0.02 * unit(random)});
  return points;
}

double range_about(const std::vector<Point3>& points, const Plane& plane) {
  double low = HUGE_VAL, high = -HUGE_VAL;
  for (const Point3& p : points) {
    low = std::min(low, p.z - plane.at(p.plan()));
    high = std::max(high, p.z - plane.at(p.plan()));
  }
  return high - low;
}

// Height of the segment or triangle over a plan position, or nothing where it does not cover it.
std::optional<double> over(const std::array<Point3, 3>& t, Point2 p) {
  const double whole = orient(t[0].plan(), t[1].plan(), t[2].plan());
  if (std::abs(whole) < 1e-12) return std::nullopt;
  double z = 0;
  for (std::size_t k = 0; k < 3; ++k) {
    const double w = orient(p, t[(k + 1) % 3].plan(), t[(k + 2) % 3].plan()) / whole;
    if (w < -1e-12) return std::nullopt;
    z += w * t[k].z;
  }
  return z;
}

// Where two segments cross in plan: the difference of their heights there.
std::optional<double> between(Point3 a, Point3 b, Point3 c, Point3 d) {
  const double across = cross(b.plan() - a.plan(), d.plan() - c.plan());
  if (std::abs(across) < 1e-12) return std::nullopt;
  const double s = cross(c.plan() - a.plan(), d.plan() - c.plan()) / across;
  const double t = cross(c.plan() - a.plan(), b.plan() - a.plan()) / across;
  if (s < -1e-12 || s > 1 + 1e-12 || t < -1e-12 || t > 1 + 1e-12) return std::nullopt;
  return (a.z + s * (b.z - a.z)) - (c.z + t * (d.z - c.z));
}

// The second, dumber answer: the zone is as wide as the hull of the points is thick, vertically,
// and that is seen over a vertex, or where two edges cross. Every four points are tried.
double zone_by_enumeration(const std::vector<Point3>& p) {
  double width = 0;
  const std::size_t n = p.size();
  for (std::size_t a = 0; a < n; ++a)
    for (std::size_t b = a + 1; b < n; ++b)
      for (std::size_t c = b + 1; c < n; ++c)
        for (std::size_t d = 0; d < n; ++d) {
          if (const auto z = over({p[a], p[b], p[c]}, p[d].plan()))
            width = std::max(width, std::abs(*z - p[d].z));
          if (d <= c) continue;
          for (const auto& z : {between(p[a], p[b], p[c], p[d]), between(p[a], p[c], p[b], p[d]),
                                between(p[a], p[d], p[b], p[c])})
            if (z) width = std::max(width, std::abs(*z));
        }
  return width;
}

void expect_proven(const std::vector<Point3>& points, const MinimumZone& zone, double accuracy) {
  // the plane shows the width is enough, the weights that it is not too much
  EXPECT_NEAR(range_about(points, zone.plane), zone.width, accuracy);
  double up = 0, down = 0, x = 0, y = 0, z = 0;
  for (std::size_t k = 0; k < zone.extreme.size(); ++k) {
    const Point3& p = points[static_cast<std::size_t>(zone.extreme[k])];
    (zone.weight[k] > 0 ? up : down) += zone.weight[k];
    x += zone.weight[k] * p.x, y += zone.weight[k] * p.y, z += zone.weight[k] * p.z;
  }
  EXPECT_NEAR(up, 1, 1e-9);
  EXPECT_NEAR(down, -1, 1e-9);
  EXPECT_NEAR(x, 0, 1e-8);
  EXPECT_NEAR(y, 0, 1e-8);
  EXPECT_NEAR(z, zone.width, accuracy);
}

TEST(LeastSquaresPlane, ResidualsSumToZero_fit_1) {
  std::mt19937 random(20260304);
  for (int i = 0; i < 200; ++i) {
    const auto points = random_points(random, 3 + i);
    const auto fit = fit_least_squares(points);
    ASSERT_TRUE(fit) << "seed 20260304, case " << i;
    double sum = 0, by_x = 0, by_y = 0;
    for (std::size_t k = 0; k < points.size(); ++k) {
      sum += fit->residuals[k];
      by_x += fit->residuals[k] * points[k].x;
      by_y += fit->residuals[k] * points[k].y;
    }
    EXPECT_NEAR(sum, 0, 1e-13 * static_cast<double>(points.size()));
    EXPECT_NEAR(by_x, 0, 1e-11);
    EXPECT_NEAR(by_y, 0, 1e-11);
  }
}

TEST(MinimumZone, NeverWiderThanTheLeastSquaresRange_fit_2) {
  std::mt19937 random(20260305);
  for (int i = 0; i < 300; ++i) {
    const auto points = random_points(random, 4 + i % 60);
    const auto zone = fit_minimum_zone(points);
    ASSERT_TRUE(zone) << "seed 20260305, case " << i;
    EXPECT_LE(zone->width, fit_least_squares(points)->range + 1e-15);
    expect_proven(points, *zone, 1e-14);
  }
}

TEST(BestPlanes, APlaneAddedToAllHeightsChangesNoResidual_fit_3) {
  std::mt19937 random(20260306);
  std::uniform_real_distribution<double> unit(-1, 1);
  for (int i = 0; i < 100; ++i) {
    const auto points = random_points(random, 5 + i);
    const double a = 100 * unit(random), b = 0.1 * unit(random), c = 0.1 * unit(random);
    auto tilted = points;
    for (Point3& p : tilted) p.z += a + b * p.x + c * p.y;
    const auto before = fit_least_squares(points), after = fit_least_squares(tilted);
    for (std::size_t k = 0; k < points.size(); ++k)
      EXPECT_NEAR(before->residuals[k], after->residuals[k], 2e-13) << "seed 20260306, case " << i;
    EXPECT_NEAR(fit_minimum_zone(points)->width, fit_minimum_zone(tilted)->width, 2e-13);
  }
}

TEST(MinimumZone, EveryFourPointsTriedFindNothingWider) {
  std::mt19937 random(20260307);
  for (int i = 0; i < 60; ++i) {
    const auto points = random_points(random, 4 + i % 9);
    EXPECT_NEAR(fit_minimum_zone(points)->width, zone_by_enumeration(points), 1e-13)
        << "seed 20260307, case " << i;
  }
}

// Grids are full of points on one line and of equal heights: every exchange can be a tie.
TEST(MinimumZone, GridsWithTies) {
  std::mt19937 random(20260308);
  std::uniform_int_distribution<int> millimetres(-2, 2);
  for (int i = 0; i < 400; ++i) {
    const int columns = 2 + i % 3, rows = 2 + (i / 3) % 2;
    std::vector<Point3> points;
    for (int r = 0; r < rows; ++r)
      for (int c = 0; c < columns; ++c)
        points.push_back({1.5 * c, 1.5 * r, 97.9 + 0.001 * millimetres(random)});
    const auto zone = fit_minimum_zone(points);
    ASSERT_TRUE(zone) << "seed 20260308, case " << i;
    EXPECT_NEAR(zone->width, zone_by_enumeration(points), 1e-13) << "seed 20260308, case " << i;
    expect_proven(points, *zone, 1e-13);
  }
}

TEST(MinimumZone, LargeGridsOfMillimetres) {
  std::mt19937 random(20260309);
  std::uniform_int_distribution<int> millimetres(-3, 3);
  for (const int side : {10, 40, 141}) {
    std::vector<Point3> points;
    for (int r = 0; r < side; ++r)
      for (int c = 0; c < side; ++c)
        points.push_back({0.2 * c, 0.1 * r, 62 + 0.001 * millimetres(random)});
    const auto zone = fit_minimum_zone(points);
    ASSERT_TRUE(zone) << "seed 20260309, side " << side;
    expect_proven(points, *zone, 1e-12);
  }
}

TEST(MinimumZone, ScannerCloudOnAWarpedBase) {
  std::mt19937 random(20260310);
  std::normal_distribution<double> noise(0, 0.002);
  std::vector<Point3> points = random_points(random, 20000);
  for (Point3& p : points) p.z = 0.0001 * p.x * p.y + noise(random);
  const auto zone = fit_minimum_zone(points);
  ASSERT_TRUE(zone) << "seed 20260310";
  expect_proven(points, *zone, 1e-12);
}

TEST(BestPlanes, NothingWhereThereIsNoPlane) {
  const std::vector<Point3> two{{0, 0, 0}, {1, 0, 0}};
  EXPECT_FALSE(fit_least_squares(two));
  std::vector<Point3> line;
  for (int i = 0; i < 9; ++i) line.push_back({0.1 * i, 0.3 * i, i % 2 * 1.0});
  EXPECT_FALSE(fit_least_squares(line));
  EXPECT_FALSE(fit_minimum_zone(line));
  const std::vector<Point3> same(5, Point3{1, 2, 3});
  EXPECT_FALSE(fit_least_squares(same));
}

TEST(BestPlanes, ThreePointsAndExactPlanesLeaveNothingOver) {
  const std::vector<Point3> three{{0, 0, 1}, {10, 0, 2}, {0, 10, 4}};
  EXPECT_NEAR(fit_least_squares(three)->range, 0, 1e-15);
  EXPECT_NEAR(fit_minimum_zone(three)->width, 0, 1e-15);
  std::vector<Point3> tilted;
  for (const double y : {0, 1, 2, 3, 4})
    for (const double x : {0, 1, 2, 3, 4, 5}) tilted.push_back({x, y, 0.25 * x});
  EXPECT_NEAR(fit_minimum_zone(tilted)->width, 0, 1e-14);
  EXPECT_NEAR(fit_minimum_zone(tilted)->plane.slope_x, 0.25, 1e-14);
}

TEST(BestPlanes, DoubledPositionsWithTwoHeights) {
  const std::vector<Point3> points{
      {0, 0, 0}, {10, 0, 0}, {0, 10, 0}, {3, 3, 0.005}, {3, 3, -0.004}};
  EXPECT_NEAR(fit_minimum_zone(points)->width, 0.009, 1e-15);
}

// Covariance against its definition: the answer to a unit change of each height, squared and
// summed.
TEST(LeastSquaresPlane, CovarianceIsTheAnswerToEachHeight) {
  std::mt19937 random(20260311);
  const auto points = random_points(random, 12);
  const auto fit = fit_least_squares(points);
  double hh = 0, xx = 0, xy = 0, yy = 0;
  for (std::size_t i = 0; i < points.size(); ++i) {
    auto raised = points;
    raised[i].z += 1;
    const auto other = fit_least_squares(raised);
    const double dh = other->plane.height - fit->plane.height;
    const double dx = other->plane.slope_x - fit->plane.slope_x;
    const double dy = other->plane.slope_y - fit->plane.slope_y;
    hh += dh * dh, xx += dx * dx, xy += dx * dy, yy += dy * dy;
  }
  EXPECT_NEAR(fit->var_height, hh, 1e-12);
  EXPECT_NEAR(fit->var_xx, xx, 1e-12);
  EXPECT_NEAR(fit->var_xy, xy, 1e-12);
  EXPECT_NEAR(fit->var_yy, yy, 1e-12);
}

}  // namespace
}  // namespace squaredig::geometry
