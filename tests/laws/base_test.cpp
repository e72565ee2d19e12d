// The numbered laws of base/check_base.h, on seeded random bases.
#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "unit/base/base_fixture.h"

namespace squaredig::base {
namespace {

using testing::BaseFixture;
using testing::mm;
using testing::named;

constexpr unsigned kSeed = 20260311;

BaseFixture random_base(std::mt19937& random, int n) {
  std::uniform_real_distribution<double> unit(0, 1);
  std::normal_distribution<double> uneven(0, 4);
  BaseFixture base;
  base.ask_for_all();
  for (int i = 0; i < n; ++i) base.add(24 * unit(random), 9.6 * unit(random), uneven(random));
  return base;
}

void expect_same_values(const BaseResult& a, const BaseResult& b, double accuracy_mm) {
  ASSERT_EQ(a.checks.size(), b.checks.size());
  for (std::size_t i = 0; i < a.checks.size(); ++i) {
    ASSERT_EQ(a.checks[i].name, b.checks[i].name);
    ASSERT_EQ(a.checks[i].value.has_value(), b.checks[i].value.has_value());
    if (!a.checks[i].value) continue;
    if (std::holds_alternative<Length>(*a.checks[i].value)) {
      EXPECT_NEAR(mm(a.checks[i].value), mm(b.checks[i].value), accuracy_mm) << a.checks[i].name;
    } else if (std::holds_alternative<Fall>(*a.checks[i].value)) {
      EXPECT_NEAR(testing::percent(a.checks[i].value), testing::percent(b.checks[i].value), 1e-7);
    }
  }
  EXPECT_NEAR(a.trim->in_cubic_metres(), b.trim->in_cubic_metres(), 1e-7);
  EXPECT_NEAR(a.make_up->in_cubic_metres(), b.make_up->in_cubic_metres(), 1e-7);
  EXPECT_NEAR(a.skin->volume.in_cubic_metres(), b.skin->volume.in_cubic_metres(), 1e-7);
}

TEST(BaseLaws, APlaneAddedToPlanAndPointsChangesNothing_base_1) {
  std::mt19937 random(kSeed);
  for (int i = 0; i < 10; ++i) {
    const BaseFixture before = random_base(random, 40);
    BaseFixture after = before;
    after.fall_percent = 2;
    after.fall_bearing = 36.0 * i;
    after.underside = 100;
    const design::Tank from = before.planned().tank, to = after.planned().tank;
    for (SurveyPoint& p : after.input.points.points)
      p.at.height = to.dig_level.at(p.at.at) + (p.at.height - from.dig_level.at(p.at.at));
    expect_same_values(before.check(), after.check(), 1e-5);
  }
}

TEST(BaseLaws, MovingAndTurningChangesNothing_base_2) {
  for (int i = 0; i < 10; ++i) {
    std::mt19937 random(kSeed + static_cast<unsigned>(i));
    const BaseFixture before = random_base(random, 40);
    BaseFixture after;
    after.ask_for_all();
    after.corner_a = i % 2 ? grid_point(0, 0) : grid_point(1525747.9, 5021771.82);
    after.bearing = 33.0 * i + 1;
    after.fall_bearing = before.fall_bearing + after.bearing - before.bearing;
    const design::Tank from = before.planned().tank;
    for (std::size_t k = 0; k < before.input.points.size(); ++k) {
      const GridPosition& p = before.input.points.points[k].at;
      after.add(from.along_ab(p.at).in_metres(), from.across_ab(p.at).in_metres(),
                (p.height - from.dig_level.at(p.at)).in_millimetres());
    }
    expect_same_values(before.check(), after.check(), 2e-5);
  }
}

TEST(BaseLaws, WhatIsNotAskedIsShownAndNotCounted_base_3) {
  std::mt19937 random(kSeed);
  BaseFixture base = random_base(random, 60);
  for (std::size_t i = 0; i < base.input.points.size(); ++i)
    base.input.points.points[i].at.height =
        base.input.points.points[i].at.height + Length::millimetres(100);
  EXPECT_EQ(base.check().verdict, Verdict::DoesNotConform);
  base.input.level_tolerance = std::nullopt;
  base.input.mean_tolerance = std::nullopt;
  base.input.flatness_tolerance = std::nullopt;
  base.input.fall_tolerance = std::nullopt;
  base.input.spacing = std::nullopt;
  PlannedBase planned = base.planned();
  planned.least = planned.most = std::nullopt;
  const BaseResult r = check_base(base.input, planned);
  for (const Check& c : r.checks) {
    EXPECT_EQ(c.verdict, Verdict::NotAsked) << c.name;
    EXPECT_FALSE(c.limit) << c.name;
  }
  for (const char* name : {"level high", "level low", "level mean", "flatness", "fall", "coverage",
                           "bedding thinnest", "bedding thickest"})
    EXPECT_TRUE(named(r, name).value) << name;
  EXPECT_EQ(r.verdict, Verdict::Conforms);
  ASSERT_FALSE(r.head.cautions.empty());
  EXPECT_EQ(r.head.cautions.back(), "no tolerance was entered: nothing was judged");
}

TEST(BaseLaws, RaisingEveryPoint_base_4) {
  std::mt19937 random(kSeed);
  for (const double d : {-7.0, 0.5, 12.0}) {
    const BaseFixture before = random_base(random, 50);
    BaseFixture after = before;
    for (SurveyPoint& p : after.input.points.points)
      p.at.height = p.at.height + Length::millimetres(d);
    const BaseResult a = before.check(), b = after.check();
    for (const char* name : {"level high", "level low", "level mean"})
      EXPECT_NEAR(mm(named(b, name).value) - mm(named(a, name).value), d, 1e-6) << name;
    for (const char* name : {"bedding thinnest", "bedding thickest"})
      EXPECT_NEAR(mm(named(b, name).value) - mm(named(a, name).value), -d, 1e-6) << name;
    EXPECT_NEAR(mm(named(b, "flatness").value), mm(named(a, "flatness").value), 1e-6);
    EXPECT_NEAR(testing::percent(named(b, "fall").value), testing::percent(named(a, "fall").value),
                1e-8);
  }
}

TEST(BaseLaws, TrimLessMakeUpIsTheAreaMean_base_5) {
  std::mt19937 random(kSeed);
  for (int i = 0; i < 20; ++i) {
    const BaseResult r = random_base(random, 3 + 10 * i).check();
    EXPECT_NEAR(r.trim->in_cubic_metres() - r.make_up->in_cubic_metres(),
                (r.floor_area * *r.deviation->area_mean).in_cubic_metres(), 1e-9);
  }
}

TEST(BaseLaws, ASmallerUncertaintyNeverTurnsAProvenCheck_base_6) {
  std::mt19937 random(kSeed);
  for (int i = 0; i < 30; ++i) {
    BaseFixture base = random_base(random, 30);
    base.input.level_tolerance = Tolerance{Length::millimetres(9), Length::millimetres(9)};
    base.input.flatness_tolerance = Length::millimetres(16);
    const BaseResult wide = base.check();
    base.input.sigma_height = base.input.sigma_height / 3.0;
    base.input.sigma_common = base.input.sigma_common / 3.0;
    const BaseResult narrow = base.check();
    for (std::size_t k = 0; k < wide.checks.size(); ++k) {
      if (wide.checks[k].verdict == Verdict::NotProven) continue;
      EXPECT_EQ(wide.checks[k].verdict, narrow.checks[k].verdict)
          << wide.checks[k].name << ", seed " << kSeed << ", case " << i;
    }
  }
}

}  // namespace
}  // namespace squaredig::base
