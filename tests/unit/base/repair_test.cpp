#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "unit/base/base_fixture.h"

namespace squaredig::base {
namespace {

using testing::BaseFixture;
using testing::named;

constexpr unsigned kSeed = 20260316;

BaseFixture asked() {
  BaseFixture base;
  base.input.level_tolerance = Tolerance{Length::millimetres(5), Length::millimetres(10)};
  return base;
}

// A cone of 20 mm, 3 m wide at its foot, round (12, 4.8).
double cone(double along, double across) {
  return std::max(0.0, 20 * (1 - std::hypot(along - 12, across - 4.8) / 1.5));
}

TEST(Repair, AConeIsTrimmedAboveTheTolerance) {
  BaseFixture base = asked();
  base.add_grid(0.1, cone);
  const BaseResult r = base.check();
  ASSERT_EQ(r.repair.size(), 1u);
  const RepairPatch& patch = r.repair[0];
  EXPECT_EQ(patch.work, Work::Trim);
  // above 5 mm the cone is a circle of 1.125 m; below it stands a cylinder of 5 mm
  const double radius = 1.5 * 0.75;
  const double area = M_PI * radius * radius;
  EXPECT_NEAR(patch.area.in_square_metres(), area, 0.02);
  EXPECT_NEAR(patch.volume.in_cubic_metres(), area * (0.005 + 0.015 / 3), 4e-4);
  EXPECT_NEAR(patch.deepest.along_ab.in_metres(), 12, 0.06);
  EXPECT_NEAR(patch.deepest.across_ab.in_metres(), 4.8, 0.06);
  EXPECT_LT(patch.deepest.move.in_millimetres(), -18.9);
  ASSERT_EQ(patch.rings.size(), 1u);
  for (const GridPoint& corner : patch.rings[0])
    EXPECT_NEAR(
        distance(corner, base.planned().tank.from_a(Length::metres(12), Length::metres(4.8)))
            .in_metres(),
        radius, 0.03);
  EXPECT_TRUE(patch.note.empty());
}

TEST(Repair, OverDigIsMadeUpInWordsThatLeaveItToTheEngineer) {
  BaseFixture base = asked();
  base.add_grid(0.5, [](double along, double across) { return -1.5 * cone(along, across); });
  const BaseResult r = base.check();
  ASSERT_EQ(r.repair.size(), 1u);
  EXPECT_EQ(r.repair[0].work, Work::MakeUp);
  EXPECT_GT(r.repair[0].deepest.move, Length{});
  EXPECT_NE(r.repair[0].note.find("ask the engineer"), std::string::npos);
}

TEST(Repair, ASmallPatchGrowsToTheLeastArea) {
  BaseFixture base = asked();
  base.add_grid(0.25, [](double along, double across) { return 0.4 * cone(along, across); });
  const Area small = base.check().repair.at(0).area;
  base.input.least_repair = small * 2.5;
  const BaseResult r = base.check();
  ASSERT_EQ(r.repair.size(), 1u);
  EXPECT_NEAR(r.repair[0].area / *base.input.least_repair, 1, 1e-3);
  EXPECT_TRUE(r.repair[0].note.empty());
}

TEST(Repair, AStoneIsLeftToHandsAndTold) {
  BaseFixture base = asked();
  base.input.least_repair = Area::square_metres(0.5);
  base.add_grid(1.5, [](double, double) { return -1.0; });
  for (const double side : {-0.05, 0.05})
    for (const double up : {-0.05, 0.05}) base.add(12 + side, 4.8 + up, -1);
  base.add(12, 4.8, 25, "STONE");
  const BaseResult r = base.check();
  ASSERT_EQ(r.repair.size(), 1u);
  EXPECT_LT(r.repair[0].area.in_square_metres(), 0.01);
  EXPECT_NE(r.repair[0].note.find("by hand"), std::string::npos);
  EXPECT_EQ(r.repair[0].deepest.point, "STONE");
}

BaseFixture random_base(unsigned number) {
  std::mt19937 random(kSeed + number);
  std::normal_distribution<double> uneven(0, 6);
  BaseFixture base = asked();
  base.add_grid(1.2, [&](double, double) { return uneven(random); });
  base.input.least_repair = Area::square_metres(1);
  return base;
}

TEST(Repair, EveryPointBeyondTheToleranceLiesInOnePatch_repair_1) {
  for (unsigned i = 0; i < 10; ++i) {
    const BaseFixture base = random_base(i);
    const BaseResult r = base.check();
    for (const JudgedPoint& p : r.points) {
      const bool high = p.deviation > base.input.level_tolerance->high;
      if (!high && p.deviation >= -base.input.level_tolerance->low) continue;
      int patches = 0;
      for (const RepairPatch& patch : r.repair) {
        if ((patch.work == Work::Trim) != high) continue;
        for (const RepairSpot& spot : patch.spots) patches += spot.point == p.point;
      }
      EXPECT_EQ(patches, 1) << p.point << ", seed " << kSeed << ", case " << i;
    }
  }
}

TEST(Repair, VolumeIsDownToTheDigLevel_repair_2) {
  BaseFixture base = asked();  // a step of 12 mm over half the floor, with a steep edge
  const auto step = [](double along, double) { return along > 12 ? 12.0 : 0.0; };
  for (const double along : {-0.2, 12.0, 12.001, 24.2})
    for (const double across : {-0.2, 9.8}) base.add(along, across, step(along, across));
  const RepairPatch patch = base.check().repair.at(0);
  EXPECT_NEAR(patch.area.in_square_metres(), 12.2 * 10, 0.01);
  EXPECT_NEAR(patch.volume.in_cubic_metres(), 12.2 * 10 * 0.012, 1e-4);
}

TEST(Repair, AGreaterLeastAreaNeverGivesMorePatches_repair_3) {
  for (unsigned i = 0; i < 10; ++i) {
    BaseFixture base = random_base(i);
    std::size_t before = 10000;
    for (const double least : {0.0, 0.5, 2.0, 8.0}) {
      base.input.least_repair = Area::square_metres(least);
      const std::size_t patches = base.check().repair.size();
      EXPECT_LE(patches, before) << "seed " << kSeed << ", case " << i;
      before = patches;
    }
  }
}

TEST(Outliers, AStaffOnAStoneIsFlaggedAndTheVerdictGivenWithoutIt) {
  BaseFixture base = asked();
  std::mt19937 random(kSeed);
  std::normal_distribution<double> uneven(0, 1);
  base.input.sigma_height = base.input.sigma_common = Length::millimetres(0.5);
  base.add_grid(1.5, [&](double, double) { return uneven(random) - 2; });
  base.add(12.1, 4.9, 60, "S1");
  const BaseResult r = base.check();
  ASSERT_EQ(r.outliers.size(), 1u);
  EXPECT_EQ(r.outliers[0].point, "S1");
  EXPECT_NEAR(r.outliers[0].by.in_millimetres(), 62, 2);
  EXPECT_EQ(r.verdict, Verdict::DoesNotConform);
  EXPECT_EQ(r.verdict_without_outliers, Verdict::Conforms);
  // the stone leaves too little bedding too, which stands before it
  ASSERT_EQ(r.head.findings.size(), 3u);
  EXPECT_EQ(r.head.findings[0].code, "bedding_too_thin");
  EXPECT_EQ(r.head.findings[1].code, "tank_shift");
  EXPECT_EQ(r.head.findings[2].code, "outlier");
  EXPECT_EQ(r.points.back().point, "S1");  // never dropped
}

TEST(Outliers, AHonestHumpOfSeveralPointsIsNone) {
  BaseFixture base = asked();
  std::mt19937 random(kSeed);
  std::normal_distribution<double> uneven(0, 1);
  base.add_grid(0.75, [&](double along, double across) {
    return uneven(random) +
           12 * std::exp(-0.1 * (std::pow(along - 8, 2) + std::pow(across - 5, 2)));
  });
  const BaseResult r = base.check();
  EXPECT_EQ(named(r, "level high").verdict, Verdict::DoesNotConform);
  EXPECT_TRUE(r.outliers.empty());
  EXPECT_FALSE(r.verdict_without_outliers);
}

TEST(Coverage, HolesSayWhereMorePointsAreWanted) {
  BaseFixture base = asked();
  base.input.spacing = Length::metres(3);
  base.add_grid(1.5, [](double, double) { return 0.0; });
  EXPECT_TRUE(base.check().holes.empty());
  std::erase_if(base.input.points.points, [&](const SurveyPoint& p) {
    return base.planned().tank.along_ab(p.at.at) > Length::metres(14);
  });
  const BaseResult r = base.check();
  EXPECT_EQ(named(r, "coverage").verdict, Verdict::DoesNotConform);
  ASSERT_FALSE(r.holes.empty());
  for (const HoleInSurvey& hole : r.holes)
    base.add(hole.along_ab.in_metres(), hole.across_ab.in_metres(), 0);
  EXPECT_EQ(named(base.check(), "coverage").verdict, Verdict::Conforms);
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
  const BaseResult r = before.check();
  ASSERT_TRUE(r.before);
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

}  // namespace
}  // namespace squaredig::base
