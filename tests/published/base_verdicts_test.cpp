// The base check against published and derived values; each says how strictly its source is known.
#include <gtest/gtest.h>

#include <cmath>

#include "base/decision_internal.h"
#include "unit/base/base_fixture.h"

namespace squaredig::base {
namespace {

using testing::BaseFixture;
using testing::mm;
using testing::named;

// JCGM 106:2012 Table 1, from memory and recomputed: one-sided z for a conformance probability.
TEST(BasePublished, Jcgm1OneSidedQuantiles) {
  const double table[][2] = {{0.80, 0.84}, {0.90, 1.28}, {0.95, 1.64}, {0.99, 2.33}, {0.999, 3.09}};
  for (const auto& [probability, z] : table)
    EXPECT_NEAR(normal_quantile(Ratio::of(probability)), z, 0.0055) << probability;
  // the digits of the definition
  EXPECT_NEAR(normal_quantile(Ratio::of(0.95)), 1.6448536269514722, 1e-14);
  EXPECT_NEAR(normal_quantile(Ratio::of(0.999)), 3.0902323061678132, 1e-13);
}

// Guard band r U with U = 2 u, result on the acceptance limit: probabilities of conformity as
// stated by ISO 14253-1 and ILAC-G8:09/2019 Table 1, from memory and recomputed.
TEST(BasePublished, Jcgm2GuardBands) {
  const double rows[][2] = {{0.5, 0}, {0.952, 0.83}, {0.977, 1}, {0.9987, 1.5}};
  for (const auto& [probability, r] : rows)
    EXPECT_NEAR(normal_quantile(Ratio::of(probability)), 2 * r, 0.015) << r;
}

// JCGM-4, the non-binary rule of ILAC-G8:09/2019 4.2.3, read in a public copy. Its conditional pass
// and conditional fail are both "not proven" here.
TEST(BasePublished, Jcgm4ThreeZones) {
  const Length limit = Length::millimetres(25), w = Length::millimetres(6.6);
  const auto at = [&](double v) { return at_most(Length::millimetres(v), limit, w); };
  EXPECT_EQ(at(18.4), Verdict::Conforms);
  EXPECT_EQ(at(18.5), Verdict::NotProven);
  EXPECT_EQ(at(25.0), Verdict::NotProven);
  EXPECT_EQ(at(31.6), Verdict::NotProven);
  EXPECT_EQ(at(31.7), Verdict::DoesNotConform);
}

// JCGM-5, derived: tolerance 25 mm, u 4 mm, 95 % one-sided: accept up to 18.4 mm.
TEST(BasePublished, Jcgm5AcceptanceLimit) {
  EXPECT_NEAR(25 - 4 * normal_quantile(Ratio::of(0.95)), 18.4, 0.05);
  BaseFixture base;
  base.input.level_tolerance = Tolerance{Length::millimetres(25), Length::millimetres(25)};
  base.input.sigma_height = Length::millimetres(4);
  base.input.sigma_common = Length{};
  for (const double high : {18.4, 18.5}) {
    BaseFixture one = base;
    one.add(3, 3, high);
    EXPECT_EQ(named(one.check(), "level high").verdict,
              high < 18.45 ? Verdict::Conforms : Verdict::NotProven);
  }
}

BaseFixture without_uncertainty() {
  BaseFixture base;
  base.least_mm = 0, base.most_mm = 1000;
  base.input.sigma_height = base.input.sigma_plan = base.input.sigma_common = Length{};
  return base;
}

// FL03, derived: one-sided tolerance +0 / -30 mm, row by row.
TEST(BasePublished, FL03OneSidedTolerance) {
  const std::pair<double, bool> rows[] = {{1, false}, {0, true}, {-30, true}, {-31, false}};
  for (const auto& [deviation, passes] : rows) {
    BaseFixture base = without_uncertainty();
    base.input.level_tolerance = Tolerance{Length{}, Length::millimetres(30)};
    base.add(12, 5, deviation);
    const BaseResult r = base.check();
    EXPECT_EQ(r.points[0].verdict, passes ? Verdict::Conforms : Verdict::DoesNotConform)
        << deviation;
    EXPECT_EQ(named(r, deviation > -15 ? "level high" : "level low").verdict, r.points[0].verdict);
  }
}

// FL04, derived: 25 mm at any point passes, mean 10 mm fails, all readings +14. The two limits
// stand in the MRTS04 of TMR Queensland (March 2025), seen.
TEST(BasePublished, FL04MeanFailsWherePointsPass) {
  BaseFixture base = without_uncertainty();
  base.input.level_tolerance = Tolerance{Length::millimetres(25), Length::millimetres(25)};
  base.input.mean_tolerance = Length::millimetres(10);
  base.add_grid(1.5, [](double, double) { return 14.0; });
  const BaseResult r = base.check();
  EXPECT_EQ(named(r, "level high").verdict, Verdict::Conforms);
  EXPECT_EQ(named(r, "level mean").verdict, Verdict::DoesNotConform);
  EXPECT_NEAR(mm(named(r, "level mean").value), 14, 1e-6);
  EXPECT_EQ(r.verdict, Verdict::DoesNotConform);
}

// FL05, derived: a base falling 70 mm over 7 m, perfectly dug, is judged by its plane.
TEST(BasePublished, FL05SlopingDesignIsNotJudgedByOneLevel) {
  BaseFixture base = without_uncertainty();
  base.length = 7, base.width = 7;
  base.fall_percent = 1;
  base.fall_bearing = base.bearing;
  base.input.level_tolerance = Tolerance{Length::millimetres(1), Length::millimetres(1)};
  base.add_grid(1.5, [](double, double) { return 0.0; });
  const BaseResult r = base.check();
  EXPECT_EQ(r.verdict, Verdict::Conforms);
  double low = 0;
  for (const JudgedPoint& p : r.points)
    low = std::min(low, (p.at.height - Elevation::metres(62.330)).in_millimetres());
  EXPECT_LT(low, -70);  // one level would have failed it
}

// FL01, derived: the plane and its residuals, through the whole check.
TEST(BasePublished, FL01Flatness) {
  const double residual[3][3] = {{2, -4, 2}, {-4, 8, -4}, {2, -4, 2}};
  BaseFixture base = without_uncertainty();
  base.length = 3, base.width = 3;
  base.input.flatness_tolerance = Length::millimetres(12);
  for (int r = 0; r < 3; ++r)
    for (int c = 0; c < 3; ++c) base.add(1.5 * c, 1.5 * r, residual[r][c] + 10 * c - 5 * r);
  const BaseResult r = base.check();
  EXPECT_NEAR(r.flatness->least_squares.in_millimetres(), 12, 1e-6);
  EXPECT_EQ(named(r, "flatness").verdict, Verdict::Conforms);
}

// FLT-12, derived: a saddle's minimum zone is as wide as its least-squares range.
TEST(BasePublished, FLT12Saddle) {
  BaseFixture base = without_uncertainty();
  base.add(2, 2, 6), base.add(8, 2, -6), base.add(8, 8, 6), base.add(2, 8, -6);
  const BaseResult r = base.check();
  EXPECT_NEAR(r.flatness->least_squares.in_millimetres(), 12, 1e-6);
  EXPECT_NEAR(r.flatness->minimum_zone.in_millimetres(), 12, 1e-6);
}

}  // namespace
}  // namespace squaredig::base
