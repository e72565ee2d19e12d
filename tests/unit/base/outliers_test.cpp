// Which points are flagged as hardly ground, and which bear each other out.
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
  EXPECT_EQ(r.points.back().finding, "too high, stands alone");
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

std::vector<std::string> flagged(const BaseResult& r) {
  std::vector<std::string> names;
  for (const Outlier& o : r.outliers) names.push_back(o.point);
  return names;
}

// A quiet base with one millimetre of noise, and something planted on it.
template <class Planted>
BaseFixture with(double spacing, const Planted& planted) {
  BaseFixture base = asked();
  std::mt19937 random(kSeed);
  std::normal_distribution<double> uneven(0, 1);
  base.input.sigma_height = base.input.sigma_common = Length::millimetres(0.5);
  base.add_grid(spacing, [&](double along, double across) {
    return uneven(random) + planted(along, across);
  });
  return base;
}

// The six and more points of one hollow, its edge between the points, are no outliers, whatever its
// depth and size.
TEST(Outliers, AHollowOfSeveralPointsIsNone) {
  for (const double depth : {-15.0, -27.0, -60.0})
    for (const double reach : {1.1, 1.6, 2.4, 3.5}) {
      const BaseFixture base = with(1.5, [&](double along, double across) {
        return std::hypot(along - 12.5, across - 5) < reach ? depth : 0.0;
      });
      int inside = 0;
      for (const JudgedPoint& p : base.check().points) inside += p.deviation.in_millimetres() < -9;
      ASSERT_GE(inside, 2) << reach;
      EXPECT_TRUE(flagged(base.check()).empty()) << depth << " mm deep, reach " << reach;
    }
}

// Noise alone, of any size, blames no point.
TEST(Outliers, NoiseAloneIsNone) {
  for (unsigned seed = 0; seed < 30; ++seed) {
    std::mt19937 random(kSeed + seed);
    std::normal_distribution<double> uneven(0, 1 + seed);
    BaseFixture base = asked();
    base.add_grid(1.5, [&](double, double) { return uneven(random); });
    EXPECT_TRUE(flagged(base.check()).empty()) << "seed " << kSeed + seed;
  }
}

TEST(Outliers, TwoStonesFarApartAreTwo) {
  BaseFixture base = with(1.5, [](double, double) { return 0.0; });
  base.add(5.1, 4.9, 40, "S1");
  base.add(18.1, 4.9, -35, "S2");
  EXPECT_EQ(flagged(base.check()), (std::vector<std::string>{"S1", "S2"}));
}

// A stone in a hollow stands off the hollow, and only it.
TEST(Outliers, AStoneInAHollowIsOne) {
  BaseFixture base = with(1.5, [](double along, double across) {
    return std::abs(along - 12) < 4 && std::abs(across - 5) < 3 ? -25.0 : 0.0;
  });
  base.add(12.1, 5.1, 30, "S1");
  EXPECT_EQ(flagged(base.check()), std::vector<std::string>{"S1"});
}

// The top of the batter booked with the base's code: on the rim, high, and alone.
TEST(Outliers, AWrongCodeAtTheEdgeIsOne) {
  BaseFixture base = with(1.5, [](double, double) { return 0.0; });
  base.add(6.4, -0.2, 320, "BATTER");
  EXPECT_EQ(flagged(base.check()), std::vector<std::string>{"BATTER"});
}

// One place levelled twice, 60 mm apart: the one that its neighbours do not bear out, told with the
// other, whichever of them came first.
TEST(Outliers, OfADoubledPlaceTheOneThatIsWrong) {
  for (const bool wrong_first : {true, false}) {
    BaseFixture base = with(1.5, [](double, double) { return 0.0; });
    base.add(9.31, 4.03, wrong_first ? 60 : 0, wrong_first ? "WRONG" : "RIGHT");
    base.add(9.31, 4.03, wrong_first ? 0 : 60, wrong_first ? "RIGHT" : "WRONG");
    const BaseResult r = base.check();
    ASSERT_EQ(flagged(r), std::vector<std::string>{"WRONG"});
    EXPECT_EQ(r.outliers[0].contradicted_by, "RIGHT");
    EXPECT_EQ(r.verdict, Verdict::DoesNotConform);
    EXPECT_EQ(r.verdict_without_outliers, Verdict::Conforms);
    EXPECT_NE(r.head.findings.back().text.find("and point \"RIGHT\" at the same place says "
                                               "otherwise: one of the two is wrong"),
              std::string::npos);
  }
}

// Two staffs within what the plan's uncertainty can tell apart stand at one place too.
TEST(Outliers, ADoubledPlaceNeedNotBeTheSameNumber) {
  BaseFixture base = with(1.5, [](double, double) { return 0.0; });
  base.input.sigma_plan = Length::millimetres(10);
  base.add(9.310, 4.03, 0, "RIGHT");
  base.add(9.318, 4.03, 60, "WRONG");
  const BaseResult r = base.check();
  ASSERT_EQ(flagged(r), std::vector<std::string>{"WRONG"});
  EXPECT_EQ(r.outliers[0].contradicted_by, "RIGHT");
}

}  // namespace
}  // namespace squaredig::base
