// The second survey beside the first, and units on the bedding as laid.
#include <gtest/gtest.h>

#include "unit/base/base_fixture.h"

namespace squaredig::base {
namespace {

using testing::BaseFixture;

BaseFixture asked() {
  BaseFixture base;
  base.input.level_tolerance = Tolerance{Length::millimetres(5), Length::millimetres(10)};
  return base;
}

TEST(AfterRepair, TheSecondSurveyIsJudgedAndTheFirstStandsBesideIt) {
  BaseFixture before = asked();
  before.input.sigma_height = before.input.sigma_common = Length::millimetres(0.5);
  before.input.flatness_tolerance = Length::millimetres(8);
  before.least_mm = 0;
  before.add_grid(1.5, [](double along, double) { return along > 12 ? 9.0 : -3.0; });
  BaseFixture after = asked();
  after.add_grid(1.5, [](double along, double) { return along > 20 ? 7.0 : -3.0; });
  after.input.points.files = {"after.csv"};
  before.input.after_repair = after.input.points;
  before.input.surveyed = "2026-03-20 14:10";
  EXPECT_FALSE(before.check().surveyed);  // the first one's time is not the second one's
  before.input.after_repair_surveyed = "2026-03-22 09:30";
  const BaseResult r = before.check();
  ASSERT_TRUE(r.before);
  EXPECT_EQ(r.surveyed, "2026-03-22 09:30");
  EXPECT_EQ(r.before->surveyed, "2026-03-20 14:10");
  EXPECT_EQ(r.before->verdict, Verdict::DoesNotConform);
  EXPECT_NEAR(r.before->deviation->high.in_millimetres(), 9, 1e-6);
  EXPECT_NEAR(r.deviation->high.in_millimetres(), 7, 1e-6);
  EXPECT_EQ(r.before->not_fixed, (std::vector<std::string>{"level high", "flatness"}));
  EXPECT_LT(*r.trim, *r.before->trim);
  EXPECT_EQ(r.points.front().place.file, "after.csv");
  before.input.after_repair->points.clear();
  BaseFixture well = asked();
  well.add_grid(1.5, [](double, double) { return -1.0; });
  before.input.after_repair = well.input.points;
  const BaseResult good = before.check();
  EXPECT_EQ(good.verdict, Verdict::Conforms);
  EXPECT_EQ(good.before->fixed, (std::vector<std::string>{"level high", "flatness"}));
  EXPECT_TRUE(good.before->not_fixed.empty());
}

TEST(BeddingPoints, UnitsStandOnTheBeddingAsLaid) {
  BaseFixture base = asked();
  base.add_grid(1.5, [](double along, double) { return along > 12 ? 6.0 : -6.0; });
  BaseFixture bedding;
  bedding.add_grid(1.5, [](double, double) { return 22.0; });  // 2 mm above the underside
  base.input.bedding_points = bedding.input.points;
  const BaseResult r = base.check();
  EXPECT_EQ(r.stack_gap->on, "the top of bedding as laid");
  EXPECT_NEAR(r.stack_gap->widest->opening.in_millimetres(), 0, 1e-6);
  EXPECT_NEAR(r.bedding_top->mean.in_millimetres(), 2, 1e-6);
  base.input.bedding_points = std::nullopt;
  EXPECT_GT(abs(base.check().stack_gap->widest->opening).in_millimetres(), 5);
}

// Three places: one trimmed and levelled again, one trimmed too little, one not levelled again.
TEST(AfterRepair, EachPatchOfTheFirstSurveyIsLookedAtAgain) {
  const auto humps = [](double first, double second, double third) {
    return [=](double along, double across) {
      const auto near = [&](double u) { return std::hypot(along - u, across - 5) < 1.2; };
      return near(4) ? first : near(12) ? second : near(20) ? third : 0.0;
    };
  };
  BaseFixture before = asked();
  before.input.sigma_height = before.input.sigma_common = Length::millimetres(0.5);
  before.input.least_repair = Area::square_metres(0.5);
  before.least_mm = 0;
  before.add_grid(0.75, humps(20, 25, 15));
  BaseFixture after = asked();
  after.add_grid(0.75, humps(1, 9, 15));
  std::erase_if(after.input.points.points, [&](const SurveyPoint& p) {
    return after.planned().tank.along_ab(p.at.at) > Length::metres(17);
  });
  before.input.after_repair = after.input.points;
  const BeforeRepair b = *before.check().before;
  ASSERT_EQ(b.patches.size(), 3u);  // deepest first
  EXPECT_NEAR(b.patches[0].patch.deepest.along_ab.in_metres(), 12, 1.2);
  EXPECT_EQ(b.patches[0].verdict, Verdict::DoesNotConform);
  EXPECT_NEAR(b.patches[0].deviation.in_millimetres(), 9, 1e-6);
  EXPECT_EQ(b.patches[1].verdict, Verdict::Conforms);
  EXPECT_NEAR(b.patches[1].deviation.in_millimetres(), 1, 1e-6);
  EXPECT_FALSE(b.patches[2].verdict);
  EXPECT_EQ(b.not_fixed, std::vector<std::string>{"level high"});
}

// What was not proven and is now counts as put right; what conformed and no longer does is told.
TEST(AfterRepair, WhatTheRepairSettledAndWhatItSpoiled) {
  BaseFixture before = asked();
  before.input.sigma_height = before.input.sigma_common = Length::millimetres(1);
  before.least_mm = 0;
  before.add_grid(1.5, [](double along, double) { return along > 12 ? 4.0 : 0.0; });
  BaseFixture after = asked();
  after.add_grid(1.5, [](double along, double) { return along > 12 ? -14.0 : 0.0; });
  before.input.after_repair = after.input.points;
  const BeforeRepair b = *before.check().before;
  EXPECT_EQ(b.fixed, std::vector<std::string>{"level high"});
  EXPECT_EQ(b.spoiled, (std::vector<std::string>{"level low", "bedding thickest"}));
}

}  // namespace
}  // namespace squaredig::base
