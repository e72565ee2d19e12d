#include <gtest/gtest.h>

#include "refusal_text.h"
#include "unit/pegs/site.h"

namespace squaredig::pegs {
namespace {

void add_pipe(Site& site, const char* name, const char* side, double along, double invert,
              double diameter_mm) {
  site.design.tank.pipes.push_back({name,
                                    side,
                                    Length::metres(along),
                                    Elevation::metres(invert),
                                    Length::millimetres(diameter_mm),
                                    {"job.toml", 50, 1}});
}
void add_shaft(Site& site, double along, double in, double cover) {
  site.design.tank.shafts.push_back({"access",
                                     Length::metres(along),
                                     Length::metres(in),
                                     Length::millimetres(600),
                                     Elevation::metres(cover),
                                     {"job.toml", 60, 1}});
}

TEST(Fittings, APipeIsSetOutFromItsString) {
  Site site;
  add_pipe(site, "inlet", "BC", 3, 63.15, 300);
  const PegsResult r = site.run();
  ASSERT_EQ(r.pipes.size(), 1U);
  const PipePoint& pipe = r.pipes[0];
  EXPECT_EQ(pipe.peg, "B1");
  EXPECT_NEAR(pipe.along_string.in_metres(), 3.87 + 3, 1e-9);
  EXPECT_NEAR(distance(pipe.at, peg(r, "B1").at).in_metres(), 6.87, 1e-9);
  EXPECT_NEAR(distance(pipe.at, r.corners[1].at.at).in_metres(), 3, 1e-9);
  EXPECT_NEAR(off_line(r.corners[1].at.at, r.corners[2].at.at, pipe.at), 0, 1e-8);
  EXPECT_NEAR(pipe.obvert.in_metres(), 63.45, 1e-9);
  EXPECT_NEAR(pipe.above_base.in_metres(), 0.8, 1e-9);
  EXPECT_TRUE(r.head.findings.empty());
}

TEST(Fittings, TheLevelAboveTheBaseFollowsTheFall) {
  Site site;
  site.design.tank.fall = Fall::percent(1);
  site.design.tank.fall_bearing = Bearing::degrees(127.5);
  add_pipe(site, "outlet", "BC", 4.8, 62.2, 150);
  EXPECT_NEAR(site.run().pipes[0].above_base.in_metres(), 62.2 - (62.35 - 0.24), 1e-9);
}

TEST(Fittings, StubsThatLeaveMeetOrFallBelowAreTold) {
  const auto finding = [](double along, double invert, const char* code) {
    Site site;
    add_pipe(site, "inlet", "AB", along, invert, 300);
    return has_finding(site.run().head, code);
  };
  EXPECT_TRUE(finding(0.1, 63, "pipe-leaves-side"));
  EXPECT_TRUE(finding(23.9, 63, "pipe-leaves-side"));
  EXPECT_FALSE(finding(0.15, 63, "pipe-leaves-side"));
  EXPECT_TRUE(finding(5, 62.34, "pipe-below-base"));
  EXPECT_FALSE(finding(5, 62.35, "pipe-below-base"));
  EXPECT_TRUE(finding(5, 63.38, "pipe-above-top"));
  EXPECT_FALSE(finding(5, 63.36, "pipe-above-top"));

  const auto meet = [](const char* side, double along, double invert) {
    Site site;
    add_pipe(site, "inlet", "AB", 5, 63, 300);
    add_pipe(site, "overflow", side, along, invert, 200);
    return has_finding(site.run().head, "pipes-meet");
  };
  EXPECT_TRUE(meet("AB", 5.24, 63.05));  // centres level, 0.24 apart, radii sum to 0.25
  EXPECT_FALSE(meet("AB", 5.26, 63.05));
  EXPECT_FALSE(meet("CD", 5, 63));
}

TEST(Fittings, RefusesASideThatIsNone) {
  Site site;
  add_pipe(site, "inlet", "AC", 3, 63.15, 300);
  EXPECT_EQ(testing::refusal_text([&] { site.run(); }),
            "job.toml:50:1: side = \"AC\"; the name of a side, such as \"AB\"; name the side the "
            "stub goes "
            "through\n");
}

TEST(Fittings, ANameThatReadsAsAFormulaIsToldOnce) {
  Site site;
  add_pipe(site, "=1+1", "BC", 3, 63.15, 300);
  add_pipe(site, "-5", "CD", 3, 63.15, 300);
  const PegsResult r = site.run();
  ASSERT_EQ(r.head.cautions.size(), 1U);
  EXPECT_EQ(r.head.cautions[0],
            "The name \"=1+1\" reads as a formula: the CSV files carry it with an apostrophe in "
            "front, so that a spreadsheet keeps it as text.");
  EXPECT_EQ(r.pipes[0].name, "=1+1");
}

TEST(Fittings, AShaftIsSetOutFromStringAB) {
  Site site;
  add_shaft(site, 1.2, 0.6, 64.9);
  const PegsResult r = site.run();
  const ShaftPoint& shaft = r.shafts.at(0);
  EXPECT_EQ(shaft.peg, "A1");
  EXPECT_NEAR(shaft.along_string.in_metres(), 3.87 + 1.2, 1e-9);
  EXPECT_NEAR(off_line(r.corners[0].at.at, r.corners[1].at.at, shaft.at), 0.6, 1e-8);
  EXPECT_NEAR(shaft.above_top.in_metres(), 64.9 - 63.67, 1e-9);
  EXPECT_TRUE(r.head.findings.empty());
}

TEST(Fittings, AShaftOffTheTankOrTooLowIsTold) {
  Site outside;
  add_shaft(outside, 1.2, 0.2, 64.9);
  EXPECT_TRUE(has_finding(outside.run().head, "shaft-leaves-tank"));
  Site low;
  add_shaft(low, 1.2, 0.6, 63.6);
  EXPECT_TRUE(has_finding(low.run().head, "shaft-cover-low"));
}

TEST(Fittings, WithoutTheFirstPegTheSecondServes) {
  Site site;
  const GridPoint a = grid_point(715830, 734700);
  const auto at = [&](double east, double south) {
    return GridPoint{a.easting + Length::metres(east), a.northing - Length::metres(south)};
  };
  site.design.tank.outline = {at(0, 0), at(20, 0), at(20, 8), at(10, 8), at(10, 18), at(0, 18)};
  site.pegs.site = design::SiteInput{};
  SurveyString north{"boundary", "boundary.csv", {}};
  for (const double east : {-50.0, 50.0}) {
    StringVertex v;
    v.at = {grid_point(715830 + east, 734703), {}};
    north.vertices.push_back(v);
  }
  site.pegs.site->keep_out.push_back(north);
  add_pipe(site, "inlet", "DE", 4, 63, 200);  // D1 is left out
  const PegsResult r = site.run();
  EXPECT_EQ(r.pipes[0].peg, "E2");
  EXPECT_NEAR(r.pipes[0].along_string.in_metres(),
              distance(peg(r, "E2").at, r.pipes[0].at).in_metres(), 1e-8);
}

}  // namespace
}  // namespace squaredig::pegs
