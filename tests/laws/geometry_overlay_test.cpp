// Laws of one surface laid over another, each against a second answer found in another way: the
// domains' common area by slices across their rims, what lies between by holding every pair of
// triangles to each other with another clipping.
#include <gtest/gtest.h>

#include <cmath>
#include <functional>

#include "geometry/overlay.h"
#include "geometry/polygon.h"
#include "unit/geometry/grounds.h"

namespace squaredig::geometry {
namespace {
using namespace testing;

struct Pair {
  std::string name;
  Surface upper, lower;
};

Surface of_points(std::vector<Point3> points) {
  return triangulate(points_alone(std::move(points))).surface;
}

Surface moved(Surface s, double x, double y, double z = 0) {
  for (Point3& v : s.vertices) v = {v.x + x, v.y + y, v.z + z};
  return s;
}

// About the origin, so that nothing is parallel to anything by accident.
Surface turned(Surface s, double angle) {
  const double c = std::cos(angle), n = std::sin(angle);
  for (Point3& v : s.vertices) v = {c * v.x - n * v.y, n * v.x + c * v.y, v.z};
  return s;
}

// Holes, bays, islands, and parts that hang together by a vertex alone.
Surface carved(Surface s, unsigned seed, unsigned one_in) {
  std::mt19937 random(seed);
  std::erase_if(s.triangles, [&](const auto&) { return random() % one_in == 0; });
  link_neighbours(s);
  return s;
}

// Triangles in any order, so that neighbours do not stand near each other.
Surface shuffled(Surface s, unsigned seed) {
  std::mt19937 random(seed);
  for (std::size_t i = s.triangles.size(); i > 1; --i)
    std::swap(s.triangles[i - 1], s.triangles[random() % i]);
  link_neighbours(s);
  return s;
}

Surface both(Surface a, const Surface& b) {
  const auto first = static_cast<Index>(a.vertices.size());
  a.vertices.insert(a.vertices.end(), b.vertices.begin(), b.vertices.end());
  for (const auto& t : b.triangles)
    a.triangles.push_back({t[0] + first, t[1] + first, t[2] + first});
  link_neighbours(a);
  return a;
}

// Triangles a hundred thousand times as long as wide, among others.
Surface slivers(unsigned seed) {
  auto points = random_points(60, 10, seed);
  for (int i = 0; i <= 20; ++i)
    for (const double off : {0.0, 1e-5, -1e-5, 3e-10})
      points.push_back({0.5 * i, 5 + off * (i % 2 == 0 ? 1 : 0.3) + 0.1 * i, 2.5});
  return of_points(std::move(points));
}

std::vector<Pair> pairs_of(unsigned seed) {
  const Surface a = of_points(random_points(80, 10, seed));
  const Surface b = of_points(random_points(90, 10, seed + 1000));
  const Surface grid = of_points(exact_grid(9, 9, 1.25));
  const Surface ragged = carved(a, seed, 4), holed = carved(b, seed + 1, 9);
  const double way = 0.1 * seed;
  return {
      {"over each other", a, b},
      {"half beside", a, moved(turned(b, way), 4, 3)},
      {"a small one inside", a, moved(of_points(random_points(40, 2, seed)), 4, 4, 0.3)},
      {"a large one round it", moved(of_points(random_points(40, 2, seed)), 4, 4, 0.3), b},
      {"apart", a, moved(b, 30, 0)},
      {"touching along a side", grid, moved(grid, 10, 0)},
      {"the same", a, moved(a, 0, 0, 0.1)},
      {"the same, other order", a, shuffled(moved(a, 0, 0, -0.1), seed)},
      {"the same with parts left out of both", ragged, moved(carved(a, seed + 2, 5), 0, 0, 0.2)},
      {"carved", ragged, holed},
      {"carved and turned", ragged, turned(holed, way)},
      {"more left out than left", carved(a, seed, 2), shuffled(carved(b, seed, 2), seed)},
      {"squares on squares", grid, shuffled(moved(grid, 0, 0, 0.2), seed)},
      {"squares half a side off", grid, moved(grid, 0.625, 0.625)},
      {"squares on squares, carved", carved(grid, seed, 3), carved(moved(grid, 1.25, 0), seed, 4)},
      {"in two parts", both(a, moved(a, 11, 0)), moved(turned(holed, 0.3), 6, -2)},
      {"two parts on two", both(a, moved(b, 11, 1)), both(moved(b, 3, 2), moved(a, 14, 0))},
      {"slivers", slivers(seed), a},
      {"slivers on slivers", slivers(seed), turned(slivers(seed + 1), 1e-4)},
      {"carved slivers", carved(slivers(seed), seed, 3), slivers(seed)},
  };
}

void for_each_pair(const std::function<void(const Pair&)>& use) {
  for (unsigned seed = 1; seed <= 6; ++seed)
    for (const Pair& pair : pairs_of(seed)) {
      SCOPED_TRACE(pair.name + ", seed " + std::to_string(seed));
      ASSERT_FALSE(pair.upper.triangles.empty() || pair.lower.triangles.empty());
      use(pair);
    }
}

Between walked(const Surface& upper, const Surface& lower) {
  return between(upper, Locator(upper), lower);
}

struct Edge {
  Point2 from, to;
};

std::vector<Edge> rim_of(const Surface& s) {
  std::vector<Edge> rim;
  for (std::size_t t = 0; t < s.triangles.size(); ++t)
    for (std::size_t i = 0; i < 3; ++i)
      if (s.neighbours[t][i] == kNone) {
        const auto c = s.corners(static_cast<Index>(t));
        rim.push_back({c[i].plan(), c[(i + 1) % 3].plan()});
      }
  return rim;
}

// Where a line north at x enters (+1) and leaves (-1) a domain, whose rim has it on the left.
void add_steps(const std::vector<Edge>& rim, double x, int kind,
               std::vector<std::array<double, 3>>& steps) {
  for (const auto& [a, b] : rim) {
    if ((a.x < x) == (b.x < x)) continue;
    const double y = a.y + (x - a.x) / (b.x - a.x) * (b.y - a.y);
    steps.push_back({y, static_cast<double>(kind), a.x < b.x ? 1.0 : -1.0});
  }
}

double common_length(const std::vector<Edge>& one, const std::vector<Edge>& other, double x) {
  std::vector<std::array<double, 3>> steps;
  add_steps(one, x, 0, steps);
  add_steps(other, x, 1, steps);
  std::sort(steps.begin(), steps.end());
  std::array<double, 2> inside{0, 0};
  double length = 0, last = 0;
  for (const auto& [y, kind, step] : steps) {
    if (inside[0] > 0 && inside[1] > 0) length += y - last;
    inside[static_cast<std::size_t>(kind)] += step;
    last = y;
  }
  return length;
}

// Between two neighbouring corners or crossings of the rims the length of a slice is linear.
double common_area_by_slices(const Surface& a, const Surface& b) {
  const auto one = rim_of(a), other = rim_of(b);
  std::vector<double> stops;
  for (const auto* rim : {&one, &other})
    for (const auto& edge : *rim) stops.push_back(edge.from.x);
  for (const auto& e : one)
    for (const auto& f : other) {
      const double from = orient(f.from, f.to, e.from), to = orient(f.from, f.to, e.to);
      if (from * to < 0) stops.push_back(e.from.x + from / (from - to) * (e.to.x - e.from.x));
    }
  std::sort(stops.begin(), stops.end());
  double area = 0;
  for (std::size_t i = 1; i < stops.size(); ++i)
    area += (stops[i] - stops[i - 1]) * common_length(one, other, (stops[i - 1] + stops[i]) / 2);
  return area;
}

Polygon outline_of(const Surface& s, Index t) {
  const auto [a, b, c] = s.corners(t);
  return {a.plan(), b.plan(), c.plan()};
}

// The part of a polygon where a linear function is above zero, and its integral there: area times
// the function's value at the centroid. Where the function is level at zero there is none.
void add_part(const Polygon& shared, const Plane& d, double& volume, double& area) {
  if (std::none_of(shared.begin(), shared.end(), [&](Point2 p) { return d.at(p) > 1e-10; })) return;
  const auto part = clip_half_plane(shared, d.slope_x, d.slope_y, d.at({0, 0}));
  if (part.empty()) return;
  area += signed_area(part);
  volume += signed_area(part) * d.at(centroid(part));
}

Between every_pair(const Surface& upper, const Surface& lower) {
  Between sum;
  for (Index t = 0; t < static_cast<Index>(upper.triangles.size()); ++t)
    for (Index f = 0; f < static_cast<Index>(lower.triangles.size()); ++f) {
      const auto shared = clip_convex(outline_of(upper, t), outline_of(lower, f));
      if (shared.empty() || signed_area(shared) <= 0) continue;
      sum.common_area += signed_area(shared);
      const Plane u = upper.plane(t), l = lower.plane(f);
      const Plane d{u.about, u.height - l.at(u.about), u.slope_x - l.slope_x,
                    u.slope_y - l.slope_y};
      add_part(shared, d, sum.above, sum.area_above);
      add_part(shared, {d.about, -d.height, -d.slope_x, -d.slope_y}, sum.below, sum.area_below);
    }
  return sum;
}

TEST(OverlayOfSurfaces, CoversWhereBothAreAndNothingTwice_overlay_4) {
  for_each_pair([](const Pair& pair) {
    EXPECT_NEAR(walked(pair.upper, pair.lower).common_area,
                common_area_by_slices(pair.upper, pair.lower), 1e-7);
  });
}

TEST(OverlayOfSurfaces, FindsWhatEveryPairOfTrianglesHolds_overlay_5) {
  for_each_pair([](const Pair& pair) {
    const Between found = walked(pair.upper, pair.lower), all = every_pair(pair.upper, pair.lower);
    EXPECT_NEAR(found.common_area, all.common_area, 1e-7);
    EXPECT_NEAR(found.above, all.above, 1e-7);
    EXPECT_NEAR(found.below, all.below, 1e-7);
    EXPECT_NEAR(found.area_above, all.area_above, 1e-6);
    EXPECT_NEAR(found.area_below, all.area_below, 1e-6);
  });
}

TEST(OverlayOfSurfaces, IsThatOfTheOthersFacets) {
  for_each_pair([](const Pair& pair) {
    const Between found = walked(pair.upper, pair.lower);
    const Between laid = between(pair.upper, Locator(pair.upper), facets_of(pair.lower));
    EXPECT_NEAR(found.common_area, laid.common_area, 1e-13 * (1 + laid.common_area));
    EXPECT_NEAR(found.above, laid.above, 1e-13 * (1 + laid.above));
    EXPECT_NEAR(found.below, laid.below, 1e-13 * (1 + laid.below));
    EXPECT_NEAR(found.area_above, laid.area_above, 1e-13 * (1 + laid.area_above));
    EXPECT_NEAR(found.area_below, laid.area_below, 1e-13 * (1 + laid.area_below));
    EXPECT_EQ(found.greatest_above, laid.greatest_above);
    EXPECT_EQ(found.greatest_below, laid.greatest_below);
  });
}

}  // namespace
}  // namespace squaredig::geometry
