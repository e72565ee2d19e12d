#include "ground/build_ground.h"

#include <gtest/gtest.h>

#include "ground/whole_survey.h"
#include "refusal_text.h"
#include "unit/ground/made_input.h"

namespace squaredig::ground {
namespace {
using namespace testing;
using squaredig::testing::refusal_text;

std::string refused(const GroundInput& input) {
  return refusal_text([&] { build_ground(input, frame()); });
}

double flat(double, double) { return 60; }

TEST(BuildGround, AFlatGridIsItsArea) {
  const BuiltGround built = build_ground(grid_input(11, 6, 2, flat), frame());
  EXPECT_EQ(built.ground.surface.vertices.size(), 66U);
  EXPECT_EQ(built.ground.surface.triangles.size(), 100U);
  EXPECT_NEAR(geometry::plan_area(built.ground.surface), 200, 1e-9);
  EXPECT_EQ(geometry::verify(built.ground.surface), std::vector<std::string>{});
  EXPECT_EQ(built.ground.frame.origin(), grid_position(715830, 734700, 60));
}

TEST(BuildGround, PointsWithoutHeightAreRefusedAllAtOnce) {
  GroundInput input = grid_input(3, 3, 1, flat);
  input.points.points[1].has_height = false;
  input.points.points[4].has_height = false;
  input.breaklines = {string_of("kerb", {{0, 0, 60}, {1, 1, 60}})};
  input.breaklines[0].vertices[1].has_height = false;
  EXPECT_EQ(refused(input),
            "ground.csv:3:1: point \"P2\" without a height; a height for every ground point; give "
            "the height or take the row out\n"
            "ground.csv:6:1: point \"P5\" without a height; a height for every ground point; give "
            "the height or take the row out\n"
            "breaklines.csv:3:1: a vertex of string \"kerb\" without a height; a height for every "
            "vertex of a breakline; give the height or take the row out\n");
}

TEST(BuildGround, TooFewPositionsAreRefused) {
  GroundInput input;
  EXPECT_NE(refused(input).find("0 positions with heights"), std::string::npos);
  add_point(input, 0, 0, 60);
  add_point(input, 1, 0, 60);
  add_point(input, 1, 0, 61);
  EXPECT_NE(
      refused(input).find("ground.csv:1:1: 2 positions with heights; three positions or more"),
      std::string::npos);
  add_point(input, 2, 0, 60);
  EXPECT_NE(refused(input).find("3 positions on one line"), std::string::npos);
}

TEST(BuildGround, ALongestEdgeBelowTheSpacingIsRefused) {
  GroundInput input = grid_input(4, 4, 5, flat);
  input.longest_edge = Length::metres(2);
  EXPECT_NE(refused(input).find("no triangle with all sides up to longest_edge, 2 m"),
            std::string::npos);
}

TEST(BuildGround, RimTrianglesAreToldAsACaution) {
  GroundInput input;
  for (int r = 0; r < 21; ++r)
    for (int c = 0; c < 21; ++c)
      if (c <= 10 || r <= 10) add_point(input, c, r, 60);
  input.longest_edge = Length::metres(2);
  const BuiltGround built = build_ground(input, frame());
  EXPECT_GT(built.rim_triangles_removed, 0U);
  ASSERT_EQ(built.cautions.size(), 1U);
  EXPECT_EQ(built.cautions[0], std::to_string(built.rim_triangles_removed) +
                                   " triangles at the rim with a side longer than 2 m are not "
                                   "taken for ground");
}

TEST(BuildGround, AnOutlineWithHeightsIsTheEdge) {
  GroundInput input = grid_input(21, 21, 1, flat);
  input.outline = {string_of(
      "edge", {{2.5, 2.5, 60}, {17.5, 2.5, 60}, {17.5, 9.5, 60}, {2.5, 9.5, 60}, {2.5, 2.5, 60}},
      "outline.csv")};
  input.longest_edge = Length::metres(3);
  const BuiltGround built = build_ground(input, frame());
  EXPECT_NEAR(geometry::plan_area(built.ground.surface), 15 * 7, 1e-9);
  EXPECT_TRUE(built.cautions.empty());
}

TEST(BuildGround, AnOutlineWithoutHeightsBoundsByTriangles) {
  GroundInput input = grid_input(21, 21, 1, flat);
  SurveyString edge = string_of("edge", {{2, 2, 0}, {17, 2, 0}, {17, 9, 0}, {2, 9, 0}}, "o.csv");
  for (StringVertex& v : edge.vertices) v.has_height = false;
  input.outline = {edge};
  const BuiltGround built = build_ground(input, frame());
  EXPECT_NEAR(geometry::plan_area(built.ground.surface), 15 * 7, 1e-9);
  EXPECT_EQ(built.cautions.size(), 1U);
}

TEST(BuildGround, OutlinesThatAreNoPolygonsAreRefused) {
  GroundInput input = grid_input(5, 5, 1, flat);
  input.outline = {string_of("two", {{0, 0, 60}, {4, 0, 60}, {0, 0, 60}}, "o.csv"),
                   string_of("bow", {{0, 0, 60}, {4, 4, 60}, {4, 0, 60}, {0, 4, 60}}, "o.csv")};
  const std::string text = refused(input);
  EXPECT_NE(text.find("o.csv:2:1: outline \"two\" with 2 vertices"), std::string::npos) << text;
  EXPECT_NE(text.find("outline \"bow\" meets itself: its sides from lines 2 and 4 touch"),
            std::string::npos)
      << text;
  input.outline = {string_of("far", {{100, 0, 60}, {104, 0, 60}, {104, 4, 60}}, "o.csv")};
  for (StringVertex& v : input.outline[0].vertices) v.has_height = false;
  EXPECT_NE(refused(input).find("no ground inside the outline"), std::string::npos);
}

TEST(BuildGround, AReadySurfaceIsCheckedFaceByFace) {
  GroundInput input;
  SurfaceMesh mesh{"old", {}, {}, "old.xml"};
  for (const auto& [x, y] : {std::pair(0, 0), {4, 0}, {4, 4}, {0, 4}, {1, 1}})
    mesh.vertices.push_back(grid_position(715830 + x, 734700 + y, 60 + x));
  mesh.faces = {{0, 1, 2}, {0, 3, 2}};  // the second runs clockwise: turned
  input.surface = mesh;
  EXPECT_NEAR(geometry::plan_area(build_ground(input, frame()).ground.surface), 16, 1e-12);
  input.surface->faces.push_back({0, 1, 4});
  EXPECT_EQ(refused(input),
            "old.xml:1:1: face 1 overlaps face 3 in plan; one height at each place; correct the "
            "surface \"old\" and export it again\n");
  input.surface->faces = {{0, 1, 2}, {0, 1, 7}, {0, -1, 2}};
  const std::string text = refused(input);
  EXPECT_NE(text.find("face 2 names a point that does not exist"), std::string::npos);
  EXPECT_NE(text.find("face 3 names a point that does not exist"), std::string::npos);
  input.surface->faces = {{0, 1, 2}, {0, 1, 1}};
  const BuiltGround built = build_ground(input, frame());
  EXPECT_EQ(built.ground.surface.triangles.size(), 1U);
  EXPECT_EQ(built.cautions,
            std::vector<std::string>{"old.xml: 1 of 2 faces have no area in plan and are left out, "
                                     "first face 2"});
  input.surface->faces = {{0, 1, 1}};
  EXPECT_NE(refused(input).find("a surface without a face that has area"), std::string::npos);
}

TEST(BuildGround, MoreFaultsThanAPersonReadsAreCounted) {
  GroundInput input = grid_input(30, 30, 1, flat);
  for (SurveyPoint& p : input.points.points) p.has_height = false;
  const std::string text = refused(input);
  EXPECT_EQ(std::count(text.begin(), text.end(), '\n'), 201);
  EXPECT_NE(text.find("700 more faults like these"), std::string::npos);
}

TEST(WholeSurvey, EveryRegionGetsTheOneSurface_whole_1) {
  WholeSurvey survey(grid_input(5, 5, 1, flat), frame());
  const GroundSurface& one = survey.surface_for({grid_point(0, 0), grid_point(1, 1)});
  const GroundSurface& two =
      survey.surface_for({grid_point(715831, 734701), grid_point(715832, 734702)});
  EXPECT_EQ(&one, &two);
  EXPECT_EQ(one.surface.triangles.size(), 32U);
  EXPECT_EQ(survey.frame().origin(), frame().origin());
}

}  // namespace
}  // namespace squaredig::ground
