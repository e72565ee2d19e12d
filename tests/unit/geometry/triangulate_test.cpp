#include "geometry/triangulate.h"

#include <gtest/gtest.h>

#include <fstream>
#include <map>
#include <sstream>

#include "quantity/number_text.h"
#include "shared_data.h"
#include "unit/geometry/grounds.h"

namespace squaredig::geometry {
namespace {
using namespace testing;

TEST(Triangulate, NothingAndTooLittleGiveAnEmptySurface) {
  EXPECT_TRUE(triangulate({}).surface.triangles.empty());
  EXPECT_TRUE(triangulate(points_alone({{0, 0, 1}, {1, 0, 1}})).surface.vertices.empty());
  TriangulationInput line = points_alone({{0, 0, 1}, {1, 1, 1}, {2, 2, 1}, {3, 3, 5}});
  EXPECT_TRUE(triangulate(line).surface.triangles.empty());
  line.constraints = {{{0, 3}, 0, StringKind::Breakline}};
  EXPECT_TRUE(triangulate(line).surface.triangles.empty());
}

TEST(Triangulate, RandomGroundFillsItsHull) {
  for (unsigned seed : {1U, 2U, 3U}) {
    const std::vector<Point3> points = random_points(2000, 100, seed);
    const Triangulated t = triangulate(points_alone(points));
    EXPECT_EQ(verify(t.surface), std::vector<std::string>{}) << "seed " << seed;
    EXPECT_NEAR(plan_area(t.surface), hull_area(points), 1e-7) << "seed " << seed;
  }
}

TEST(Triangulate, SourceNamesThePointOfEachVertex) {
  const std::vector<Point3> points = random_points(500, 50, 4);
  const Triangulated t = triangulate(points_alone(points));
  ASSERT_EQ(t.source.size(), t.surface.vertices.size());
  for (std::size_t v = 0; v < t.source.size(); ++v)
    EXPECT_EQ(points[static_cast<std::size_t>(t.source[v])], t.surface.vertices[v]);
}

TEST(Triangulate, CrossingTakesTheMeanOfBothHeights) {
  TriangulationInput input =
      points_alone({{0, 0, 1}, {10, 0, 3}, {10, 10, 3}, {0, 10, 1}, {5, -1, 10}, {5, 11, 10}});
  input.constraints = {{{0, 2}, 7, StringKind::Breakline}, {{4, 5}, 3, StringKind::Breakline}};
  const Triangulated t = triangulate(input);
  ASSERT_EQ(t.crossings.size(), 1U);
  const StringCrossing& c = t.crossings[0];
  EXPECT_EQ(c.string_a, 3);
  EXPECT_EQ(c.string_b, 7);
  EXPECT_EQ(c.at, (Point2{5, 5}));
  EXPECT_DOUBLE_EQ(c.height_a, 10);
  EXPECT_DOUBLE_EQ(c.height_b, 2);
  const auto at = std::find(t.source.begin(), t.source.end(), kNone) - t.source.begin();
  ASSERT_LT(static_cast<std::size_t>(at), t.source.size());
  EXPECT_EQ(t.surface.vertices[static_cast<std::size_t>(at)], (Point3{5, 5, 6}));
  EXPECT_EQ(verify(t.surface), std::vector<std::string>{});
}

TEST(Triangulate, ThreeStringsThroughOnePlaceMakeOneVertex) {
  TriangulationInput input =
      points_alone({{0, 0, 0}, {4, 4, 0}, {0, 4, 3}, {4, 0, 3}, {0, 2, 6}, {4, 2, 6}});
  input.constraints = {{{0, 1}, 0, StringKind::Breakline},
                       {{2, 3}, 1, StringKind::Breakline},
                       {{4, 5}, 2, StringKind::Breakline}};
  const Triangulated t = triangulate(input);
  EXPECT_EQ(t.crossings.size(), 3U);
  EXPECT_EQ(std::count(t.source.begin(), t.source.end(), kNone), 1);
  EXPECT_EQ(t.surface.vertices[3], (Point3{2, 2, 3}));
}

TEST(Triangulate, VertexOnAnotherStringIsToldAndKeepsItsHeight) {
  TriangulationInput input =
      points_alone({{0, 0, 1}, {8, 0, 5}, {4, 0, 9}, {4, 6, 9}, {0, 6, 0}, {8, 6, 0}});
  input.constraints = {{{0, 1}, 0, StringKind::Breakline}, {{3, 2}, 1, StringKind::Breakline}};
  const Triangulated t = triangulate(input);
  EXPECT_TRUE(t.crossings.empty());
  ASSERT_EQ(t.touches.size(), 1U);
  EXPECT_EQ(t.touches[0].string_a, 1);
  EXPECT_EQ(t.touches[0].string_b, 0);
  EXPECT_DOUBLE_EQ(t.touches[0].height_a, 9);
  EXPECT_DOUBLE_EQ(t.touches[0].height_b, 3);
  EXPECT_TRUE(has_edge(t.surface, {0, 0}, {4, 0}));
  EXPECT_TRUE(has_edge(t.surface, {4, 0}, {8, 0}));
}

TEST(Triangulate, StringsLyingOnOneAnotherAndRepeated) {
  TriangulationInput input =
      points_alone({{0, 0, 0}, {9, 0, 0}, {3, 0, 0}, {6, 0, 0}, {4, 5, 1}, {4, -5, 1}});
  input.constraints = {{{0, 1}, 0, StringKind::Breakline},
                       {{3, 2}, 1, StringKind::Breakline},
                       {{1, 0}, 2, StringKind::Breakline},
                       {{4, 5}, 3, StringKind::Breakline},
                       {{4, 4}, 4, StringKind::Breakline}};
  const Triangulated t = triangulate(input);
  EXPECT_EQ(verify(t.surface), std::vector<std::string>{});
  EXPECT_TRUE(has_edge(t.surface, {4, 5}, {4, 0}));
  EXPECT_TRUE(has_edge(t.surface, {4, 0}, {4, -5}));
  EXPECT_EQ(std::count(t.source.begin(), t.source.end(), kNone), 1);
}

TEST(Triangulate, RimIsTakenOffFromTheHullInward) {
  // an L: the inner corner is bridged by long triangles, which are not ground
  std::vector<Point3> points;
  for (const Point3& p : exact_grid(21, 21, 1))
    if (p.x <= 10 || p.y <= 10) points.push_back(p);
  TriangulationInput input = points_alone(points);
  input.longest_edge = 2;
  const Triangulated t = triangulate(input);
  // 300 and the one half-square that fills the inner corner: its sides are 1, 1 and 1.41
  EXPECT_NEAR(plan_area(t.surface), 300.5, 1e-9);
  EXPECT_GT(t.rim_triangles_removed, 0U);
  EXPECT_EQ(verify(t.surface), std::vector<std::string>{});
  input.longest_edge = 0;
  EXPECT_NEAR(plan_area(triangulate(input).surface), 350, 1e-9);
}

TEST(Triangulate, LongTrianglesInsideStay) {
  // a ring of points round a bare middle: the middle is not rim
  std::vector<Point3> points;
  for (const Point3& p : exact_grid(21, 21, 1))
    if (std::max(std::abs(p.x - 10), std::abs(p.y - 10)) > 5) points.push_back(p);
  TriangulationInput input = points_alone(points);
  input.longest_edge = 2;
  const Triangulated t = triangulate(input);
  EXPECT_NEAR(plan_area(t.surface), 400, 1e-9);
  EXPECT_EQ(t.rim_triangles_removed, 0U);
}

TEST(Triangulate, OutlineBoundsTheGroundEvenWhereItsSidesAreLong) {
  TriangulationInput input = points_alone(exact_grid(41, 41, 1));
  const auto first = static_cast<Index>(input.points.size());
  for (const Point3 p : {Point3{5.5, 5.5, 0}, {34.5, 5.5, 0}, {34.5, 34.5, 0}, {5.5, 34.5, 0}})
    input.points.push_back(p);
  input.constraints = {{{first, first + 1, first + 2, first + 3, first}, 0, StringKind::Outline}};
  input.keep = {{{5.5, 5.5}, {34.5, 5.5}, {34.5, 34.5}, {5.5, 34.5}}};
  input.longest_edge = 0.75;
  const Triangulated t = triangulate(input);
  EXPECT_NEAR(plan_area(t.surface), 29.0 * 29.0, 1e-9);
  EXPECT_EQ(t.rim_triangles_removed, 0U);
  EXPECT_EQ(verify(t.surface), std::vector<std::string>{});
}

TEST(Triangulate, PointsOutsideEveryOutlineAreLeftOut) {
  TriangulationInput input = points_alone(exact_grid(31, 11, 1));
  input.keep = {{{0, 0}, {10, 0}, {10, 10}, {0, 10}}, {{20, 0}, {30, 0}, {30, 10}, {20, 10}}};
  const Triangulated t = triangulate(input);
  EXPECT_NEAR(plan_area(t.surface), 200, 1e-9);
  EXPECT_EQ(t.surface.vertices.size(), 2U * 121U);
}

TEST(Triangulate, NegativeZeroIsZero) {
  const Triangulated t =
      triangulate(points_alone({{0.0, 0, 1}, {-0.0, -0.0, 2}, {1, 0, 0}, {0, 1, 0}}));
  ASSERT_EQ(t.doubled.size(), 1U);
  EXPECT_EQ(t.doubled[0].kept, 0);
  EXPECT_EQ(t.doubled[0].height_difference, 1);
}

// A survey's points and breaklines as flattened tables: columns by name.
std::vector<std::vector<std::string>> rows_of(const std::string& file) {
  std::ifstream in(squaredig::testing::shared_data(file));
  std::vector<std::vector<std::string>> rows;
  for (std::string line; std::getline(in, line);) {
    std::istringstream cells(line);
    rows.emplace_back();
    for (std::string cell; std::getline(cells, cell, ',');) rows.back().push_back(cell);
  }
  rows.erase(rows.begin());
  return rows;
}

Point3 near_site(const std::string& northing, const std::string& easting, const std::string& z) {
  return {*parse_number(easting) - 21531220, *parse_number(northing) - 6783100, *parse_number(z)};
}

// Rock bed survey of the InfraModel examples, buildingSMART Finland, CC BY 4.0.
TEST(Triangulate, RealRockBedWithItsBreaklines) {
  SQUAREDIG_NEEDS_SHARED_DATA("csv/rockbed_points.csv");
  TriangulationInput input;
  for (const auto& r : rows_of("csv/rockbed_points.csv"))
    input.points.push_back(near_site(r[1], r[2], r[3]));
  EXPECT_EQ(input.points.size(), 988U);  // seen in the data's list of known truths
  std::map<std::string, Index> number;
  for (const auto& r : rows_of("csv/rockbed_breaklines.csv")) {
    const auto next = static_cast<Index>(number.size());
    const Index string = number.try_emplace(r[0], next).first->second;
    if (string == static_cast<Index>(input.constraints.size()))
      input.constraints.push_back({{}, string, StringKind::Breakline});
    input.constraints[static_cast<std::size_t>(string)].vertices.push_back(
        static_cast<Index>(input.points.size()));
    input.points.push_back(near_site(r[2], r[3], r[4]));
  }
  EXPECT_EQ(input.constraints.size(), 67U);
  const Triangulated t = triangulate(input);
  EXPECT_EQ(verify(t.surface), std::vector<std::string>{});
  EXPECT_NEAR(plan_area(t.surface), hull_area(input.points), 1e-6);
  EXPECT_GT(plan_area(t.surface), 2160.710);  // the surveyed patches lie within the hull
}

}  // namespace
}  // namespace squaredig::geometry
