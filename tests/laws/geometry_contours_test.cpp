// Level lines against planes, whose lines are known, and over random grounds.
#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <set>

#include "geometry/contours.h"
#include "unit/geometry/grounds.h"

namespace squaredig::geometry {
namespace {
using namespace testing;

std::vector<LevelLine> level_lines(const Surface& surface, std::span<const double> levels) {
  return level_lines_within(1000000, surface, levels).value();
}

// Heights that are often exactly a level.
Surface stepped(unsigned seed) {
  std::mt19937 random(seed);
  auto points = random_points(300, 30, seed);
  for (auto& p : points) p.z = 0.25 * static_cast<double>(random() % 9);
  return triangulate(points_alone(points)).surface;
}

using Key = std::pair<double, double>;

Point2 place_on(const Point3& p, const Point3& q, double level) {
  if (q.z == level) return q.plan();
  return p.plan() + ((level - p.z) / (q.z - p.z)) * (q.plan() - p.plan());
}

// Every edge of the surface that a level crosses, with the place where it does.
std::set<Key> crossings(const Surface& s, double level) {
  std::set<Key> places;
  for (const auto& t : s.triangles)
    for (std::size_t i = 0; i < 3; ++i) {
      const auto [from, to] = std::minmax(t[i], t[(i + 1) % 3]);
      const Point3 p = s.vertices[static_cast<std::size_t>(from)];
      const Point3 q = s.vertices[static_cast<std::size_t>(to)];
      if ((p.z >= level) == (q.z >= level)) continue;
      const Point2 at = place_on(p, q, level);
      places.insert({at.x, at.y});
    }
  return places;
}

// Vertices at the level without a neighbour as high: the line round them has no length.
std::set<Key> peaks(const Surface& s, double level) {
  std::set<Key> out, joined;
  for (const auto& t : s.triangles)
    for (std::size_t i = 0; i < 3; ++i) {
      const Point3 p = s.vertices[static_cast<std::size_t>(t[i])];
      if (p.z != level) continue;
      out.insert({p.x, p.y});
      for (const Index other : t)
        if (other != t[i] && s.vertices[static_cast<std::size_t>(other)].z >= level)
          joined.insert({p.x, p.y});
    }
  for (const auto& key : joined) out.erase(key);
  return out;
}

// Every place where a level crosses an edge is a corner of its lines, and nothing else is.
TEST(Contours, LinesGoThroughEveryCrossedEdge_contours_1) {
  for (unsigned seed = 1; seed <= 6; ++seed) {
    const Surface s = stepped(seed);
    const std::vector<double> levels{0.25, 0.6, 1.0, 1.5};
    const auto lines = level_lines(s, levels);
    std::map<std::size_t, std::set<Key>> corners;
    for (const auto& line : lines)
      for (const Point2 p : line.points) corners[line.level].insert({p.x, p.y});
    for (std::size_t i = 0; i < levels.size(); ++i) {
      auto expected = crossings(s, levels[i]);
      for (const auto& peak : peaks(s, levels[i])) expected.erase(peak);
      EXPECT_EQ(corners[i], expected) << "seed " << seed << " level " << levels[i];
    }
  }
}

TEST(Contours, OpenLinesEndOnTheRim_contours_2) {
  for (unsigned seed = 1; seed <= 6; ++seed) {
    const Surface s = stepped(seed);
    std::set<Key> rim;
    const std::vector<double> levels{0.6, 1.1};
    for (std::size_t t = 0; t < s.triangles.size(); ++t)
      for (std::size_t i = 0; i < 3; ++i) {
        if (s.neighbours[t][i] != kNone) continue;
        const auto [from, to] = std::minmax(s.triangles[t][i], s.triangles[t][(i + 1) % 3]);
        const Point3 p = s.vertices[static_cast<std::size_t>(from)];
        const Point3 q = s.vertices[static_cast<std::size_t>(to)];
        for (const double level : levels) {
          if ((p.z >= level) == (q.z >= level)) continue;
          const Point2 at = place_on(p, q, level);
          rim.insert({at.x, at.y});
        }
      }
    std::size_t ends = 0;
    for (const auto& line : level_lines(s, levels)) {
      if (line.closed) continue;
      for (const Point2 p : {line.points.front(), line.points.back()}) {
        EXPECT_TRUE(rim.contains({p.x, p.y})) << "seed " << seed;
        ++ends;
      }
    }
    EXPECT_EQ(ends, rim.size());  // and every such place on the rim is an end
  }
}

// z = 0.3 x + 0.4 y rises by 0.5 for each metre square to its level lines.
TEST(Contours, APlaneHasStraightLines_contours_3) {
  auto points = random_points(200, 20, 7);
  for (auto& p : points) p.z = 0.3 * p.x + 0.4 * p.y;
  const Surface s = triangulate(points_alone(points)).surface;
  const std::vector<double> levels{3, 4, 5, 6, 7};
  const auto lines = level_lines(s, levels);
  ASSERT_EQ(lines.size(), levels.size());
  for (const auto& line : lines) {
    EXPECT_FALSE(line.closed);
    for (const Point2 p : line.points)  // distance from the line through the origin
      EXPECT_NEAR((0.3 * p.x + 0.4 * p.y) / 0.5, levels[line.level] / 0.5, 1e-9);
    // higher ground on the left
    const Point2 d = line.points.back() - line.points.front();
    EXPECT_GT(cross(d, {0.3, 0.4}), 0);
  }
}

TEST(Contours, AHillHasARingAndAHollowTurnsTheOtherWay) {
  std::vector<Point3> points;
  for (int r = -6; r <= 6; ++r)
    for (int c = -6; c <= 6; ++c)
      points.push_back({c * 1.0, r * 1.0, std::exp(-0.1 * (c * c + r * r))});
  Surface hill = triangulate(points_alone(points)).surface;
  const std::vector<double> half{0.5};
  auto lines = level_lines(hill, half);
  ASSERT_EQ(lines.size(), 1U);
  EXPECT_TRUE(lines[0].closed);
  double area = 0;
  for (std::size_t i = 0; i < lines[0].points.size(); ++i)
    area += cross(lines[0].points[i], lines[0].points[(i + 1) % lines[0].points.size()]) / 2;
  // the circle of radius sqrt(ln 2 / 0.1), 21.8 m2, by a mesh of one metre
  EXPECT_NEAR(area, 3.14159265 * std::log(2.0) / 0.1, 1.5);
  for (auto& v : hill.vertices) v.z = 1 - v.z;
  lines = level_lines(hill, half);
  ASSERT_EQ(lines.size(), 1U);
  area = 0;
  for (std::size_t i = 0; i < lines[0].points.size(); ++i)
    area += cross(lines[0].points[i], lines[0].points[(i + 1) % lines[0].points.size()]) / 2;
  EXPECT_LT(area, -18);
}

TEST(Contours, TheRimClosesRoundTheSurface) {
  const Surface s = triangulate(points_alone(random_points(150, 25, 3))).surface;
  const auto rings = rim_of(s);
  ASSERT_EQ(rings.size(), 1U);
  double area = 0;
  for (std::size_t i = 0; i < rings[0].size(); ++i)
    area += cross(rings[0][i], rings[0][(i + 1) % rings[0].size()]) / 2;
  EXPECT_NEAR(area, plan_area(s), 1e-9);
}

}  // namespace
}  // namespace squaredig::geometry
