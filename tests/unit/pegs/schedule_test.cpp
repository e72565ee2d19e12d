#include <gtest/gtest.h>

#include "refusal_text.h"
#include "unit/pegs/site.h"

namespace squaredig::pegs {
namespace {

Site with_control() {
  Site site;
  site.pegs.place = {"job.toml", 31, 1};
  add_control(site, "CP1", grid_position(715800, 734680, 64));
  add_control(site, "CP2", grid_position(715800, 734780, 64.5));
  SurveyPoint plan;
  plan.at = grid_position(715900, 734680, 0);
  plan.has_height = false;
  site.design.control.add(plan, "CP3", "");
  site.pegs.stations = {"CP1"};
  site.pegs.backsight = "CP2";
  return site;
}

const PolarRow& row(const PegsResult& r, const std::string& point) {
  for (const PolarRow& p : r.polar)
    if (p.point == point) return p;
  throw std::out_of_range("no row " + point);
}

TEST(Schedule, BearingTurnAndDistancesLeadBackToThePeg) {
  Site site = with_control();
  site.on.stated_factor = Ratio::of(0.9996);
  const PegsResult r = site.run();
  ASSERT_EQ(r.polar.size(), 12U);
  const GridPoint station = grid_point(715800, 734680);
  for (const ReferencePeg& p : r.reference) {
    const PolarRow& polar = row(r, p.name);
    EXPECT_NEAR(distance(ahead(station, polar.bearing, polar.grid_distance), p.at).in_metres(), 0,
                1e-8);
    // the backsight lies due north: the turn is the bearing
    EXPECT_NEAR(polar.turn->in_degrees(), polar.bearing.in_degrees(), 1e-9);
    EXPECT_NEAR(polar.ground_distance.in_metres() * 0.9996, polar.grid_distance.in_metres(), 1e-9);
    EXPECT_NEAR(polar.height_difference->in_metres(), p.ground->in_metres() - 64, 1e-9);
  }
  EXPECT_NEAR(row(r, "A").height_difference->in_metres(), 62.35 - 64, 1e-9);
}

TEST(Schedule, EachPointHasACheckFromTheOneBefore) {
  Site site = with_control();
  const PegsResult r = site.run();
  EXPECT_TRUE(r.polar[0].check_from.empty());
  EXPECT_EQ(r.polar[1].check_from, "A1");
  // A1 and A2 stand 3.87 m from the square corner A
  EXPECT_NEAR(r.polar[1].check_distance->in_metres(), 3.87 * std::sqrt(2), 1e-9);
  EXPECT_NEAR(row(r, "B").check_distance->in_metres(), 24, 1e-9);
}

TEST(Schedule, TheBacksightIsCheckedBeforeSettingOut) {
  const PegsResult r = with_control().run();
  ASSERT_EQ(r.backsight_checks.size(), 1U);
  const PolarRow& check = r.backsight_checks[0];
  EXPECT_EQ(check.point, "CP2");
  EXPECT_NEAR(check.bearing.in_degrees(), 0, 1e-12);
  EXPECT_NEAR(check.turn->in_degrees(), 0, 1e-12);
  EXPECT_NEAR(check.grid_distance.in_metres(), 100, 1e-12);
  EXPECT_NEAR(check.height_difference->in_metres(), 0.5, 1e-12);
}

TEST(Schedule, WithoutBacksightOrHeightsTheirColumnsAreEmpty) {
  Site site = with_control();
  site.pegs.backsight.reset();
  site.pegs.stations = {"CP3", "CP1"};
  const PegsResult r = site.run();
  EXPECT_EQ(r.polar.size(), 24U);
  EXPECT_TRUE(r.backsight_checks.empty());
  EXPECT_FALSE(r.polar[0].turn);
  EXPECT_FALSE(r.polar[0].height_difference);
  EXPECT_TRUE(r.polar[12].height_difference);
  EXPECT_TRUE(r.polar[12].check_from.empty());
}

TEST(Schedule, RefusesUnknownStationsAndABacksightOnTheStation) {
  Site site = with_control();
  site.pegs.stations = {"CP9"};
  EXPECT_EQ(
      testing::refusal_text([&] { site.run(); }),
      "job.toml:31:1: no control point named \"CP9\"; a point of the [control] file, spelled as it "
      "is there; correct the name or add the point\n");
  site.pegs.stations = {"CP2"};
  EXPECT_NE(testing::refusal_text([&] { site.run(); }).find("are one place"), std::string::npos);
}

TEST(Schedule, StaffReadingsComeFromTheLaser) {
  Site site = with_control();
  site.pegs.laser = design::LaserInput{};
  site.pegs.laser->plane_level = Elevation::metres(66.4);
  site.pegs.laser->staff_length = Length::metres(1.2);
  const PegsResult r = site.run();
  EXPECT_NEAR(r.reference[0].staff_reading->in_metres(), 1.4, 1e-9);
  EXPECT_NEAR(row(r, "A1").staff_reading->in_metres(), 1.4, 1e-9);
  EXPECT_FALSE(row(r, "A").staff_reading);
  EXPECT_TRUE(has_finding(r.head, "peg-staff"));
  site.pegs.laser->staff_length = Length::metres(5);
  EXPECT_FALSE(has_finding(site.run().head, "peg-staff"));
}

}  // namespace
}  // namespace squaredig::pegs
