// Odd sets of points: few, doubled, on one line, on the rim, far apart in height.
#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "unit/base/base_fixture.h"

namespace squaredig::base {
namespace {

using testing::BaseFixture;

double plain(const Amount& a) {
  if (const auto* length = std::get_if<Length>(&a)) return length->in_metres();
  if (const auto* fall = std::get_if<Fall>(&a)) return fall->in_percent();
  return std::get<Ratio>(a).value();
}

void expect_finite(const BaseResult& r, const std::string& what) {
  for (const Check& check : r.checks)
    for (const auto& amount : {check.value, check.limit, check.uncertainty})
      if (amount) {
        EXPECT_TRUE(std::isfinite(plain(*amount))) << check.name << ", " << what;
      }
  if (r.trim) {
    EXPECT_TRUE(std::isfinite(r.trim->in_cubic_metres())) << what;
    EXPECT_GE(r.trim->in_cubic_metres(), 0) << what;
    EXPECT_GE(r.make_up->in_cubic_metres(), 0) << what;
  }
}

TEST(OddPoints, AnyPointsGiveFiniteAnswers) {
  constexpr unsigned kSeed = 20260319;
  std::mt19937 random(kSeed);
  std::uniform_int_distribution<int> count(1, 14), along(0, 6), across(0, 3), height(-30, 30);
  for (int i = 0; i < 150; ++i) {
    BaseFixture base;
    base.ask_for_all();
    base.input.straightedge = Straightedge{Length::metres(3), Length::millimetres(5)};
    base.input.least_repair = Area::square_metres(1);
    const int n = count(random);
    for (int k = 0; k < n; ++k)  // few places, so many are doubled or on one line
      base.add(4.0 * along(random), 3.2 * (i % 3 ? across(random) : 1), height(random));
    expect_finite(base.check(), "seed " + std::to_string(kSeed) + ", case " + std::to_string(i));
  }
}

TEST(OddPoints, OneWildHeightOnARealGrid) {
  BaseFixture base;
  base.ask_for_all();
  base.input.straightedge = Straightedge{Length::metres(3), Length::millimetres(5)};
  base.add_grid(1.5, [](double, double) { return 0.0; });
  base.add(5, 5, 1e7);
  const BaseResult r = base.check();
  expect_finite(r, "a height of 10 km");
  ASSERT_EQ(r.outliers.size(), 1u);
  EXPECT_EQ(r.verdict, Verdict::DoesNotConform);
}

TEST(OddPoints, DoubledPositionsAreBothJudged) {
  BaseFixture base;
  base.ask_for_all();
  base.add_grid(1.5, [](double, double) { return 0.0; });
  const std::size_t before = base.input.points.size();
  base.add(-0.2, -0.2, 40, "AGAIN");
  const BaseResult r = base.check();
  EXPECT_EQ(r.points.size(), before + 1);
  EXPECT_NE(testing::named(r, "level high").words.find("AGAIN"), std::string::npos);
}

}  // namespace
}  // namespace squaredig::base
