// Pits with published volumes, dug in level ground through the whole kernel.
#include <gtest/gtest.h>

#include "geometry/closure.h"
#include "grounds.h"

namespace squaredig {
namespace {

using testing::grid_surface;
using testing::MadeSurvey;
using testing::plain_pit;

design::Excavation dug(const design::DesignInput& input, double ground, double half, double step) {
  MadeSurvey survey(grid_surface(half, step, [=](double, double) { return ground; }));
  auto pit = design::excavate(input, survey);
  const auto closure = geometry::flux_of(pit.ground.surface, pit.dug);
  EXPECT_NEAR(closure.volume, pit.dug.volume, 1e-9 * pit.dug.volume);
  EXPECT_NEAR(closure.open_x, 0, 1e-9 * pit.dug.area);
  EXPECT_NEAR(closure.open_y, 0, 1e-9 * pit.dug.area);
  return pit;
}

double volume(const design::DesignInput& input, double ground, double half = 100,
              double step = 7.3) {
  return dug(input, ground, half, step).dug.volume;
}

Batter run(double z) { return Batter::run_per_rise(z); }

// FHWA HEC-22, 4th ed. 2024, eqs 10.10-10.11: V = LWD + (L+W)ZD^2 + (4/3)Z^2 D^3.
TEST(PublishedPits, RectangularBasinOfHec22) {
  for (const double z : {0.25, 1.0, 1.5, 3.0})
    for (const double d : {0.5, 2.0, 4.0}) {
      const double l = 24.4, w = 10.0;
      const double expected = l * w * d + (l + w) * z * d * d + 4.0 / 3 * z * z * d * d * d;
      EXPECT_NEAR(volume(plain_pit(l, w, 0, run(z)), d), expected, 1e-9 * expected);
    }
}

// Nine Chapters on the Mathematical Art, ch. 5, "pan chi" pool: bottom 40 x 60, top 60 x 80,
// depth 20: 70 666 2/3. The average end area gives 72 000 and must not come out.
TEST(PublishedPits, PanChiPool) {
  EXPECT_NEAR(volume(plain_pit(60, 40, 0, run(0.5)), 20), 70666.0 + 2.0 / 3, 1e-6);
}

// Same chapter, "ming gu": bottom 8 x 40, top 20 x 70, depth 65: 52 000, unequal batters.
TEST(PublishedPits, MingGuPit) {
  auto input = plain_pit(40, 8, 0, run(1));
  const Batter ends = run(15.0 / 65), sides = run(6.0 / 65);
  input.pit.batter = {std::nullopt, {{"AB", sides}, {"BC", ends}, {"CD", sides}, {"DA", ends}}, {}};
  EXPECT_NEAR(volume(input, 65), 52000, 1e-6);
}

// Farm dam, top 30 x 25, bottom 20 x 10, 3 m deep: 1 350 (inputs seen on a public forum page, the
// value recomputed).
TEST(PublishedPits, FarmDam) {
  auto input = plain_pit(20, 10, 0, run(1));
  const Batter ends = run(5.0 / 3), sides = run(7.5 / 3);
  input.pit.batter = {std::nullopt, {{"AB", sides}, {"BC", ends}, {"CD", sides}, {"DA", ends}}, {}};
  EXPECT_NEAR(volume(input, 3), 1350, 1e-8);
}

// Derived: vertical sides hold LWD, in sloping ground LW times the depth at the middle.
TEST(PublishedPits, VerticalSides) {
  EXPECT_NEAR(volume(plain_pit(24.4, 10, 0, run(0)), 2), 488, 1e-9 * 488);
  MadeSurvey survey(
      grid_surface(60, 4.1, [](double x, double y) { return 3 + 0.02 * x - 0.05 * y; }));
  const auto pit = design::excavate(plain_pit(24.4, 10, 0, run(0)), survey);
  EXPECT_NEAR(pit.dug.volume, 732, 1e-9 * 732);
  for (const auto& ring : pit.crest)
    for (const bool vertical : ring.vertical) EXPECT_TRUE(vertical);
}

// Derived: cones in place of mitred corners leave out (4 - pi) / 3 Z^2 D^3, and chords at most
// 6 degrees apart add no more than 0.1 percent of the cone.
TEST(PublishedPits, RoundCorners) {
  auto input = plain_pit(24, 12, 0, run(1.5));
  const double mitred = volume(input, 2);
  input.pit.corners = design::Corners::Round;
  const double cone = std::numbers::pi / 3 * 2.25 * 8;
  const double round = volume(input, 2);
  EXPECT_GE(round, mitred - (4.0 / 3 * 2.25 * 8 - cone));
  EXPECT_LE(round, mitred - (4.0 / 3 * 2.25 * 8 - cone) + 0.001 * cone);
}

}  // namespace
}  // namespace squaredig
