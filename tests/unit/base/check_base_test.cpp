#include "base/check_base.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "unit/base/base_fixture.h"

namespace squaredig::base {
namespace {

using testing::BaseFixture;
using testing::mm;
using testing::named;
using testing::percent;

TEST(CheckBase, AsPlannedConforms) {
  BaseFixture base;
  base.ask_for_all();
  base.add_grid(1.5, [](double, double) { return 0.0; });
  const BaseResult r = base.check();
  EXPECT_EQ(r.verdict, Verdict::Conforms);
  // one place of a coordinate at 700 000 m is 0.1 nm, of the fall on it far less
  EXPECT_NEAR(r.deviation->high.in_millimetres(), 0, 1e-6);
  EXPECT_NEAR(r.flatness->least_squares.in_millimetres(), 0, 1e-6);
  EXPECT_NEAR(r.flatness->minimum_zone.in_millimetres(), 0, 1e-6);
  EXPECT_NEAR(r.best_plane->fall.in_percent(), 0.5, 1e-8);
  EXPECT_NEAR(r.best_plane->downhill.in_degrees(), 127.5, 1e-6);
  EXPECT_NEAR(r.best_plane->level_at_a.in_metres(), 62.330, 1e-9);
  EXPECT_NEAR(r.skin->thinnest.in_millimetres(), 20, 1e-6);
  EXPECT_NEAR(r.skin->thickest.in_millimetres(), 20, 1e-6);
  EXPECT_NEAR(r.skin->volume.in_cubic_metres(), 24 * 9.6 * 0.020, 1e-8);
  EXPECT_NEAR(r.skin->wall_to_wall.in_cubic_metres(), 24.4 * 10 * 0.020, 1e-8);
  EXPECT_NEAR(r.skin->shift_that_fits->first.in_millimetres(), -5, 1e-6);
  EXPECT_NEAR(r.skin->shift_that_fits->second.in_millimetres(), 10, 1e-6);
  EXPECT_NEAR(r.trim->in_cubic_metres(), 0, 1e-8);
  EXPECT_NEAR(r.make_up->in_cubic_metres(), 0, 1e-8);
  EXPECT_NEAR(r.measured_area->in_square_metres(), 244, 1e-6);
  EXPECT_NEAR(r.floor_area.in_square_metres(), 244, 1e-8);  // corners held to 0.1 nm
  EXPECT_TRUE(r.head.findings.empty());
}

TEST(CheckBase, UncertaintiesAreThoseOfTheDefinition) {
  BaseFixture base;
  base.ask_for_all();
  base.add_grid(1.5, [](double, double) { return 0.0; });
  const BaseResult r = base.check();
  const auto n = static_cast<double>(r.points.size());
  const double k = 1.6448536269514722;  // the normal quantile at 0.95
  EXPECT_NEAR(mm(named(r, "level high").uncertainty), k * std::sqrt(8.0), 1e-9);
  EXPECT_NEAR(mm(named(r, "level low").uncertainty), k * std::sqrt(8.0), 1e-9);
  EXPECT_NEAR(mm(named(r, "level mean").uncertainty), k * std::sqrt(4 / n + 4), 1e-9);
  EXPECT_FALSE(named(r, "coverage").uncertainty);
}

TEST(CheckBase, PlanUncertaintyCountsOnASlope) {
  BaseFixture base;
  base.fall_percent = 5;
  base.input.sigma_plan = Length::millimetres(10);
  base.add_grid(3, [](double, double) { return 0.0; });
  const double k = 1.6448536269514722;
  EXPECT_NEAR(mm(named(base.check(), "level high").uncertainty), k * std::sqrt(8 + 0.25), 1e-9);
}

TEST(CheckBase, APointsOwnSigmaIsUsed) {
  BaseFixture base;
  base.input.level_tolerance = Tolerance{Length::millimetres(5), Length::millimetres(5)};
  base.input.sigma_common = Length{};
  base.add_grid(3, [](double, double) { return 0.0; });
  base.input.points.points[7].sigma_height_mm = 10;
  const BaseResult r = base.check();
  EXPECT_EQ(r.points[7].verdict, Verdict::NotProven);
  EXPECT_EQ(r.points[6].verdict, Verdict::Conforms);
  EXPECT_EQ(named(r, "level high").verdict, Verdict::NotProven);
  EXPECT_NE(named(r, "level high").words.find("below 3.04 mm, now 10.00 mm"), std::string::npos)
      << named(r, "level high").words;
}

TEST(CheckBase, OneHighPointIsFoundAndNamed) {
  BaseFixture base;
  base.ask_for_all();
  base.add_grid(1.5, [](double, double) { return 0.0; });
  base.add(12.3, 4.1, 14, "STONE?");
  const BaseResult r = base.check();
  EXPECT_EQ(r.verdict, Verdict::DoesNotConform);
  const Check& high = named(r, "level high");
  EXPECT_EQ(high.verdict, Verdict::DoesNotConform);
  EXPECT_NEAR(mm(high.value), 14, 1e-6);
  EXPECT_NE(high.words.find("STONE?"), std::string::npos);
  EXPECT_NE(high.words.find("12.30 m along A-B, 4.10 m in"), std::string::npos);
  EXPECT_EQ(r.points.back().finding, "too high, stands alone");
  EXPECT_EQ(named(r, "level low").verdict, Verdict::Conforms);
  EXPECT_EQ(named(r, "level mean").verdict, Verdict::Conforms);
}

TEST(CheckBase, PointsOutsideTheToeAreSetAsideByName) {
  BaseFixture base;
  base.ask_for_all();
  base.add_grid(1.5, [](double, double) { return 0.0; });
  const std::size_t inside = base.input.points.size();
  base.add(5, -0.2009, 500, "GRACE");
  base.add(5, -0.412, 500, "BATTER");
  SurveyPoint other;
  other.at = {base.planned().tank.corners[0], Elevation::metres(62)};
  other.line = 999;
  base.input.points.add(other, "KERB", "TK");
  const BaseResult r = base.check();
  EXPECT_EQ(r.points.size(), inside + 1);
  EXPECT_EQ(r.points.back().point, "GRACE");
  ASSERT_EQ(r.aside.size(), 2u);
  EXPECT_EQ(r.aside[0].point, "BATTER");
  EXPECT_EQ(r.aside[0].why, "0.212 m outside the toe");
  EXPECT_EQ(r.aside[1].point, "KERB");
  EXPECT_EQ(r.aside[1].place.line, 999);
}

TEST(CheckBase, NoPointInsideIsRefused) {
  BaseFixture base;
  base.add(5, -5, 0);
  try {
    base.check();
    FAIL() << "a base without points was judged";
  } catch (const Refusal& refusal) {
    ASSERT_EQ(refusal.problems().size(), 1u);
    EXPECT_EQ(refusal.problems()[0].text(),
              "as-dug.csv:1:1: none of 1 points is a base point inside the toe; at least one point "
              "of the dug base; check the codes in [base] and the coordinates");
  }
}

TEST(CheckBase, OnePointGivesLevelsAndSaysWhatItTakes) {
  BaseFixture base;
  base.ask_for_all();
  base.add(12, 5, 1);
  const BaseResult r = base.check();
  EXPECT_EQ(r.verdict, Verdict::NotProven);
  EXPECT_EQ(named(r, "flatness").verdict, Verdict::NotProven);
  EXPECT_FALSE(named(r, "flatness").value);
  EXPECT_EQ(named(r, "fall").verdict, Verdict::NotProven);
  EXPECT_EQ(named(r, "bedding thinnest").verdict, Verdict::NotProven);
  EXPECT_FALSE(r.skin);
  EXPECT_FALSE(r.trim);
  // the farthest corner of the floor from (12, 5)
  EXPECT_NEAR(r.largest_hole->in_metres(), std::hypot(12.2, 5.2), 1e-9);
}

TEST(CheckBase, CoverageLimitIsAMillimetreOverTheSquareGrid) {
  // points at the nodes of a 1.5 m grid from toe to toe: the hole is half a diagonal
  BaseFixture base;
  base.length = 23.6, base.width = 8.6;
  base.ask_for_all();
  base.add_grid(1.5, [](double, double) { return 0.0; });
  const BaseResult r = base.check();
  EXPECT_EQ(named(r, "coverage").verdict, Verdict::Conforms);
  EXPECT_NEAR(mm(named(r, "coverage").value), 1500 / std::numbers::sqrt2, 1e-5);
  EXPECT_NEAR(mm(named(r, "coverage").limit), 1500 / std::numbers::sqrt2 + 1, 1e-9);
  base.input.spacing = Length::metres(1.498);
  const BaseResult less = base.check();
  EXPECT_EQ(named(less, "coverage").verdict, Verdict::DoesNotConform);
  EXPECT_EQ(less.verdict, Verdict::NotProven);  // holes prove nothing, and fail nothing
}

std::vector<std::string> texts(const BaseResult& r, const std::string& code) {
  std::vector<std::string> found;
  for (const Finding& finding : r.head.findings)
    if (finding.code == code) found.push_back(finding.text);
  return found;
}

TEST(CheckBase, FallInSizeAndDirection) {
  BaseFixture base;
  base.ask_for_all();
  // steeper by 0.15 % along the fall: 1.5 mm per metre across, down
  base.add_grid(1.5, [](double, double across) { return 1.5 * (4.8 - across); });
  const BaseResult r = base.check();
  EXPECT_NEAR(percent(named(r, "fall").value), 0.15, 1e-7);
  EXPECT_EQ(named(r, "fall").verdict, Verdict::DoesNotConform);
  EXPECT_NEAR(r.best_plane->fall.in_percent(), 0.65, 1e-7);
  EXPECT_TRUE(texts(r, "fall_reversed").empty());
}

TEST(CheckBase, AReversedFallIsToldByItsLowCorner) {
  BaseFixture base;
  base.fall_bearing = 105;  // C is the low corner
  base.add_grid(1.5, [](double along, double across) {
    const double turn = 22.5 * std::numbers::pi / 180;  // downhill from the width's direction
    return 10 * (across * std::cos(turn) + along * std::sin(turn)) - 30;
  });
  const BaseResult r = base.check();
  const auto reversed = texts(r, "fall_reversed");
  ASSERT_EQ(reversed.size(), 1u);
  EXPECT_EQ(reversed[0], "the cross-fall runs the wrong way: low corner is A, plan says C");
}

TEST(CheckBase, SkinAndVolumesOfATiltedBase) {
  BaseFixture base;
  base.ask_for_all();
  // from -8 mm at the toe by A-B to +8 mm at the toe by C-D
  base.add_grid(1.5, [](double, double across) { return -8 + 16 * (across + 0.2) / 10; });
  const BaseResult r = base.check();
  EXPECT_NEAR(r.skin->thickest.in_millimetres(), 20 + 8 - 16 * 0.02, 1e-6);
  EXPECT_NEAR(r.skin->thinnest.in_millimetres(), 20 - 8 + 16 * 0.02, 1e-6);
  EXPECT_NEAR(r.skin->volume.in_cubic_metres(), 24 * 9.6 * 0.020, 1e-8);
  // two wedges, 8 mm high over 5 m by 24.4 m
  EXPECT_NEAR(r.trim->in_cubic_metres(), 24.4 * 5 * 0.008 / 2, 1e-8);
  EXPECT_NEAR(r.make_up->in_cubic_metres(), 24.4 * 5 * 0.008 / 2, 1e-8);
  // 12.32 and 27.68: the tank may go up 2.68 mm at the least, 2.32 mm at the most
  EXPECT_FALSE(r.skin->shift_that_fits);
}

TEST(CheckBase, BeyondTheOutermostPointsTheEdgeIsCarriedAndSaid) {
  BaseFixture base;
  for (const double along : {2.0, 8.0, 16.0, 22.0})
    for (const double across : {1.0, 5.0, 9.0}) base.add(along, across, 6);
  const BaseResult r = base.check();
  EXPECT_NEAR(r.trim->in_cubic_metres(), 24.4 * 10 * 0.006, 1e-8);
  EXPECT_NEAR(r.measured_area->in_square_metres(), 20 * 8, 1e-6);
  EXPECT_NEAR(r.skin->thinnest.in_millimetres(), 14, 1e-6);
  ASSERT_EQ(r.head.assumed.size(), 1u);
  EXPECT_NE(r.head.assumed[0].find("84.00 of 244.00 m2"), std::string::npos) << r.head.assumed[0];
}

TEST(CheckBase, TolerancesThatPermitABadSkinAreCautioned) {
  BaseFixture base;
  base.ask_for_all();
  base.add_grid(3, [](double, double) { return 0.0; });
  EXPECT_TRUE(base.check().head.cautions.empty());
  base.input.level_tolerance = Tolerance{Length::millimetres(6), Length::millimetres(10)};
  const BaseResult r = base.check();
  ASSERT_EQ(r.head.cautions.size(), 1u);
  EXPECT_NE(r.head.cautions[0].find("from 14.0 mm to 30.0 mm"), std::string::npos);
}

// An L-shaped floor: parts beyond the re-entrant corner are no floor.
TEST(CheckBase, ReentrantFloor) {
  BaseFixture base;
  base.fall_percent = 0;
  PlannedBase planned = base.planned();
  const auto at = [&](double along, double across) {
    return planned.tank.from_a(Length::metres(along), Length::metres(across));
  };
  planned.tank.corners = {at(0, 0), at(24, 0), at(24, 4), at(10, 4), at(10, 9.6), at(0, 9.6)};
  planned.toe = {at(-.2, -.2),  at(24.2, -.2), at(24.2, 4.2),
                 at(10.2, 4.2), at(10.2, 9.8), at(-.2, 9.8)};
  base.add_grid(1.0, [](double, double) { return 5.0; });
  const BaseResult r = check_base(base.input, planned);
  const double floor = 24.4 * 4.4 + 10.4 * 5.6;
  EXPECT_NEAR(r.floor_area.in_square_metres(), floor, 1e-8);
  EXPECT_NEAR(r.trim->in_cubic_metres(), floor * 0.005, 1e-8);
  EXPECT_NEAR(r.skin->volume.in_cubic_metres(), (24 * 4 + 10 * 5.6) * 0.015, 1e-8);
  EXPECT_LT(r.points.size(), base.input.points.size());
}

}  // namespace
}  // namespace squaredig::base
