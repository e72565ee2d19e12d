// Compaction against values from outside, each with its source.
#include <gtest/gtest.h>

#include <random>

#include "fill/density.h"
#include "fill/untested_internal.h"
#include "fill_box.h"

namespace squaredig::fill {
namespace {

CompactionTest density(double dry, double maximum) {
  return {"base",
          grid_point(0, 0),
          Density::tonnes_per_cubic_metre(dry),
          Density::tonnes_per_cubic_metre(maximum),
          {}};
}

// UFC 3-220-20 eq 3-3 (formula seen): 110 / 120 is 91.667 percent. A page of exercises (inputs
// seen, recomputed): 15.725 of 18.5 kN/m3 is 85 percent.
TEST(PublishedDensity, RelativeCompaction) {
  EXPECT_NEAR(relative_compaction(density(110, 120)).in_percent(), 91.667, 0.0005);
  EXPECT_NEAR(relative_compaction(density(15.725, 18.5)).in_percent(), 85, 1e-9);
}

double dried(double wet, double water_percent) {
  return dry_density(Density::tonnes_per_cubic_metre(wet), Ratio::percent(water_percent))
      .in_tonnes_per_cubic_metre();
}

// UFC 3-220-20 eq 3-1 (formula seen): 120 pcf with 15 percent of water is 104.348 pcf dry. A page
// of exercises (inputs seen, recomputed): 17.769 kN/m3 with 13 percent is 15.725.
TEST(PublishedDensity, DryOfWet) {
  EXPECT_NEAR(dried(120, 15), 104.348, 0.0005);
  EXPECT_NEAR(dried(17.769, 13), 15.725, 0.0005);
}

// Sand cones, from masses to the ratio. engineeringdiscoveries.com (hole 8 683.47 less cone 2 274
// cm3, dry 2.33 and 98 percent seen): the page's wet density 2.48 is a slip, 2.439 is right, and
// would make 99.7 percent. By the method of ASTM D1556 (derived): 1.75812 of 1.85 is 95.03 percent
// and passes 95, where the wet density would make 106.9.
TEST(PublishedDensity, SandCones) {
  const double hole = (16000 - 4286) / 1.349 - 2274;
  const double wet = 15632.42 / hole;
  const double right = relative_compaction(density(dried(wet, 4.5), 2.38)).in_percent();
  EXPECT_NEAR(right, 98, 0.5);
  EXPECT_NEAR(dried(wet, 4.5), 2.33, 0.005);
  EXPECT_GT(relative_compaction(density(dried(2.48, 4.5), 2.38)).in_percent() - right, 1.6);
  const double volume = (6.500 - 2.710 - 1.620) / 1.450;
  const double dry = dried(2.960 / volume, 12.5);
  EXPECT_NEAR(dry, 1.75812, 0.000005);
  EXPECT_NEAR(relative_compaction(density(dry, 1.85)).in_percent(), 95.03, 0.005);
  EXPECT_TRUE(judge_densities({density(dry, 1.85)}, Ratio::percent(95)).failed.empty());
  EXPECT_GT(relative_compaction(density(dry * 1.125, 1.85)).in_percent(), 106);
}

// Derived: exactly on the limit passes, just under does not and is not rounded up to it.
TEST(PublishedDensity, OnTheLimitPasses_density_1) {
  EXPECT_TRUE(judge_densities({density(1.710, 1.800)}, Ratio::percent(95)).failed.empty());
  EXPECT_TRUE(judge_densities({density(19, 20)}, Ratio::percent(95)).failed.empty());
}

TEST(PublishedDensity, JustUnderFailsUnrounded_density_2) {
  EXPECT_EQ(judge_densities({density(18, 19)}, Ratio::percent(95)).failed.size(), 1U);
}

// VicRoads Section 173, mean - 0.92 s (formula seen, data derived).
TEST(PublishedDensity, CharacteristicValue) {
  const auto answer = [](std::initializer_list<double> percents) {
    std::vector<CompactionTest> tests;
    for (const double p : percents) tests.push_back(density(p, 100));
    return judge_densities(tests, Ratio::percent(95));
  };
  const auto good = answer({97.1, 98.4, 96.2, 99.0, 97.5, 98.0});
  EXPECT_NEAR(good.mean.in_percent(), 97.700, 0.0005);
  EXPECT_NEAR(good.characteristic->in_percent(), 96.787, 0.0005);
  const auto poor = answer({95.2, 96.1, 94.0, 98.3, 95.6, 96.4});
  EXPECT_NEAR(poor.mean.in_percent(), 95.933, 0.0005);
  EXPECT_NEAR(poor.characteristic->in_percent(), 94.617, 0.0005);
  EXPECT_EQ(poor.failed.size(), 1U);  // the mean alone would pass
  // a lot of three has no characteristic value; its mean is below the 97.0 that rule asks of three
  const auto three = answer({96, 97.5, 97});
  EXPECT_FALSE(three.characteristic);
  EXPECT_NEAR(three.mean.in_percent(), 96.833, 0.0005);
  const LayerWanted wanted{Ratio::percent(95 + 2.0), Ratio::percent(95)};
  EXPECT_EQ(judge_layer(three, wanted), Verdict::DoesNotConform);
  EXPECT_EQ(judge_layer(good, wanted), Verdict::Conforms);
  EXPECT_EQ(judge_layer(poor, wanted), Verdict::DoesNotConform);
}

TEST(Density, ALayerIsHeldAgainstWhatIsAskedOfIt_density_3) {
  const auto of = [](std::size_t count, double percent) {
    return judge_densities(std::vector<CompactionTest>(count, density(percent, 100)),
                           Ratio::percent(90));
  };
  const auto mean = Ratio::percent(97), characteristic = Ratio::percent(95);
  EXPECT_EQ(judge_layer(of(6, 96), {}), Verdict::NotAsked);
  // six tests or more: the characteristic value, although the mean asked lies higher
  EXPECT_EQ(judge_layer(of(6, 96), {mean, characteristic}), Verdict::Conforms);
  EXPECT_EQ(judge_layer(of(6, 94), {mean, characteristic}), Verdict::DoesNotConform);
  EXPECT_EQ(judge_layer(of(5, 96), {mean, characteristic}), Verdict::DoesNotConform);
  EXPECT_EQ(judge_layer(of(5, 97), {mean, characteristic}), Verdict::Conforms);
  EXPECT_EQ(judge_layer(of(6, 96), {mean, {}}), Verdict::DoesNotConform);
  EXPECT_EQ(judge_layer(of(5, 99), {{}, characteristic}), Verdict::NotProven);
  // exactly on it passes
  EXPECT_EQ(judge_layer(of(3, 97), {mean, {}}), Verdict::Conforms);
}

// By layer, with the rounding rule and the standard named; a layer tested beside the tank alone is
// told by the stretch of the tank's outline without a test.
TEST(Density, LayersAreToldApart) {
  auto job = testing::box_job();
  const auto test = [](const char* layer, double e, double n, double dry, int line) {
    return CompactionTest{layer,
                          grid_point(e, n),
                          Density::tonnes_per_cubic_metre(dry),
                          Density::tonnes_per_cubic_metre(2),
                          {"tests.csv", line, 1}};
  };
  // the tank lies from (-6, 3) east and south to (6, -3)
  job.fill.tests = {test("lift 1", 0, 3.4, 1.95, 2), test("lift 1", 0, -3.4, 1.94, 3),
                    test("cap 1", 0, 0, 1.92, 4), test("cap 1", 5, 0, 1.89, 5)};
  job.fill.density_ratio = Ratio::percent(95);
  job.fill.density_standard = DensityStandard::Modified;
  const auto result = testing::fill_under(job, 2.0);
  ASSERT_TRUE(result.tests);
  EXPECT_EQ(result.tests->standard, "modified");
  EXPECT_NE(result.tests->rounding.find("Nothing is rounded"), std::string::npos);
  EXPECT_EQ(result.tests->verdict, Verdict::DoesNotConform);
  ASSERT_EQ(result.tests->layers.size(), 2U);
  EXPECT_EQ(result.tests->layers[0].layer, "lift 1");
  EXPECT_EQ(result.tests->layers[0].verdict, Verdict::Conforms);
  // the ends of the tank, 6 along and 3 across from the middle, 3.4 to the nearest test: middle of
  // the short sides, where it is sqrt(36 + 3.4^2)
  EXPECT_NEAR(result.tests->layers[0].untested.in_metres(), std::hypot(6, 3.4), 1e-9);
  EXPECT_NEAR(result.tests->layers[0].across_ab.in_metres(), 3, 1e-9);
  EXPECT_EQ(result.tests->layers[1].verdict, Verdict::DoesNotConform);
  // over the tank: the corners by the west end
  EXPECT_NEAR(result.tests->layers[1].untested.in_metres(), std::hypot(6, 3), 1e-9);
  ASSERT_EQ(result.tests->tests.size(), 4U);
  EXPECT_EQ(result.tests->tests[3].verdict, Verdict::DoesNotConform);
  int cautions = 0;
  for (const auto& caution : result.head.cautions)
    cautions += caution.find("the largest untested area") != std::string::npos;
  EXPECT_EQ(cautions, 2);
}

TEST(Density, WhatALayerMissesIsTold) {
  auto job = testing::box_job();
  job.fill.tests.emplace();
  for (int i = 0; i < 3; ++i)
    job.fill.tests->push_back({"cap 1",
                               grid_point(i, 0),
                               Density::tonnes_per_cubic_metre(1.92),
                               Density::tonnes_per_cubic_metre(2),
                               {"tests.csv", i + 2, 1}});
  job.fill.density_ratio = Ratio::percent(95);
  job.fill.density_standard = DensityStandard::Standard;
  job.fill.density_mean = Ratio::percent(97);
  auto result = testing::fill_under(job, 2.0);
  EXPECT_EQ(result.tests->verdict, Verdict::DoesNotConform);
  EXPECT_EQ(
      result.tests->failed,
      (std::vector<std::string>{"layer \"cap 1\", 3 tests: mean 96.00 percent of the standard "
                                "density, wanted 97"}));
  job.fill.density_mean.reset();
  job.fill.density_characteristic = Ratio::percent(95);
  result = testing::fill_under(job, 2.0);
  EXPECT_EQ(result.tests->verdict, Verdict::NotProven);
  EXPECT_EQ(result.tests->failed,
            (std::vector<std::string>{"layer \"cap 1\", 3 tests: a characteristic value takes six; "
                                      "take more tests"}));
}

// The furthest point of a segment from the nearest of some tests, against a fine search.
TEST(Density, FurthestPointOfASegment) {
  constexpr unsigned kSeed = 81;
  std::mt19937 random(kSeed);
  std::uniform_real_distribution<double> place(-5, 15);
  for (int i = 0; i < 100; ++i) {
    const geometry::Point2 a{place(random), place(random)}, b{place(random), place(random)};
    std::vector<geometry::Point2> tests;
    for (int k = 0; k <= i % 9; ++k) tests.push_back({place(random), place(random)});
    const auto found = furthest_on_segment(a, b, tests);
    double searched = 0;
    for (int k = 0; k <= 20000; ++k) {
      const double t = k / 20000.0, x = a.x + (b.x - a.x) * t, y = a.y + (b.y - a.y) * t;
      double least = 1e300;
      for (const auto& p : tests) least = std::min(least, std::hypot(p.x - x, p.y - y));
      searched = std::max(searched, least);
    }
    EXPECT_GE(found.radius, searched - 1e-9) << kSeed << " " << i;
    EXPECT_LE(found.radius, searched + 2e-3) << kSeed << " " << i;
  }
}

}  // namespace
}  // namespace squaredig::fill
