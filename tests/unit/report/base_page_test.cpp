// What the base report shows beside its checks: every figure is a field of the result.
#include <gtest/gtest.h>

#include "report/base_maps.h"
#include "report/base_sheet.h"
#include "unit/report/reading.h"
#include "unit/report/results.h"

namespace squaredig::report {
namespace {

template <class Draw>
std::string drawn(const base::BaseResult& base, const Draw& draw) {
  Canvas canvas = Canvas::svg({190, 105}, "map");
  draw(canvas, base, Box{{0, 0}, {190, 105}});
  return canvas.finish();
}

base::RepairPatch patch_at(double along, double in) {
  base::RepairPatch patch;
  patch.number = 1;
  patch.area = Area::square_metres(1.5);
  patch.volume = Volume::cubic_metres(0.0125);
  patch.deepest = {"B4", at_tank(along, in), metres(along), metres(in), metres(-0.0142)};
  patch.spots = {patch.deepest};
  patch.along_ab = {metres(along - 0.4), metres(along + 0.6)};
  patch.across_ab = {metres(in - 0.25), metres(in + 0.75)};
  patch.rings = {{at_tank(along - 0.4, in - 0.2), at_tank(along + 0.6, in - 0.2),
                  at_tank(along + 0.1, in + 0.8)}};
  return patch;
}

TEST(BasePage, RepairIsTiedToTheStrings) {
  base::BaseResult base = invented_base();
  base.repair = {patch_at(2.2, 1.75)};
  base.repair[0].work = base::Work::MakeUp;
  base.repair[0].note = "over-dug: make up as the specification says; ask the engineer";
  const std::string page = base_page(base, invented_sheet("Base report"));
  EXPECT_TRUE(has(page, "2.20 along A-B, 1.75 in"));
  EXPECT_TRUE(has(page, "1.80 to 2.80"));
  EXPECT_TRUE(has(page, "1.50 to 2.50"));
  EXPECT_TRUE(has(page, "-14.2"));
  EXPECT_TRUE(has(page, "No. 1: over-dug: make up as the specification says; ask the engineer."));
  EXPECT_TRUE(has(drawn(base, draw_deviation_map), ">no. 1<"));
}

TEST(BasePage, TheStraightedgeIsDrawnWithItsOpening) {
  base::BaseResult base = invented_base();
  EXPECT_FALSE(has(drawn(base, draw_deviation_map), "straightedge\""));
  base.straightedge = {metres(0.0189),  at_tank(0.5, 1), at_tank(3.5, 1),
                       at_tank(0.6, 1), at_tank(3.4, 1), at_tank(2, 1)};
  const std::string map = drawn(base, draw_deviation_map);
  EXPECT_TRUE(has(map, "class=\"straightedge\""));
  EXPECT_TRUE(has(map, ">rule 19 mm<"));
}

TEST(BasePage, APointThatStandsAloneIsMarked) {
  base::BaseResult base = invented_base();
  base.points[7].place = {"as-dug.csv", 9, 1};
  EXPECT_FALSE(has(drawn(base, draw_deviation_map), ">?<"));
  base.outliers = {{"B7", {"as-dug.csv", 9, 1}, metres(0.0062), ""}};
  EXPECT_TRUE(has(drawn(base, draw_deviation_map), ">?<"));
}

// A scanner's cloud: the map draws what can be read, the worst of each place among it, and the list
// holds what is outside.
TEST(BasePage, OfAScannersPointsThoseAreShownThatMatter) {
  base::BaseResult base = invented_base();
  const base::JudgedPoint one = base.points[0];
  base.points.clear();
  for (int i = 0; i < 6000; ++i) {
    base::JudgedPoint p = one;
    const int row = i / 100, column = i % 100;
    const double along = 4.0 * column / 100, in = 3.0 * row / 60;
    p.point = "S" + std::to_string(i);
    p.at = {at_tank(along, in), level(kFloor)};
    p.deviation = metres(i == 3033 ? 0.0871 : 0.001);
    p.verdict = i == 3033 ? Verdict::DoesNotConform : Verdict::Conforms;
    base.points.push_back(p);
  }
  const std::string map = drawn(base, draw_deviation_map);
  EXPECT_TRUE(has(map, ">+87<"));
  std::size_t figures = 0;
  for (std::size_t at = map.find(">+1<"); at != std::string::npos; at = map.find(">+1<", at + 1))
    ++figures;
  EXPECT_GT(figures, 100u);
  EXPECT_LT(figures, 2000u);
  EXPECT_TRUE(has(map, std::to_string(figures + 1) + " of 6000 points"));
  const std::string page = base_page(base, invented_sheet("Base report"));
  EXPECT_TRUE(has(page, "S3033"));
  EXPECT_FALSE(has(page, "S3034"));
  EXPECT_TRUE(has(page, "Of 6000 points the first 1 that are outside or not proven"));
}

base::BaseResult base_with_thin_bedding() {
  base::BaseResult base = invented_base();
  base.skin.emplace();
  base.skin->thinnest_at = at_tank(1, 1);
  base.skin->thickest_at = at_tank(3, 2);
  base::SkinPatch thin;
  thin.area = Area::square_metres(3.04);
  thin.worst = metres(0.0017);
  thin.at = at_tank(1, 1);
  thin.along_ab = metres(1), thin.across_ab = metres(1);
  thin.rings = {{at_tank(0.5, 0.5), at_tank(1.5, 0.5), at_tank(1, 1.5)}};
  base.skin->too_thin = {thin};
  return base;
}

TEST(BasePage, WhereTheBeddingLeavesItsLimits) {
  base::BaseResult base = base_with_thin_bedding();
  expect_golden("bedding", drawn(base, draw_bedding_map));
  base.skin->shift_words = "no shift keeps it";
  base.skin->inverts = {{"outlet", level(62.45), level(62.451), level(62.452)}};
  base.verdict_without_outliers = Verdict::NotProven;
  const std::string map = drawn(base, draw_bedding_map);
  EXPECT_TRUE(has(map, "m², 2 mm<"));
  const std::string page = base_page(base, invented_sheet("Base report"));
  EXPECT_TRUE(has(page, "too thin"));
  EXPECT_TRUE(has(page, "1.00 along A-B, 1.00 in"));
  EXPECT_TRUE(has(page, "Level of the tank: no shift keeps it."));
  EXPECT_TRUE(has(page, "62.4510 to 62.4520"));
  EXPECT_TRUE(has(page, "the base without the points that stand alone"));
}

// Two by two units of 2 by 1.5 m on the invented tank.
base::StackGap four_units() {
  base::StackGap gap;
  gap.columns = gap.rows = 2;
  gap.joints = {{1, 1, 2, 1, metres(0.0313), at_tank(2, 0), at_tank(2, 1.5)},
                {1, 1, 1, 2, metres(-0.002), at_tank(0, 1.5), at_tank(2, 1.5)},
                {2, 1, 2, 2, metres(0.001), at_tank(2, 1.5), at_tank(4, 1.5)},
                {1, 2, 2, 2, metres(-0.0121), at_tank(2, 1.5), at_tank(2, 3)}};
  gap.widest = gap.joints[0];
  gap.listed = {gap.joints[0], gap.joints[3]};
  gap.listed_over = metres(0.01);
  gap.on = "the as-dug base";
  return gap;
}

TEST(BasePage, TheWidestJointIsShownWithItsUnits) {
  base::BaseResult base = invented_base();
  EXPECT_FALSE(has(base_page(base, invented_sheet("Base report")), "Joints between stacks"));
  base.stack_gap = four_units();
  ASSERT_TRUE(has_stack_map(base));
  const std::string map = drawn(base, draw_stack_map);
  expect_golden("joints", map);
  EXPECT_TRUE(has(map, ">31 mm<"));
  for (const char* number : {">1<", ">2<"}) EXPECT_TRUE(has(map, number));
  const std::string page = base_page(base, invented_sheet("Base report"));
  EXPECT_TRUE(has(page, "column 1 row 1"));
  EXPECT_TRUE(has(page, "31.3"));
  EXPECT_TRUE(has(page, "2 of 4 joints over 10.0 mm; on the as-dug base."));
}

TEST(BasePage, WhatTheSurveyDidNotSee) {
  base::BaseResult base = invented_base();
  base.reach.emplace();
  base.reach->limit = metres(1.062);
  base.reach->corners = {{"A", at_tank(0, 0), metres(0.2), true},
                         {"B", at_tank(4, 0), metres(2.34), false}};
  base.reach->sides = {{"AB", metres(4.4), metres(1.75), metres(2.65), metres(4.4)}};
  base.reach->far_parts = {
      {Area::square_metres(5.5), at_tank(4, 0), metres(4.2), metres(-0.2), metres(2.4)}};
  base.holes = {{at_tank(3.9, 0.2), metres(3.9), metres(0.2), metres(1.9)}};
  const std::string page = base_page(base, invented_sheet("Base report"));
  EXPECT_TRUE(has(page, "corner by B"));
  EXPECT_TRUE(has(page, "2.34"));
  EXPECT_TRUE(has(page, "2.65 to 4.40 along it"));
  EXPECT_TRUE(has(page, "farther than the spacing from every point, worst 2.40 m at 4.20 along"));
  EXPECT_TRUE(has(page, "not all seen"));
  EXPECT_TRUE(has(drawn(base, draw_deviation_map), "survey here too"));
  base.reach->corners[1].seen = true;
  base.reach->sides[0].unseen = {};
  base.reach->far_parts.clear();
  EXPECT_TRUE(has(base_page(base, invented_sheet("Base report")), "all seen"));
}

TEST(BasePage, BeforeAndAfterTheRepair) {
  base::BaseResult base = invented_base();
  base.before.emplace();
  base.before->surveyed = "2026-03-20 14:10";
  base.before->checks = base.checks;
  base.before->checks[0].value = metres(0.0287);
  base.before->fixed = {"flatness"};
  base.before->not_fixed = {"level high"};
  base.before->spoiled = {"level low"};
  base.before->patches = {{patch_at(2.2, 1.75), Verdict::DoesNotConform, "R4", metres(0.0091)},
                          {patch_at(3.1, 0.5), std::nullopt, "", {}}};
  const std::string page = base_page(base, invented_sheet("Base report"));
  EXPECT_TRUE(has(page, "Before and after the repair"));
  EXPECT_TRUE(has(page, "First surveyed 2026-03-20 14:10."));
  EXPECT_TRUE(has(page, "+28.7 mm"));
  EXPECT_TRUE(has(page, "Put right by the repair: flatness."));
  EXPECT_TRUE(has(page, "Still open: level high."));
  EXPECT_TRUE(has(page, "Spoiled since: level low."));
  EXPECT_TRUE(has(page, "R4"));
  EXPECT_TRUE(has(page, "+9.1"));
  EXPECT_TRUE(has(page, "not measured again"));
}

}  // namespace
}  // namespace squaredig::report
