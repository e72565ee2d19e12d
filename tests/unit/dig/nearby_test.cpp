// Keep-out strings, influence line, room and services round a pit in level ground; all derived.
#include <gtest/gtest.h>

#include "dig/dig.h"
#include "grounds.h"

namespace squaredig {
namespace {

using testing::grid_surface;
using testing::MadeSurvey;
using testing::plain_pit;

Length m(double metres) { return Length::metres(metres); }

SurveyString string_of(std::string name, const std::vector<GridPosition>& points) {
  SurveyString s;
  s.name = std::move(name);
  for (const auto& p : points) s.vertices.push_back({p, true, 1});
  return s;
}

// Toe 20 by 10 round the origin at level 0 in ground at 3, batters 1:1 but for vertical CD, the
// south side.
struct Site {
  design::DesignInput design = plain_pit(20, 10, 0, Batter::run_per_rise(1));
  dig::DigInput input;
  MadeSurvey survey{grid_surface(60, 7.3, [](double, double) { return 3.0; })};

  Site() {
    design.pit.batter.by_side = {{"CD", Batter{}}};
    input.cell = m(1);
    input.site.emplace();
  }
  dig::DigResult run() { return dig::dig(input, design, design::excavate(design, survey), survey); }
};

bool has(const dig::DigResult& result, const char* code) {
  return std::any_of(result.head.findings.begin(), result.head.findings.end(),
                     [&](const Finding& f) { return f.code == code; });
}

TEST(Nearby, ClearStringIsMeasuredAndNoClash) {
  Site site;
  site.input.site->keep_out = {
      string_of("fence", {grid_position(-40, 10, 0), grid_position(40, 10, 0)})};
  const auto result = site.run();
  ASSERT_EQ(result.nearby.size(), 1U);
  EXPECT_NEAR(result.nearby[0].distance.in_metres(), 2, 1e-9);
  EXPECT_TRUE(result.clashes.empty());
  EXPECT_FALSE(has(result, "keep-out"));
}

TEST(Nearby, CrestPastAStringIsToldWithPlaceAndDepth) {
  Site site;
  site.input.site->keep_out = {
      string_of("fence", {grid_position(-40, 7.5, 0), grid_position(40, 7.5, 0)})};
  const auto result = site.run();
  ASSERT_EQ(result.clashes.size(), 1U);
  EXPECT_EQ(result.clashes[0].kind, "keep-out and crest");
  EXPECT_EQ(result.clashes[0].string, "fence");
  EXPECT_NEAR(result.clashes[0].distance.in_metres(), -0.5, 2e-3);
  EXPECT_NEAR(result.clashes[0].at.northing.in_metres(), 7.5, 1e-9);
  EXPECT_TRUE(has(result, "keep-out"));
}

// A single point, a tree say, inside the crest.
TEST(Nearby, PointInsideTheCrest) {
  Site site;
  site.input.site->keep_out = {string_of("tree", {grid_position(0, 7, 0)})};
  const auto result = site.run();
  ASSERT_EQ(result.clashes.size(), 1U);
  EXPECT_NEAR(result.clashes[0].distance.in_metres(), -1, 1e-9);
}

// South of the vertical side the line at 1:1 reaches 3 m; a wall 2 m off stands inside it, though
// the crest is 2 m clear. North, where the batter is as flat, the line adds nothing.
TEST(Nearby, InfluenceLineCountsWhereTheBatterIsSteeper) {
  Site site;
  site.input.site->influence = Batter::run_per_rise(1);
  site.input.site->keep_out = {
      string_of("wall", {grid_position(-40, -7, 0), grid_position(40, -7, 0)}),
      string_of("fence", {grid_position(-40, 7.5, 0), grid_position(40, 7.5, 0)})};
  const auto result = site.run();
  ASSERT_EQ(result.nearby.size(), 4U);
  ASSERT_EQ(result.clashes.size(), 2U);
  EXPECT_EQ(result.clashes[0].kind, "keep-out and crest");
  EXPECT_EQ(result.clashes[0].string, "fence");
  EXPECT_EQ(result.clashes[1].kind, "keep-out and influence line");
  EXPECT_EQ(result.clashes[1].string, "wall");
  EXPECT_NEAR(result.clashes[1].distance.in_metres(), -1, 2e-3);
  EXPECT_TRUE(has(result, "influence"));
}

// A boundary that comes nearer toward the east: least to spare at that end of the side.
TEST(Nearby, RoomInFrontOfEachSide) {
  Site site;
  site.input.site->keep_out = {
      string_of("boundary", {grid_position(-40, 13, 0), grid_position(40, 9, 0)})};
  const auto result = site.run();
  ASSERT_EQ(result.room.size(), 4U);
  for (const auto& room : result.room) {
    const double expected = room.side == "CD" ? 0 : 3;
    EXPECT_NEAR(room.needed.in_metres(), expected, 1e-6) << room.side;
    EXPECT_EQ(room.available.has_value(), room.side == "AB");
  }
  EXPECT_EQ(result.room[0].side, "AB");
  EXPECT_NEAR(result.room[0].available->in_metres(), 11 - 0.05 * 10 - 5, 1e-6);
  EXPECT_NEAR(result.room[0].at.easting.in_metres(), 10, 1e-6);
  EXPECT_EQ(result.room[0].string, "boundary");
}

// Below the floor: straight down. Beside the 1:1 face: square to it. Through the dig: bare.
TEST(Nearby, ServicesKeepTheirDistanceInSpace) {
  Site site;
  site.input.site->clearance = m(0.5);
  site.input.site->services = {
      string_of("deep", {grid_position(0, -40, -0.7), grid_position(0, 40, -0.7)}),
      string_of("near", {grid_position(2, -40, -0.3), grid_position(2, 40, -0.3)}),
      string_of("beside", {grid_position(-8, 8, 1.8), grid_position(8, 8, 1.8)}),
      string_of("through", {grid_position(4, -40, 1), grid_position(4, 40, 1)})};
  const auto result = site.run();
  ASSERT_EQ(result.nearby.size(), 4U);
  EXPECT_NEAR(result.nearby[0].distance.in_metres(), 0.7, 1e-9);
  EXPECT_NEAR(result.nearby[1].distance.in_metres(), 0.3, 1e-9);
  EXPECT_NEAR(result.nearby[2].distance.in_metres(), 1.2 / std::sqrt(2.0), 1e-9);
  EXPECT_EQ(result.nearby[3].distance.in_metres(), 0);
  EXPECT_NEAR(result.nearby[3].exposed->in_metres(), 11, 1e-9);
  ASSERT_EQ(result.clashes.size(), 2U);
  EXPECT_EQ(result.clashes[0].string, "near");
  EXPECT_EQ(result.clashes[0].wanted->in_metres(), 0.5);
  EXPECT_EQ(result.clashes[1].string, "through");
  EXPECT_TRUE(has(result, "service"));
}

TEST(Nearby, ServiceWithoutLevelIsAFinding) {
  Site site;
  site.input.site->services = {string_of("cable", {grid_position(0, -40, 0)})};
  site.input.site->services[0].vertices[0].has_height = false;
  EXPECT_TRUE(has(site.run(), "service-without-level"));
}

}  // namespace
}  // namespace squaredig
