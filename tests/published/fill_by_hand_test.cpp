// The worked example of docs/fill.md.
#include <gtest/gtest.h>

#include "fill/sheets.h"
#include "fill_box.h"

namespace squaredig::fill {
namespace {

Length m(double v) { return Length::metres(v); }

FillResult example() {
  auto job = testing::box_job();
  job.design.tank.underside_level = Elevation::metres(0.02);
  job.design.bedding.thickness = Length::millimetres(20);
  job.fill.geotextile = Roll{m(6), m(50)};
  job.fill.geotextile_lap = m(0.15);
  job.water.level = Elevation::metres(1.52);
  return testing::fill_under(job, 2.02);
}

TEST(FillByHand, Quantities) {
  const auto result = example();
  EXPECT_NEAR(result.bedding.in_cubic_metres(), 1.9832, 1e-9);
  EXPECT_NEAR(result.tank.in_cubic_metres(), 86.4, 1e-9);
  EXPECT_NEAR((result.special + result.side).in_cubic_metres(), 32.592, 1e-9);
  CompactedVolume capping;
  for (const auto& layer : result.capping) capping += layer.placed;
  EXPECT_NEAR(capping.in_cubic_metres(), 40.95, 1e-9);
  EXPECT_NEAR(result.finish.in_cubic_metres(), 38.378, 1e-9);
  EXPECT_NEAR(result.closure.sum.in_cubic_metres(), 200.3032, 1e-9);
  EXPECT_NEAR(result.closure.cut.in_cubic_metres(), 200.3032, 1e-9);
}

TEST(FillByHand, Wrap) {
  const auto& sheet = example().geotextile;
  EXPECT_EQ(sheet.laid,
            "1 strip of 26.55 m round the tank lengthwise, on each end 3 strips of 1.50 m");
  EXPECT_NEAR(sheet.with_laps->in_square_metres(), 213.3, 1e-9);
  EXPECT_EQ(sheet.rolls, 1);
  EXPECT_NEAR(sheet.waste->in_square_metres(), 86.7, 1e-9);
}

TEST(FillByHand, Uplift) {
  const auto result = example();
  EXPECT_NEAR(result.uplift.back().up.in_kilonewtons(), 847.584, 1e-6);
  EXPECT_NEAR(result.uplift.back().down.in_kilonewtons(), 824.904, 1e-6);
  EXPECT_NEAR(*result.uplift.back().ratio, 0.973, 0.0005);
  EXPECT_NEAR(result.cover_wanted->in_metres(), 0.9483, 0.00005);
  // cover that weighed its whole weight below the water too would seem to do with 0.785 m
  EXPECT_GT(result.cover_wanted->in_metres() - 1017.1008 / (72 * 18), 0.16);
}

}  // namespace
}  // namespace squaredig::fill
