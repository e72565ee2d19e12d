#include "ground/examine.h"

#include <gtest/gtest.h>

#include "unit/ground/made_input.h"

namespace squaredig::ground {
namespace {
using namespace testing;

double sloping(double x, double y) { return 60 + 0.1 * x - 0.05 * y; }

TEST(Examine, AreasAndLevels) {
  const GroundResult r = examined(grid_input(11, 6, 2, sloping));
  EXPECT_EQ(r.points, 66U);
  EXPECT_EQ(r.triangles, 100U);
  EXPECT_NEAR(r.plan_area.in_square_metres(), 200, 1e-9);
  // derived: 200 sqrt(1 + 0.1^2 + 0.05^2)
  EXPECT_NEAR(r.surface_area.in_square_metres(), 200 * std::sqrt(1.0125), 1e-9);
  EXPECT_NEAR(r.lowest.in_metres(), 59.5, 1e-12);
  EXPECT_NEAR(r.highest.in_metres(), 62, 1e-12);
  EXPECT_TRUE(r.head.findings.empty());
  EXPECT_EQ(r.positions.size(), 66U);
}

TEST(Examine, DoubledPointsAreToldWithBothLinesAndTheDifference) {
  GroundInput input = grid_input(4, 4, 3, sloping);
  add_point(input, 3, 3, sloping(3, 3) + 0.25);
  add_point(input, 6, 6, sloping(6, 6));
  const GroundResult r = examined(input);
  ASSERT_EQ(codes_of(r), (std::vector<std::string>{"doubled point", "doubled point"}));
  EXPECT_EQ(r.head.findings[0].text,
            "point \"P17\" (ground.csv:18) stands where point \"P6\" (ground.csv:7) does, 0.250 m "
            "higher; the latter is kept");
  EXPECT_EQ(r.head.findings[1].text,
            "point \"P18\" (ground.csv:19) stands where point \"P11\" (ground.csv:12) does, at the "
            "same height; the latter is kept");
  ASSERT_EQ(r.head.inputs.size(), 1U);
  EXPECT_EQ(r.head.inputs[0].read, 18U);
  EXPECT_EQ(r.head.inputs[0].used, 16U);
  EXPECT_EQ(r.head.inputs[0].set_aside,
            (std::vector<SetAside>{{18, "at the position of point \"P6\" (ground.csv:7)"},
                                   {19, "at the position of point \"P11\" (ground.csv:12)"}}));
}

TEST(Examine, APointOnAStringsVertexIsAFindingOnlyAtAnotherHeight) {
  GroundInput input = grid_input(4, 4, 3, sloping);
  input.breaklines = {string_of("kerb", {{0, 0, sloping(0, 0)}, {3, 3, sloping(3, 3)}})};
  EXPECT_TRUE(examined(input).head.findings.empty());
  input.breaklines[0].vertices[1].at.height = Elevation::metres(60.05);
  const GroundResult r = examined(input);
  ASSERT_EQ(codes_of(r), std::vector<std::string>{"doubled point"});
  EXPECT_EQ(r.head.findings[0].text,
            "point \"P6\" (ground.csv:7) stands where vertex 2 of string \"kerb\" "
            "(breaklines.csv:3) does, 0.100 m higher; the latter is kept");
}

TEST(Examine, NearPointsAreToldAndNeverMerged) {
  GroundInput input = grid_input(4, 4, 3, sloping);
  add_point(input, 3.006, 3.006, sloping(3, 3) + 0.02);
  add_point(input, 6.011, 6, sloping(6, 6));  // just too far to be told
  add_point(input, 2.9999, 6.0002, sloping(3, 6));
  const GroundResult r = examined(input);
  EXPECT_EQ(r.points, 19U);
  ASSERT_EQ(codes_of(r), (std::vector<std::string>{"near points", "near points"}));
  EXPECT_EQ(r.head.findings[0].text,
            "point \"P19\" (ground.csv:20) stands 0.000 m from point \"P10\" (ground.csv:11), at "
            "the same height; both are kept");
  EXPECT_EQ(r.head.findings[1].text,
            "point \"P17\" (ground.csv:18) stands 0.008 m from point \"P6\" (ground.csv:7), 0.020 "
            "m higher; both are kept");
}

TEST(Examine, RollingGroundHasNoSpikes) {
  EXPECT_TRUE(examined(grid_input(30, 30, 2, rolling)).suspects.empty());
  EXPECT_TRUE(examined(grid_input(12, 12, 5, rolling)).suspects.empty());
}

TEST(Examine, SpikesUpAndDownInsideAndAtTheRim) {
  for (const std::size_t where : {0U, 3U, 435U, 899U, 450U}) {
    GroundInput input = grid_input(30, 30, 2, rolling);
    Elevation& height = input.points.points[where].at.height;
    height = height + Length::metres(where % 2 == 0 ? 4 : -4);
    const GroundResult r = examined(input);
    ASSERT_EQ(r.suspects.size(), 1U) << "point " << where + 1;
    EXPECT_EQ(r.suspects[0].point, "P" + std::to_string(where + 1));
    EXPECT_EQ(r.suspects[0].by.in_metres() > 0, where % 2 == 0);
    EXPECT_NEAR(abs(r.suspects[0].by).in_metres(), 4, 0.7);
    EXPECT_EQ(r.suspects[0].place.line, static_cast<int>(where) + 2);
    EXPECT_EQ(codes_of(r), std::vector<std::string>{"spike"});
    EXPECT_EQ(r.suspects[0].at, input.points.points[where].at);
    ASSERT_EQ(r.found.size(), 1U);
    EXPECT_EQ(r.found[0].finding, r.head.findings[0]);
    EXPECT_EQ(r.found[0].at, input.points.points[where].at.at);
  }
}

TEST(Examine, AWallIsNoRowOfSpikes) {
  // a step of 2 m along x = 20, sampled on both sides
  const GroundResult r =
      examined(grid_input(40, 20, 1, [](double x, double) { return x < 19.5 ? 60.0 : 62.0; }));
  EXPECT_TRUE(r.suspects.empty());
}

TEST(Examine, CrossingStringsAreToldWithBothHeights) {
  GroundInput input = grid_input(5, 5, 3, [](double, double) { return 60.0; });
  input.breaklines = {string_of("top", {{1, 1, 60}, {11, 11, 60}}),
                      string_of("drain", {{1, 10, 59.5}, {10, 1, 59.5}}),
                      string_of("agrees", {{2, 1, 60}, {1, 2, 60}})};
  const GroundResult r = examined(input);
  ASSERT_EQ(r.crossings.size(), 2U);
  EXPECT_EQ(r.crossings[0].string_a, "top");
  EXPECT_EQ(r.crossings[0].string_b, "drain");
  EXPECT_NEAR(r.crossings[0].at.easting.in_metres(), 715835.5, 1e-9);
  EXPECT_NEAR(r.crossings[0].at.northing.in_metres(), 734705.5, 1e-9);
  EXPECT_NEAR(r.crossings[0].height_difference.in_metres(), 0.5, 1e-12);
  EXPECT_NEAR(r.crossings[1].height_difference.in_metres(), 0, 1e-12);
  ASSERT_EQ(codes_of(r), std::vector<std::string>{"crossing strings"});
  EXPECT_EQ(
      r.head.findings[0].text,
      "string \"top\" (breaklines.csv) crosses string \"drain\" (breaklines.csv) at E "
      "715835.500 N 734705.500: levels 60.000 and 59.500, 0.500 m apart; their mean is taken");
}

TEST(Examine, AVertexOnAnotherStringIsToldAtAnotherHeight) {
  GroundInput input = grid_input(5, 5, 3, [](double, double) { return 60.0; });
  input.breaklines = {string_of("long", {{1, 1, 60}, {11, 1, 60}}),
                      string_of("side", {{5, 1, 60.2}, {5, 8, 60}})};
  const GroundResult r = examined(input);
  ASSERT_EQ(r.crossings.size(), 1U);
  EXPECT_NEAR(r.crossings[0].height_difference.in_metres(), 0.2, 1e-12);
  EXPECT_NE(r.head.findings[0].text.find("string \"side\" (breaklines.csv) has a vertex on string"),
            std::string::npos);
}

TEST(Examine, PointsOutsideTheOutlineAreSetAside) {
  GroundInput input = grid_input(11, 11, 1, [](double, double) { return 60.0; });
  input.outline = {string_of("edge", {{0, 0, 60}, {10, 0, 60}, {10, 5, 60}, {0, 5, 60}}, "o.csv")};
  const GroundResult r = examined(input);
  ASSERT_EQ(r.head.inputs.size(), 2U);
  EXPECT_EQ(r.head.inputs[0].read, 121U);
  EXPECT_EQ(r.head.inputs[0].used, 62U);  // four lie on the outline's corners
  EXPECT_EQ(r.head.inputs[0].set_aside.back(),
            (SetAside{122, "in no triangle: outside the outline"}));
  EXPECT_EQ(r.head.inputs[1].used, 4U);
}

TEST(Examine, ManyOfOneKindAreCounted) {
  GroundInput input = grid_input(10, 10, 1, sloping);
  for (int row = 0; row < 8; ++row)
    for (int column = 0; column < 10; ++column) add_point(input, column, row, 61);
  const GroundResult r = examined(input);
  ASSERT_EQ(r.head.findings.size(), 51U);
  EXPECT_EQ(r.head.findings.back().text, "30 more of this kind");
}

TEST(Examine, AReadySurfaceIsExaminedToo) {
  const GroundInput made = grid_input(12, 12, 1, sloping);
  GroundInput input;
  input.surface = mesh_of(build_ground(made, frame()).ground);
  input.surface->vertices[50].height = input.surface->vertices[50].height + Length::metres(3);
  const GroundResult r = examined(input);
  EXPECT_EQ(r.triangles, 242U);
  ASSERT_EQ(r.suspects.size(), 1U);
  EXPECT_EQ(r.suspects[0].point, "vertex 51 of the surface");
  EXPECT_NEAR(r.suspects[0].by.in_metres(), 3, 1e-9);
}

}  // namespace
}  // namespace squaredig::ground
