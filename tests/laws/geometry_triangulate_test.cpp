#include <gtest/gtest.h>

#include "geometry/triangulate.h"
#include "unit/geometry/grounds.h"

namespace squaredig::geometry {
namespace {
using namespace testing;

// Random points with doubled ones among them and strings that cross.
TriangulationInput crossing_ground(unsigned seed) {
  TriangulationInput input = points_alone(random_points(400, 40, seed));
  std::mt19937 random(seed + 100);
  for (Index string = 0; string < 8; ++string) {
    Constraint c{{}, string, StringKind::Breakline};
    for (int v = 0; v < 4; ++v) c.vertices.push_back(static_cast<Index>(random() % 400));
    input.constraints.push_back(c);
  }
  for (int i = 0; i < 20; ++i) {
    Point3 again = input.points[random() % 400];
    again.z += 0.5;
    input.points.push_back(again);
  }
  return input;
}

TEST(Triangulate, EveryPositionIsAVertexOnce_triangulate_1) {
  const TriangulationInput input = crossing_ground(11);
  const Triangulated t = triangulate(input);
  std::vector<bool> of_string(input.points.size());
  for (const Constraint& c : input.constraints)
    for (const Index v : c.vertices) of_string[static_cast<std::size_t>(v)] = true;
  std::size_t positions = 0;
  for (std::size_t i = 0; i < input.points.size(); ++i) {
    std::size_t winner = i, first = i;
    for (std::size_t j = input.points.size(); j-- > 0;) {
      if (input.points[j].plan() != input.points[i].plan()) continue;
      first = j;
      if (of_string[j] || !of_string[winner]) winner = j;
    }
    positions += first == i;
    std::size_t found = 0;
    for (std::size_t v = 0; v < t.source.size(); ++v) {
      if (t.surface.vertices[v].plan() != input.points[i].plan()) continue;
      ++found;
      EXPECT_EQ(t.source[v], static_cast<Index>(winner));
    }
    EXPECT_EQ(found, 1U);
  }
  EXPECT_EQ(input.points.size() - positions, t.doubled.size());
  for (const Doubled& d : t.doubled)
    EXPECT_NEAR(std::abs(d.height_difference), 0.5, 1e-9) << d.kept << " " << d.dropped;
  EXPECT_EQ(verify(t.surface), std::vector<std::string>{});
}

// The vertices on the way from a to b, each joined to the next by an edge.
bool joined_by_edges(const Surface& s, Point2 a, Point2 b) {
  std::vector<std::pair<double, Point2>> on;
  for (const Point3& v : s.vertices) {
    const Point2 u = b - a, p = v.plan() - a;
    const double along = dot(p, u) / dot(u, u);
    if (along >= 0 && along <= 1 && std::abs(cross(u, p)) <= 1e-9 * dot(u, u))
      on.emplace_back(along, v.plan());
  }
  std::sort(on.begin(), on.end(), [](const auto& p, const auto& q) { return p.first < q.first; });
  for (std::size_t i = 1; i < on.size(); ++i)
    if (!has_edge(s, on[i - 1].second, on[i].second)) return false;
  return on.size() > 1;
}

TEST(Triangulate, EverySegmentIsAChainOfEdges_triangulate_2) {
  for (unsigned seed : {21U, 22U, 23U}) {
    const TriangulationInput input = crossing_ground(seed);
    const Triangulated t = triangulate(input);
    EXPECT_FALSE(t.crossings.empty());
    for (const Constraint& c : input.constraints)
      for (std::size_t i = 1; i < c.vertices.size(); ++i) {
        const auto a = static_cast<std::size_t>(c.vertices[i - 1]);
        const auto b = static_cast<std::size_t>(c.vertices[i]);
        if (a == b) continue;
        EXPECT_TRUE(joined_by_edges(t.surface, input.points[a].plan(), input.points[b].plan()))
            << "seed " << seed << ", string " << c.string << ", segment " << i;
      }
  }
}

// Above zero when d lies inside the circle through a b c, anticlockwise.
double in_circle(Point2 a, Point2 b, Point2 c, Point2 d) {
  const Point2 u = a - d, v = b - d, w = c - d;
  return dot(u, u) * cross(v, w) + dot(v, v) * cross(w, u) + dot(w, w) * cross(u, v);
}

void expect_delaunay(const TriangulationInput& input) {
  const Surface s = triangulate(input).surface;
  for (std::size_t t = 0; t < s.triangles.size(); ++t)
    for (std::size_t i = 0; i < 3; ++i) {
      const Index n = s.neighbours[t][i];
      if (n == kNone) continue;
      const auto [a, b, c] = s.corners(static_cast<Index>(t));
      const Point2 p = s.corners(static_cast<Index>(t))[i].plan();
      const Point2 q = s.corners(static_cast<Index>(t))[(i + 1) % 3].plan();
      bool on_string = false;
      for (const Constraint& k : input.constraints)
        for (std::size_t j = 1; j < k.vertices.size(); ++j) {
          const Point2 from = input.points[static_cast<std::size_t>(k.vertices[j - 1])].plan();
          const Point2 to = input.points[static_cast<std::size_t>(k.vertices[j])].plan();
          const double length = std::hypot((to - from).x, (to - from).y);
          on_string |= length > 0 && std::abs(orient(from, to, p)) < 1e-9 * length &&
                       std::abs(orient(from, to, q)) < 1e-9 * length;
        }
      if (on_string) continue;
      for (const Point3& other : s.corners(n))
        EXPECT_LE(in_circle(a.plan(), b.plan(), c.plan(), other.plan()), 1e-7) << "triangle " << t;
    }
}

TEST(Triangulate, OffTheStringsItIsDelaunay_triangulate_3) {
  expect_delaunay(crossing_ground(31));
  expect_delaunay(points_alone(random_points(1000, 60, 32)));
  expect_delaunay(points_alone(exact_grid(20, 15, 0.5)));
}

void expect_same_when_shuffled(const TriangulationInput& input, unsigned seed) {
  const Triangulated one = triangulate(input);
  TriangulationInput moved = input;
  const std::vector<Index> now = shuffle(moved.points, seed);
  for (Constraint& c : moved.constraints) {
    for (Index& v : c.vertices) v = now[static_cast<std::size_t>(v)];
    std::reverse(c.vertices.begin(), c.vertices.end());
  }
  std::reverse(moved.constraints.begin(), moved.constraints.end());
  const Triangulated two = triangulate(moved);
  EXPECT_EQ(one.surface.triangles, two.surface.triangles) << "seed " << seed;
  EXPECT_EQ(one.surface.neighbours, two.surface.neighbours) << "seed " << seed;
  ASSERT_EQ(one.surface.vertices.size(), two.surface.vertices.size());
  for (std::size_t v = 0; v < one.surface.vertices.size(); ++v)
    EXPECT_EQ(one.surface.vertices[v].plan(), two.surface.vertices[v].plan()) << "seed " << seed;
  if (one.doubled.empty()) {
    EXPECT_EQ(one.surface.vertices, two.surface.vertices) << "seed " << seed;
  }
}

TEST(Triangulate, OrderOfTheInputDoesNotMatter_triangulate_4) {
  for (unsigned seed = 41; seed < 47; ++seed) {
    expect_same_when_shuffled(points_alone(exact_grid(30, 20, 1)), seed);
    expect_same_when_shuffled(points_alone(random_points(800, 9, seed)), seed);
    expect_same_when_shuffled(crossing_ground(seed), seed);
    TriangulationInput grid = points_alone(exact_grid(20, 20, 1));
    grid.constraints = {{{0, 199, 21}, 0, StringKind::Breakline},
                        {{19, 380, 200}, 1, StringKind::Breakline},
                        {{5, 395}, 2, StringKind::Breakline}};
    grid.longest_edge = 3;
    expect_same_when_shuffled(grid, seed);
  }
}

}  // namespace
}  // namespace squaredig::geometry
