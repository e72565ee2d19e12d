#include "pegs/set_out.h"

#include <gtest/gtest.h>

#include "refusal_text.h"
#include "unit/pegs/site.h"

namespace squaredig::pegs {
namespace {

TEST(SetOut, EightPegsNamedOnTheirStrings_set_out_1) {
  Site site;
  const PegsResult r = site.run();
  const char* names[] = {"A1", "A2", "B1", "B2", "C1", "C2", "D1", "D2"};
  const char* strings[] = {"A1-B2", "D1-A2", "B1-C2", "A1-B2", "C1-D2", "B1-C2", "D1-A2", "C1-D2"};
  ASSERT_EQ(r.reference.size(), 8U);
  for (std::size_t i = 0; i < 8; ++i) {
    EXPECT_EQ(r.reference[i].name, names[i]);
    EXPECT_EQ(r.reference[i].string_line, strings[i]);
  }
  const auto corner = [&](std::size_t i) { return r.corners[i].at.at; };
  // A1 beyond A on line A-B, A2 beyond A on line D-A, and so round
  for (std::size_t i = 0; i < 4; ++i) {
    const auto& first = r.reference[2 * i];
    const auto& second = r.reference[2 * i + 1];
    EXPECT_NEAR(off_line(corner(i), corner((i + 1) % 4), first.at), 0, 1e-6);
    EXPECT_NEAR(off_line(corner((i + 3) % 4), corner(i), second.at), 0, 1e-6);
    EXPECT_NEAR((distance(first.at, corner((i + 1) % 4)) -
                 distance(corner(i), corner((i + 1) % 4)) - first.beyond_corner)
                    .in_metres(),
                0, 1e-6);
    EXPECT_NEAR((distance(corner((i + 3) % 4), second.at) -
                 distance(corner((i + 3) % 4), corner(i)) - second.beyond_corner)
                    .in_metres(),
                0, 1e-6);
  }
}

// Level ground at 65.000, dig level 62.330, gap 0.2, batter 1:1: the crest is 0.2 + 2.67 beyond
// each corner along the string, and setback 1 puts the peg at 3.87.
TEST(SetOut, BeyondCrestAndSetbackOnLevelGround) {
  Site site;
  const PegsResult r = site.run();
  for (const auto& p : r.reference) {
    EXPECT_NEAR(p.beyond_corner.in_metres(), 3.87, 1e-9) << p.name;
    EXPECT_NEAR(p.clear_of_crest.in_metres(), 1, 1e-9) << p.name;
    EXPECT_NEAR(p.nearest_crest.in_metres(), 1, 1e-9) << p.name;
    EXPECT_EQ(p.placed_by, PegRule::Setback);
    EXPECT_NEAR(p.ground->in_metres(), 65, 1e-9);
    EXPECT_NEAR(p.cut->in_metres(), 2.67, 1e-9);
  }
  site.pegs.offset = Length::metres(5);
  for (const auto& p : site.run().reference) {
    EXPECT_NEAR(p.beyond_corner.in_metres(), 5, 1e-9);
    EXPECT_NEAR(p.clear_of_crest.in_metres(), 2.13, 1e-9);
    EXPECT_EQ(p.placed_by, PegRule::Offset);
  }
}

// Ground rising 1 in 10 to the east: the crest on each string follows from one linear equation.
TEST(SetOut, CrestIsReadFromTheRealGround) {
  Site site([](double x, double) { return 5 + 0.1 * x; });
  site.design.tank.bearing_ab = Bearing::degrees(90);
  const PegsResult r = site.run();
  // B2 is produced to the east from B (x = 14.25): depth there z = 65 + 0.1 x - 62.33, and the
  // crest is where z(14.25 + d) = d - 0.2
  const double d = (65 + 0.1 * 14.25 - 62.33 + 0.2) / (1 - 0.1);
  EXPECT_NEAR(peg(r, "B2").beyond_corner.in_metres(), d + 1, 1e-9);
  EXPECT_NEAR(peg(r, "B2").ground->in_metres(), 65 + 0.1 * (14.25 + d + 1), 1e-9);
}

// Steep cross-fall turns the crest away from the string: it is said once, with the nearest peg.
TEST(SetOut, ACrestAskewIsTold) {
  Site site([](double x, double y) { return 5 + 0.3 * x + 0.3 * y; });
  site.design.tank.length = Length::metres(6);
  site.design.tank.width = Length::metres(4);
  site.design.tank.bearing_ab = Bearing::degrees(90);
  site.design.tank.corner_a = grid_point(715838, 734692);
  const PegsResult r = site.run();
  ASSERT_EQ(r.head.cautions.size(), 1U);
  Length nearest = Length::metres(1);
  std::string who;
  for (const auto& p : r.reference)
    if (p.nearest_crest < nearest) {
      nearest = p.nearest_crest;
      who = p.name;
    }
  EXPECT_NE(r.head.cautions[0].find(" at " + who + "."), std::string::npos) << r.head.cautions[0];
}

TEST(SetOut, CornersSidesAndDiagonals) {
  Site site;
  site.design.tank.fall = Fall::percent(0.5);
  site.design.tank.fall_bearing = Bearing::degrees(127.5);
  const PegsResult r = site.run();
  ASSERT_EQ(r.corners.size(), 4U);
  EXPECT_EQ(r.corners[2].name, "C");
  EXPECT_NEAR(r.corners[0].at.height.in_metres(), 62.35, 1e-9);
  EXPECT_NEAR(r.corners[1].at.height.in_metres(), 62.35 - 0.12, 1e-9);
  EXPECT_NEAR(r.corners[1].dig_level.in_metres(), 62.33 - 0.12, 1e-9);
  const double sides[] = {24, 9.6, 24, 9.6};
  for (std::size_t i = 0; i < 4; ++i) {
    EXPECT_NEAR(r.sides[i].grid.in_metres(), sides[i], 1e-9);
    EXPECT_NEAR(r.corners[i].interior_angle.in_degrees(), 90, 1e-6);
    EXPECT_NEAR(r.corners[i].crossing_angle.in_degrees(), 90, 1e-6);
  }
  ASSERT_EQ(r.diagonals.size(), 2U);
  EXPECT_EQ(r.diagonals[0].name, "AC");
  EXPECT_EQ(r.diagonals[1].name, "BD");
  for (const auto& d : r.diagonals) EXPECT_NEAR(d.grid.in_metres(), std::hypot(24, 9.6), 1e-9);
}

// The string's place at a corner is (1 - t) of one peg and t of the other; the two strings of a
// square corner add in quadrature.
TEST(SetOut, StrengthOfARemadeCornerIsPropagated) {
  Site site;
  const PegsResult r = site.run();
  const auto variance = [](double beyond, double length) {
    const double t = beyond / (length + 2 * beyond);
    return (1 - t) * (1 - t) + t * t;
  };
  const double expected = std::sqrt(variance(3.87, 24) + variance(3.87, 9.6));
  for (const Corner& c : r.corners) EXPECT_NEAR(c.sigma_per_peg_sigma->value(), expected, 1e-9);
  ASSERT_EQ(r.corners[0].recovery.size(), 2U);
  EXPECT_EQ(r.corners[0].recovery[0].peg, "A1");
  EXPECT_NEAR(r.corners[0].recovery[1].grid.in_metres(), 3.87, 1e-9);
}

TEST(SetOut, InfluenceLineMovesPegsWhereTheBatterIsSteeper) {
  Site site;
  site.design.pit.batter = {};
  site.design.pit.batter.by_side = {
      {"AB", Batter{}}, {"BC", Batter{}}, {"CD", Batter{}}, {"DA", Batter::run_per_rise(2)}};
  site.pegs.site = design::SiteInput{};
  site.pegs.site->influence = Batter::run_per_rise(1.5);
  const PegsResult r = site.run();
  // beyond the vertical side BC the influence line meets the ground at 0.2 + 1.5 x 2.67
  EXPECT_EQ(peg(r, "B2").placed_by, PegRule::Influence);
  EXPECT_NEAR(peg(r, "B2").beyond_corner.in_metres(), 0.2 + 1.5 * 2.67, 1e-9);
  EXPECT_NEAR(peg(r, "B2").clear_of_crest.in_metres(), 1.5 * 2.67, 1e-9);
  // beyond DA the batter is flatter than the influence line and governs
  EXPECT_EQ(peg(r, "A1").placed_by, PegRule::Setback);
  EXPECT_NEAR(peg(r, "A1").beyond_corner.in_metres(), 0.2 + 2 * 2.67 + 1, 1e-9);
}

TEST(SetOut, KeepOutStringsAreReportedAsClashing) {
  Site site;
  const PegsResult before = site.run();
  site.pegs.site = design::SiteInput{};
  const GridPoint b2 = peg(before, "B2").at;
  const Bearing across = site.design.tank.bearing_ab.value() + Angle::degrees(90);
  SurveyString line{"boundary", "boundary.csv", {}};
  for (const double out : {-2.0, 2.0}) {
    StringVertex v;
    v.at = {ahead(ahead(b2, across, Length::metres(out)), *site.design.tank.bearing_ab,
                  Length::metres(-0.5)),
            {}};
    line.vertices.push_back(v);
  }
  site.pegs.site->keep_out.push_back(line);
  const PegsResult r = site.run();
  EXPECT_EQ(r.reference.size(), 8U);
  ASSERT_TRUE(has_finding(r.head, "peg-keep-out"));
  std::size_t count = 0;
  for (const Finding& f : r.head.findings)
    if (f.code == "peg-keep-out") {
      ++count;
      EXPECT_NE(f.text.find("Peg B2"), std::string::npos) << f.text;
      EXPECT_NE(f.text.find("\"boundary\""), std::string::npos);
    }
  EXPECT_EQ(count, 1U);
}

TEST(SetOut, APegOffTheSurveyIsToldAndKept) {
  Site site([](double, double) { return 5.0; }, 26);
  site.pegs.offset = Length::metres(25);
  const PegsResult r = site.run();
  EXPECT_EQ(r.reference.size(), 8U);
  EXPECT_TRUE(has_finding(r.head, "peg-off-survey"));
  EXPECT_FALSE(peg(r, "B2").ground);
}

// An L: at the re-entrant corner both produced sides enter the pit and run on beyond the far crest.
Site l_shape() {
  Site site;
  const GridPoint a = grid_point(715830, 734700);
  const auto at = [&](double east, double south) {
    return GridPoint{a.easting + Length::metres(east), a.northing - Length::metres(south)};
  };
  site.design.tank.outline = {at(0, 0), at(20, 0), at(20, 8), at(10, 8), at(10, 18), at(0, 18)};
  return site;
}

TEST(SetOut, ReEntrantCornerPegsStandBeyondTheFarCrest) {
  Site site = l_shape();
  const PegsResult r = site.run();
  ASSERT_EQ(r.reference.size(), 12U);
  // D is re-entrant; D1 is on D-E produced back north over the pit: 8 m of tank, then gap and
  // batter
  EXPECT_NEAR(r.corners[3].interior_angle.in_degrees(), 270, 1e-6);
  EXPECT_NEAR(peg(r, "D1").beyond_corner.in_metres(), 8 + 0.2 + 2.67 + 1, 1e-9);
  EXPECT_NEAR(peg(r, "D2").beyond_corner.in_metres(), 10 + 0.2 + 2.67 + 1, 1e-9);
  EXPECT_EQ(r.diagonals.size(), 9U);
  EXPECT_TRUE(r.head.findings.empty());
}

TEST(SetOut, WithoutRoomTheReEntrantPegIsLeftOut) {
  Site site = l_shape();
  site.pegs.site = design::SiteInput{};
  SurveyString north{"boundary", "boundary.csv", {}};
  for (const double east : {-50.0, 50.0}) {
    StringVertex v;
    v.at = {grid_point(715830 + east, 734703), {}};
    north.vertices.push_back(v);
  }
  site.pegs.site->keep_out.push_back(north);
  const PegsResult r = site.run();
  EXPECT_EQ(r.reference.size(), 11U);
  EXPECT_THROW(peg(r, "D1"), std::out_of_range);
  EXPECT_TRUE(has_finding(r.head, "peg-left-out"));
  EXPECT_FALSE(r.corners[3].sigma_per_peg_sigma);
}

TEST(SetOut, TurningOrMovingChangesNoDistance_set_out_4) {
  Site here;
  Site there;
  there.design.tank.bearing_ab = Bearing::degrees(301.234);
  there.design.tank.corner_a = grid_point(715835.125, 734688.5);
  const PegsResult a = here.run();
  const PegsResult b = there.run();
  for (std::size_t i = 0; i < 8; ++i) {
    EXPECT_NEAR((a.reference[i].beyond_corner - b.reference[i].beyond_corner).in_metres(), 0, 1e-9);
    EXPECT_NEAR((distance(a.reference[i].at, a.corners[0].at.at) -
                 distance(b.reference[i].at, b.corners[0].at.at))
                    .in_metres(),
                0, 1e-8);
  }
}

}  // namespace
}  // namespace squaredig::pegs
