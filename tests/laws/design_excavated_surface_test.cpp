// The laws of the excavated surface.
#include <gtest/gtest.h>

#include "design/excavated_surface.h"
#include "geometry/overlay.h"
#include "random_pits.h"
#include "whole_pit.h"

namespace squaredig {
namespace {

using design::excavated_surface;
using testing::MadeSurvey;

double vertical_area(const design::Excavation& pit) {
  // an upper bound: every vertical side's line inside the crest at the deepest cut
  double length = 0;
  for (const auto& cut : pit.pit.cuts)
    if (!cut.bounds.empty())
      for (std::size_t i = 0; i < cut.toe.size(); ++i) {
        const auto d = cut.toe[(i + 1) % cut.toe.size()] - cut.toe[i];
        length += std::hypot(d.x, d.y);
      }
  return 2 * length * pit.dug.deepest;
}

double between_ground_and(const design::Excavation& pit, const geometry::Surface& excavated) {
  const geometry::Locator locator(pit.ground.surface);
  const auto facets = geometry::facets_of(excavated);
  const auto found = geometry::between(pit.ground.surface, locator, facets);
  EXPECT_NEAR(found.below, 0, 1e-4);
  return found.above;
}

design::Excavation everything(unsigned seed) {
  MadeSurvey survey(testing::grid_surface(50, 3.7, testing::rough_ground(seed, 3.2, 0.4)));
  return design::excavate(testing::whole_pit(), survey);
}

TEST(ExcavatedSurface, Verifies_excavated_surface_1) {
  for (unsigned seed = 1; seed <= 5; ++seed) {
    SCOPED_TRACE(seed);
    const auto made = excavated_surface(everything(seed));
    const auto faults = geometry::verify(made.surface);
    EXPECT_TRUE(faults.empty()) << faults.front();
    EXPECT_EQ(made.kinds.size(), made.surface.triangles.size());
    EXPECT_EQ(made.parts.size(), made.surface.triangles.size());
    for (const auto kind :
         {design::FaceKind::Floor, design::FaceKind::Batter, design::FaceKind::Vertical})
      EXPECT_NE(std::count(made.kinds.begin(), made.kinds.end(), kind), 0);
  }
}

TEST(ExcavatedSurface, HoldsTheCut_excavated_surface_2) {
  for (unsigned seed = 1; seed <= 5; ++seed) {
    SCOPED_TRACE(seed);
    const auto pit = everything(seed);
    const double held = between_ground_and(pit, excavated_surface(pit).surface);
    EXPECT_GE(held, pit.dug.volume - 1e-4);
    EXPECT_LE(held, pit.dug.volume + 0.0005 * vertical_area(pit) + 1e-4);
  }
  for (unsigned seed = 1; seed <= 150; ++seed) {
    SCOPED_TRACE(seed);
    const auto made = testing::random_pit(seed);
    MadeSurvey survey(made.ground);
    const auto pit = design::excavate(made.design, survey);
    const auto surface = excavated_surface(pit).surface;
    const auto faults = geometry::verify(surface);
    EXPECT_TRUE(faults.empty()) << faults.front();
    EXPECT_NEAR(between_ground_and(pit, surface), pit.dug.volume,
                0.001 * vertical_area(pit) + 1e-4);
  }
}

TEST(ExcavatedSurface, RimLiesOnTheGround_excavated_surface_3) {
  const auto pit = everything(3);
  const auto made = excavated_surface(pit).surface;
  const geometry::Locator locator(pit.ground.surface);
  for (std::size_t t = 0; t < made.triangles.size(); ++t)
    for (std::size_t i = 0; i < 3; ++i)
      if (made.neighbours[t][i] == geometry::kNone) {
        const auto p = made.vertices[static_cast<std::size_t>(made.triangles[t][i])];
        EXPECT_NEAR(locator.height_at(p.plan()).value(), p.z, 1e-4);
      }
}

// Derived: a vertical pit in level ground has its floor and a strip a millimetre wide round it.
TEST(ExcavatedSurface, TopOfAVerticalFaceMovesAMillimetre) {
  MadeSurvey survey(testing::grid_surface(30, 7.3, [](double, double) { return 3.0; }));
  const auto pit = design::excavate(testing::plain_pit(20, 10, 0, Batter{}), survey);
  const auto made = excavated_surface(pit);
  double floor = 0;
  for (std::size_t t = 0; t < made.kinds.size(); ++t) {
    const auto c = made.surface.corners(static_cast<geometry::Index>(t));
    if (made.kinds[t] == design::FaceKind::Floor)
      floor += orient(c[0].plan(), c[1].plan(), c[2].plan()) / 2;
  }
  EXPECT_NEAR(floor, 200, 1e-9);
  EXPECT_NEAR(geometry::plan_area(made.surface), 20.002 * 10.002, 1e-9);
}

}  // namespace
}  // namespace squaredig
