#include "geometry/polygon.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace squaredig::geometry {
namespace {

const Polygon kSquare{{0, 0}, {10, 0}, {10, 10}, {0, 10}};
const Polygon kEll{{0, 0}, {10, 0}, {10, 4}, {4, 4}, {4, 10}, {0, 10}};

Polygon moved(const Polygon& p, Point2 by) {
  Polygon out;
  for (const Point2 q : p) out.push_back(q + by);
  return out;
}

// A convex polygon: points on an ellipse at rising angles.
Polygon random_convex(std::mt19937& random) {
  std::uniform_real_distribution<double> unit(0, 1);
  const int n = 3 + static_cast<int>(unit(random) * 7);
  std::vector<double> angles;
  for (int i = 0; i < n; ++i) angles.push_back(6.283 * unit(random));
  std::sort(angles.begin(), angles.end());
  const Point2 centre{4 * unit(random), 4 * unit(random)};
  const double a = 1 + 5 * unit(random), b = 1 + 5 * unit(random);
  Polygon p;
  for (const double t : angles) p.push_back(centre + Point2{a * std::cos(t), b * std::sin(t)});
  return p;
}

TEST(Polygon, AreaAndCentroidOfPlainShapes) {
  EXPECT_EQ(signed_area(kSquare), 100);
  EXPECT_EQ(signed_area(kEll), 64);
  EXPECT_EQ(signed_area(Polygon(kSquare.rbegin(), kSquare.rend())), -100);
  EXPECT_EQ(signed_area(Polygon{}), 0);
  EXPECT_EQ(centroid(kSquare), (Point2{5, 5}));
  // (10 x 4 at (5, 2) and 4 x 6 at (2, 7)) / 64
  EXPECT_NEAR(centroid(kEll).x, (40 * 5 + 24 * 2) / 64.0, 1e-12);
  EXPECT_NEAR(centroid(kEll).y, (40 * 2 + 24 * 7) / 64.0, 1e-12);
}

// TRAP-2: northing taken for easting turns a footprint over, and its area changes sign; derived.
TEST(Polygon, SwappedAxesTurnTheFootprintOver_trap_2) {
  Polygon swapped;
  for (const Point2 p : kEll) swapped.push_back({p.y, p.x});
  EXPECT_EQ(signed_area(swapped), -signed_area(kEll));
}

TEST(Polygon, AreaKeepsItsMillimetresFarFromTheOrigin) {
  const Polygon far = moved(kEll, {4000, -3000});
  EXPECT_EQ(signed_area(far), 64);
}

TEST(Polygon, ConvexOrNot) {
  EXPECT_TRUE(is_convex(kSquare));
  EXPECT_FALSE(is_convex(kEll));
  EXPECT_FALSE(is_convex(Polygon(kSquare.rbegin(), kSquare.rend())));
  EXPECT_TRUE(is_convex(Polygon{{0, 0}, {5, 0}, {10, 0}, {10, 10}}));
  const Polygon star{{0, 3}, {-2, -3}, {3, 1}, {-3, 1}, {2, -3}};  // never turns right, twice round
  EXPECT_FALSE(is_convex(star));
}

TEST(Polygon, SideWithinTheGraceOfTheEdge) {
  EXPECT_EQ(side_of(kEll, {3, 3}, 0), 1);
  EXPECT_EQ(side_of(kEll, {6, 6}, 0), -1);
  EXPECT_EQ(side_of(kEll, {4, 7}, 0), 0);
  EXPECT_EQ(side_of(kEll, {4.0009, 7}, 0.001), 0);
  EXPECT_EQ(side_of(kEll, {4.0011, 7}, 0.001), -1);
  EXPECT_EQ(side_of(kEll, {3.9989, 7}, 0.001), 1);
  EXPECT_EQ(side_of(kEll, {10, 4}, 0), 0);
  EXPECT_EQ(side_of(kEll, {-1, 4}, 0), -1);  // level with a corner
  EXPECT_EQ(side_of(kEll, {2, 4}, 0), 1);
}

TEST(Polygon, DistanceToSegmentAndEdge) {
  EXPECT_EQ(distance_to_segment({3, 4}, {0, 0}, {0, 0}), 5);
  EXPECT_EQ(distance_to_segment({-3, 4}, {0, 0}, {9, 0}), 5);
  EXPECT_EQ(distance_to_segment({3, 4}, {0, 0}, {9, 0}), 4);
  EXPECT_EQ(distance_to_edge(kEll, {3, 7}), 1);
}

TEST(Polygon, CrossingEdgesAreNamed) {
  EXPECT_FALSE(self_crossing(kSquare));
  EXPECT_FALSE(self_crossing(kEll));
  const Polygon bow{{0, 0}, {10, 10}, {10, 0}, {0, 10}};
  ASSERT_TRUE(self_crossing(bow));
  EXPECT_EQ(*self_crossing(bow), std::pair(std::size_t{0}, std::size_t{2}));
  const Polygon repeated{{0, 0}, {10, 0}, {10, 0}, {0, 10}};
  EXPECT_EQ(self_crossing(repeated), std::optional(std::pair(std::size_t{0}, std::size_t{1})));
  const Polygon spike{{0, 0}, {10, 0}, {6, 0}, {0, 10}};
  EXPECT_EQ(self_crossing(spike), std::optional(std::pair(std::size_t{0}, std::size_t{1})));
  const Polygon pinched{{0, 0}, {4, 0}, {2, 2}, {4, 4}, {0, 4}, {2, 2}};
  EXPECT_TRUE(self_crossing(pinched));
}

TEST(Polygon, TwoHalvesOfACutMakeTheWhole_polygon_1) {
  std::mt19937 random(20260301);
  std::uniform_real_distribution<double> unit(-1, 1);
  for (int i = 0; i < 500; ++i) {
    const Polygon p = random_convex(random);
    const double a = unit(random), b = unit(random), c = 5 * unit(random);
    const double sum =
        signed_area(clip_half_plane(p, a, b, c)) + signed_area(clip_half_plane(p, -a, -b, -c));
    EXPECT_NEAR(sum, signed_area(p), 1e-12 * (1 + signed_area(p))) << "seed 20260301, case " << i;
  }
}

TEST(Polygon, AClipIsNeverLarger_polygon_2) {
  std::mt19937 random(20260302);
  for (int i = 0; i < 500; ++i) {
    const Polygon p = random_convex(random), q = random_convex(random);
    const double both = signed_area(clip_convex(p, q));
    EXPECT_LE(both, signed_area(p) + 1e-14) << "seed 20260302, case " << i;
    EXPECT_LE(both, signed_area(q) + 1e-14) << "seed 20260302, case " << i;
    EXPECT_NEAR(both, signed_area(clip_convex(q, p)), 1e-12 * (1 + both)) << i;
  }
}

TEST(Polygon, ClipsOfPlainShapes) {
  EXPECT_EQ(signed_area(clip_half_plane(kSquare, 1, 0, -4)), 60);
  EXPECT_TRUE(clip_half_plane(kSquare, 1, 0, -11).empty());
  EXPECT_EQ(clip_half_plane(kSquare, 1, 0, 0).size(), 4u);
  EXPECT_EQ(signed_area(clip_convex(kSquare, moved(kSquare, {3, 6}))), 28);
  EXPECT_TRUE(clip_convex(kSquare, moved(kSquare, {30, 6})).empty());
}

TEST(EmptyCircle, KnownPlaces) {
  // a corner, a Voronoi vertex, and where a bisector meets an edge
  const Circle corner = largest_empty_circle(kSquare, std::vector<Point2>{{1, 1}});
  EXPECT_EQ(corner.centre, (Point2{10, 10}));
  EXPECT_DOUBLE_EQ(corner.radius, std::sqrt(162.0));
  const Circle middle =
      largest_empty_circle(kSquare, std::vector<Point2>{{0, 0}, {10, 0}, {10, 10}, {0, 10}});
  EXPECT_NEAR(middle.radius, std::sqrt(50.0), 1e-12);
  const Circle edge = largest_empty_circle(
      kSquare,
      std::vector<Point2>{{0, 0}, {10, 0}, {0, 10}, {10, 10}, {5, 5}, {0, 5}, {10, 5}, {5, 10}});
  EXPECT_EQ(edge.centre, (Point2{5, 0}));
  EXPECT_EQ(edge.radius, 5);
  EXPECT_EQ(largest_empty_circle(kSquare, {}).radius, HUGE_VAL);
}

TEST(EmptyCircle, PointsOnOneLine) {
  const Circle c = largest_empty_circle(kSquare, std::vector<Point2>{{0, 5}, {5, 5}, {10, 5}});
  EXPECT_NEAR(c.radius, std::hypot(2.5, 5.0), 1e-14);  // half-way between two, on the edge
}

// A second, dumber answer: a fine grid over the polygon with its edge.
TEST(EmptyCircle, DenseSamplingFindsNothingLarger) {
  std::mt19937 random(20260303);
  std::uniform_real_distribution<double> unit(0, 1);
  for (int round = 0; round < 12; ++round) {
    const Polygon& polygon = round % 2 ? kEll : kSquare;
    std::vector<Point2> points;
    const int n = 1 + 5 * round;
    for (int i = 0; i < n; ++i) points.push_back({12 * unit(random) - 1, 12 * unit(random) - 1});
    if (round > 8)  // a grid: every Voronoi vertex is a tie
      for (Point2& p : points) p = {std::round(p.x), std::round(p.y)};
    const Circle circle = largest_empty_circle(polygon, points);
    const auto nearest = [&](Point2 q) {
      double least = HUGE_VAL;
      for (const Point2 p : points) least = std::min(least, std::hypot(p.x - q.x, p.y - q.y));
      return least;
    };
    EXPECT_GE(side_of(polygon, circle.centre, 1e-9), 0) << "seed 20260303, round " << round;
    EXPECT_NEAR(nearest(circle.centre), circle.radius, 1e-12);
    double sampled = 0;
    for (int i = 0; i <= 400; ++i)
      for (int j = 0; j <= 400; ++j)
        if (const Point2 q{i * 0.025, j * 0.025}; side_of(polygon, q, 0) >= 0)
          sampled = std::max(sampled, nearest(q));
    EXPECT_LE(sampled, circle.radius + 1e-12) << "seed 20260303, round " << round;
    EXPECT_GE(sampled, circle.radius - 0.018) << "seed 20260303, round " << round;
  }
}

}  // namespace
}  // namespace squaredig::geometry
