// The laws of the tank's place and of the pit's drawing.
#include <gtest/gtest.h>

#include "grounds.h"

namespace squaredig {
namespace {

using design::place_tank;
using testing::plain_pit;

design::DesignInput rectangle(Bearing ab = Bearing::degrees(37.5)) {
  auto input =
      plain_pit(24, 9.6, 62.35, Batter::run_per_rise(1), grid_point(715830.25, 734697.6), ab);
  input.tank.corner_a = grid_point(715830.25, 734697.6);
  input.tank.height = Length::metres(1.32);
  input.tank.fall = Fall::percent(0.5);
  input.tank.fall_toward = "CD";
  input.bedding.thickness = Length::millimetres(20);
  return input;
}

double clockwise_area(const design::Tank& tank) {
  double twice = 0;
  for (std::size_t i = 0; i < tank.sides(); ++i) {
    const auto& p = tank.corners[i];
    const auto& q = tank.corners[(i + 1) % tank.sides()];
    const auto& o = tank.corners[0];
    twice += (p.northing - o.northing).in_metres() * (q.easting - o.easting).in_metres() -
             (p.easting - o.easting).in_metres() * (q.northing - o.northing).in_metres();
  }
  return twice / 2;
}

TEST(Tank, CornersRunClockwise_tank_1) {
  EXPECT_NEAR(clockwise_area(place_tank(rectangle())), 24 * 9.6, 1e-6);
  auto input = rectangle();
  input.tank.corner_a.reset();
  input.tank.outline = {grid_point(0, 0), grid_point(10, 0), grid_point(10, 4), grid_point(0, 4)};
  const auto turned = place_tank(input);
  EXPECT_NEAR(clockwise_area(turned), 40, 1e-12);
  EXPECT_EQ(turned.corners[0], grid_point(0, 0));
  EXPECT_EQ(turned.corners[1], grid_point(0, 4));
  ASSERT_EQ(turned.findings.size(), 1U);
  EXPECT_EQ(turned.findings[0].code, "outline-turned");
}

TEST(Tank, DigLevelIsTheUndersideLessTheBedding_tank_2) {
  const auto tank = place_tank(rectangle());
  for (std::size_t i = 0; i < 4; ++i) {
    const auto p = tank.corners[i];
    EXPECT_NEAR((tank.underside.at(p) - tank.dig_level.at(p)).in_millimetres(), 20, 1e-9);
    EXPECT_NEAR((tank.top.at(p) - tank.underside.at(p)).in_metres(), 1.32, 1e-12);
  }
  // falls toward CD: A and B keep the level given, C and D lie 9.6 m x 0.5 percent lower
  EXPECT_NEAR(tank.underside.at(tank.corners[1]).in_metres(), 62.35, 1e-9);
  EXPECT_NEAR(tank.underside.at(tank.corners[2]).in_metres(), 62.35 - 0.048, 1e-9);
  EXPECT_NEAR(tank.underside.at(tank.corners[3]).in_metres(), 62.35 - 0.048, 1e-9);
}

TEST(Tank, TurningChangesNoLength_tank_3) {
  for (const double turn : {0.0, 37.5, 90.0, 213.7, 359.99}) {
    const auto tank = place_tank(rectangle(Bearing::degrees(turn)));
    EXPECT_NEAR(tank.side_length(0).in_metres(), 24, 1e-9);
    EXPECT_NEAR(tank.side_length(1).in_metres(), 9.6, 1e-9);
    EXPECT_NEAR(distance(tank.corners[0], tank.corners[2]).in_metres(), std::hypot(24, 9.6), 1e-9);
    EXPECT_NEAR(distance(tank.corners[1], tank.corners[3]).in_metres(), std::hypot(24, 9.6), 1e-9);
    EXPECT_NEAR(tank.underside.at(tank.corners[3]).in_metres(), 62.35 - 0.048, 1e-9);
    EXPECT_NEAR(tank.across_ab(tank.corners[2]).in_metres(), 9.6, 1e-9);
  }
}

TEST(Tank, PlacedFromALineOfControl) {
  auto input = rectangle();
  input.tank.corner_a.reset();
  input.tank.bearing_ab.reset();
  input.tank.from =
      design::FromLine{"CP1", "CP2", Length::metres(12.5), Length::metres(6), Angle::degrees(10)};
  input.control.add_file("control.csv");
  input.control.add({grid_position(100, 200, 5)}, "CP1", "");
  input.control.add({grid_position(100, 260, 5)}, "CP2", "");
  const auto tank = place_tank(input);
  EXPECT_NEAR(tank.corners[0].easting.in_metres(), 106, 1e-12);
  EXPECT_NEAR(tank.corners[0].northing.in_metres(), 212.5, 1e-12);
  EXPECT_NEAR(tank.ab.in_degrees(), 10, 1e-12);
}

TEST(Tank, RefusesWhatCannotStand) {
  const auto refused = [](design::DesignInput input, const std::string& text) {
    try {
      place_tank(input);
      ADD_FAILURE() << "accepted: " << text;
    } catch (const Refusal& refusal) {
      EXPECT_NE(refusal.problems()[0].text().find(text), std::string::npos)
          << refusal.problems()[0].text();
    }
  };
  auto input = rectangle();
  input.tank.corner_a = std::string("NOBODY");
  refused(input, "no control point named \"NOBODY\"");
  input = rectangle();
  input.tank.corner_a.reset();
  input.tank.outline = {grid_point(0, 0), grid_point(10, 4), grid_point(10, 0), grid_point(0, 4)};
  refused(input, "sides AB and CD touch");
  input.tank.outline = {grid_point(0, 0), grid_point(0, 4), grid_point(0, 4), grid_point(10, 4)};
  refused(input, "corner C repeats corner B");
  input = rectangle();
  input.tank.fall_toward = "XY";
  refused(input, "fall_toward");
}

// The batter plane's depth over the toe line is zero and it rises 1 / run square to it, on a floor
// that falls across and along.
TEST(PitCuts, BatterContainsTheToeAndRisesSquareToIt_pit_1) {
  auto input = rectangle(Bearing::degrees(21));
  input.tank.fall_toward.reset();
  input.tank.fall_bearing = Bearing::degrees(77);
  input.pit.gap.all = Length::metres(0.2);
  input.pit.batter = {Batter::run_per_rise(1.5), {{"BC", Batter::run_per_rise(0.5)}}, {}};
  const auto tank = place_tank(input);
  const auto frame = geometry::SiteFrame::around(grid_position(715830.25, 734697.6, 62));
  const auto pit = design::pit_cuts(input, tank, frame);
  ASSERT_EQ(pit.cuts.size(), 1U);
  const auto& cut = pit.cuts[0];
  for (std::size_t i = 0; i < 4; ++i) {
    const auto a = cut.toe[i], b = cut.toe[(i + 1) % 4];
    const auto& face = cut.faces[i].plane;
    EXPECT_NEAR(face.at(a), cut.floor.at(a), 1e-12);
    EXPECT_NEAR(face.at(b), cut.floor.at(b), 1e-12);
    const double length = std::hypot(b.x - a.x, b.y - a.y);
    const geometry::Point2 out{(b.y - a.y) / length, -(b.x - a.x) / length};
    const double run = cut.faces[i].side == 1 ? 0.5 : 1.5;
    EXPECT_NEAR(face.at(a + out) - face.at(a), 1 / run, 1e-12);
  }
}

// Every side of the covering rings lies on a line of the outline, and together they cover it all.
TEST(PitCuts, ReEntrantFloorsAreCovered_pit_2) {
  auto input = rectangle();
  input.tank.corner_a.reset();
  input.tank.fall_toward.reset();
  input.tank.outline = {grid_point(0, 0), grid_point(0, 12), grid_point(5, 12),  grid_point(5, 7),
                        grid_point(9, 7), grid_point(9, 12), grid_point(14, 12), grid_point(14, 0)};
  const auto tank = place_tank(input);
  const auto pit = design::pit_cuts(input, tank, geometry::SiteFrame{});
  ASSERT_GT(pit.cuts.size(), 1U);
  double covered = 0;
  for (const auto& facet : geometry::lower_envelope(pit.cuts, {{-1, -1}, {20, 20}}))
    if (facet.kind == geometry::FacetKind::Floor) covered += geometry::area_of(facet.outline);
  EXPECT_NEAR(covered, 14 * 12 - 4 * 5, 1e-9);
  const auto on_a_side = [&](geometry::Point2 p, geometry::Point2 q) {
    for (std::size_t i = 0; i < pit.toe.size(); ++i) {
      const auto a = pit.toe[i], b = pit.toe[(i + 1) % pit.toe.size()];
      if (std::abs(orient(a, b, p)) < 1e-9 && std::abs(orient(a, b, q)) < 1e-9) return true;
    }
    return false;
  };
  for (const auto& cut : pit.cuts)
    for (std::size_t i = 0; i < cut.toe.size(); ++i)
      EXPECT_TRUE(on_a_side(cut.toe[i], cut.toe[(i + 1) % cut.toe.size()]));
}

TEST(PitCuts, RefusesABatterFlatterThanTheFloor) {
  auto input = rectangle();
  input.tank.fall = Fall::percent(40);
  input.pit.batter.all = Batter::run_per_rise(3);
  EXPECT_THROW(design::pit_cuts(input, place_tank(input), geometry::SiteFrame{}), Refusal);
}

}  // namespace
}  // namespace squaredig
