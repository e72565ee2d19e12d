// A thousand random pits: the laws of cells, closure, crest and pieces on every one.
#include <gtest/gtest.h>

#include "dig/dig.h"
#include "geometry/locate.h"
#include "random_pits.h"

namespace squaredig {
namespace {

using testing::MadeSurvey;
using testing::random_pit;

void expect_crest_on_ground(const design::Excavation& pit, const geometry::Surface& ground) {
  const geometry::Locator locator(ground);
  for (const auto& ring : pit.crest)
    for (const auto& corner : ring.corners) {
      const auto p = pit.frame.to_site(corner);
      const auto height = locator.height_at(p.plan());
      ASSERT_TRUE(height);
      EXPECT_NEAR(*height, p.z, 1e-6);
    }
}

void expect_numbers(const dig::DigResult& result) {
  EXPECT_TRUE(std::isfinite(result.cut.in_cubic_metres()));
  EXPECT_TRUE(std::isfinite(result.uncertainty->sigma.in_cubic_metres()));
  EXPECT_TRUE(std::isfinite(result.comparison.end_area.in_cubic_metres()));
  EXPECT_TRUE(std::isfinite(result.comparison.grid.in_cubic_metres()));
  EXPECT_TRUE(std::isfinite(result.crest_length.in_metres()));
  for (const auto& cell : result.grid.cells) {
    EXPECT_TRUE(std::isfinite(cell.cut.in_cubic_metres()));
    EXPECT_TRUE(std::isfinite(cell.mean_cut.in_metres()));
    EXPECT_GE(cell.cut.in_cubic_metres(), -1e-12);
  }
}

void expect_lawful(unsigned seed) {
  SCOPED_TRACE(seed);
  const auto made = random_pit(seed);
  MadeSurvey survey(made.ground);
  const auto pit = design::excavate(made.design, survey);
  dig::DigInput input;
  input.cell = Length::metres(2);
  const auto result = dig::dig(input, made.design, pit, survey);
  const double volume = result.cut.in_cubic_metres();
  const double area = result.crest_area.in_square_metres();
  expect_numbers(result);
  EXPECT_NEAR(result.closure.cells_sum.in_cubic_metres(), volume, 1e-9 * volume);
  EXPECT_NEAR(result.closure.second.in_cubic_metres(), volume, 1e-9 * volume);
  EXPECT_NEAR(result.closure.open.in_square_metres(), 0, 1e-9 * area);
  double rings = 0;
  for (const auto& ring : pit.dug.rings) rings += ring.area;
  EXPECT_NEAR(rings, area, 1e-9 * area);
  expect_crest_on_ground(pit, survey.ground().surface);
}

TEST(RandomPits, EveryLawHoldsOnAThousand) {
  for (unsigned seed = 1; seed <= 1000; ++seed) try {
      expect_lawful(seed);
    } catch (const Refusal& refusal) {
      ADD_FAILURE() << seed << ": " << refusal.problems()[0].text();
    }
}

}  // namespace
}  // namespace squaredig
