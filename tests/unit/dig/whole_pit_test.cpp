// A pit with everything: batters of every kind, a bench, a ramp, a sump and a bent trench.
#include "whole_pit.h"

#include <gtest/gtest.h>

#include "dig/dig.h"
#include "scan_lines.h"

namespace squaredig {
namespace {

using testing::MadeSurvey;
using testing::whole_pit;

struct Dug {
  MadeSurvey survey;
  design::DesignInput input;
  design::Excavation pit;
  dig::DigResult result;
};

Dug dug(unsigned seed, Batter ramp_batter = Batter::run_per_rise(1)) {
  MadeSurvey survey(testing::grid_surface(50, 3.7, testing::rough_ground(seed, 3.2, 0.4)));
  auto input = whole_pit();
  input.pit.ramps[0].batter = ramp_batter;
  auto pit = design::excavate(input, survey);
  dig::DigInput stage;
  stage.cell = Length::metres(1);
  auto result = dig::dig(stage, input, pit, survey);
  return {std::move(survey), std::move(input), std::move(pit), std::move(result)};
}

// See scan_lines.h for the method; both settings of its accuracy agree far closer than the limit.
TEST(WholePit, AgreesWithAnIndependentIntegration) {
  for (unsigned seed = 1; seed <= 2; ++seed) {
    SCOPED_TRACE(seed);
    const auto d = dug(seed, Batter::run_per_rise(seed == 1 ? 1 : 0));
    ASSERT_TRUE(d.pit.dug.detached.empty());
    const double total = d.result.cut.in_cubic_metres();
    const auto ground = testing::grid_surface(50, 3.7, testing::rough_ground(seed, 3.2, 0.4));
    testing::ScanLines lines(d.pit, ground);
    const double coarse = lines.volume(1e-5 * total), fine = lines.volume(1e-6 * total);
    EXPECT_NEAR(fine, coarse, 1e-6 * total);
    EXPECT_NEAR(fine, total, 1e-6 * total);
  }
}

TEST(WholePit, PartsAddUpAndTheSecondMethodCloses) {
  for (unsigned seed = 1; seed <= 6; ++seed) {
    SCOPED_TRACE(seed);
    const auto d = dug(seed);
    const double total = d.result.cut.in_cubic_metres();
    ASSERT_EQ(d.result.by_part.size(), 5U);
    double sum = 0;
    for (const auto& part : d.result.by_part) {
      EXPECT_GT(part.cut.in_cubic_metres(), 0.1) << part.part;
      sum += part.cut.in_cubic_metres();
    }
    EXPECT_NEAR(sum, total, 1e-9 * total);
    EXPECT_NEAR(d.result.closure.second.in_cubic_metres(), total, 1e-9 * total);
    EXPECT_NEAR(d.result.closure.cells_sum.in_cubic_metres(), total, 1e-9 * total);
  }
}

// A bench that the ground does not reach is no bench: nothing has to be filled up to it.
TEST(WholePit, GroundBelowABenchNeedsNoFill) {
  MadeSurvey survey(
      testing::grid_surface(50, 3.7, [](double x, double) { return x > 14 ? 0.8 : 2.5; }));
  auto input = testing::plain_pit(20, 10, 0, Batter::run_per_rise(1));
  input.pit.benches = {{Length::metres(1.5), Length::metres(6), std::nullopt, {}}};
  const auto pit = design::excavate(input, survey);
  dig::DigInput stage;
  stage.cell = Length::metres(1);
  const auto result = dig::dig(stage, input, pit, survey);
  EXPECT_EQ(result.fill_to_floor.in_cubic_metres(), 0);
  EXPECT_TRUE(result.head.findings.empty());
}

}  // namespace
}  // namespace squaredig
