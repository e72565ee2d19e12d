// The laws of the excavation, on rough ground with seeded shapes.
#include <gtest/gtest.h>

#include "geometry/closure.h"
#include "geometry/locate.h"
#include "grounds.h"

namespace squaredig {
namespace {

using design::excavate;
using testing::grid_surface;
using testing::MadeSurvey;
using testing::plain_pit;
using testing::rough_ground;

Batter run(double z) { return Batter::run_per_rise(z); }

design::DesignInput falling_pit(double level, Bearing ab = Bearing::degrees(37.5)) {
  auto input = plain_pit(24, 9.6, level, run(1), grid_point(0, 0), ab);
  input.tank.fall = Fall::percent(0.5);
  input.tank.fall_bearing = ab + Angle::degrees(90);
  input.pit.gap.all = Length::metres(0.2);
  input.pit.batter = {run(1), {{"BC", run(0)}, {"DA", run(1.5)}}, {}};
  return input;
}

void expect_sound(const design::Excavation& pit) {
  const auto closure = geometry::flux_of(pit.ground.surface, pit.dug);
  EXPECT_NEAR(closure.volume, pit.dug.volume, 1e-9 * pit.dug.volume);
  EXPECT_NEAR(closure.open_x, 0, 1e-9 * pit.dug.area);
  EXPECT_NEAR(closure.open_y, 0, 1e-9 * pit.dug.area);
  double rings = 0;
  for (const auto& ring : pit.dug.rings) rings += ring.area;
  EXPECT_NEAR(rings, pit.dug.area, 1e-9 * pit.dug.area);
}

TEST(Excavation, CrestLiesOnTheGround_excavation_1) {
  for (unsigned seed = 1; seed <= 40; ++seed) {
    SCOPED_TRACE(seed);
    MadeSurvey survey(grid_surface(45, 2.3, rough_ground(seed, 3, 0.8)));
    const auto pit = excavate(falling_pit(0), survey);
    expect_sound(pit);
    const geometry::Locator locator(survey.ground().surface);
    ASSERT_FALSE(pit.crest.empty());
    for (const auto& ring : pit.crest)
      for (const auto& corner : ring.corners) {
        const auto p = pit.frame.to_site(corner);
        EXPECT_NEAR(locator.height_at(p.plan()).value(), p.z, 1e-6);
      }
  }
}

TEST(Excavation, DeeperNeverCutsLess_excavation_2) {
  for (unsigned seed = 1; seed <= 20; ++seed) {
    SCOPED_TRACE(seed);
    MadeSurvey survey(grid_surface(60, 3.1, rough_ground(seed, 3, 0.8)));
    double before = 0;
    for (const double level : {1.0, 0.9, 0.3, 0.0, -1.5}) {
      const double volume = excavate(falling_pit(level), survey).dug.volume;
      EXPECT_GE(volume, before);
      before = volume;
    }
  }
}

// One job at the origin, at E 500 000 N 6 100 000 and at E 1 525 748 N 5 021 772, and turned.
TEST(Excavation, MovingOrTurningChangesNoVolume_excavation_3) {
  const auto height = [](double x, double y) { return 3 + 0.04 * x - 0.03 * y; };
  MadeSurvey here(grid_surface(60, 3.1, height));
  const double volume = excavate(falling_pit(0), here).dug.volume;
  for (const auto& [e, n] : {std::pair{500000.0, 6100000.0}, {1525748.0, 5021772.0}}) {
    MadeSurvey there(grid_surface(60, 3.1, height), grid_position(e, n, 0));
    auto input = falling_pit(0);
    const auto a = std::get<GridPoint>(*input.tank.corner_a);
    input.tank.corner_a = grid_point(a.easting.in_metres() + e, a.northing.in_metres() + n);
    EXPECT_NEAR(excavate(input, there).dug.volume, volume, 1e-6);
  }
  for (const double turn : {13.0, 90.0, 211.7}) {
    const double c = cosine(Angle::degrees(turn)), s = sine(Angle::degrees(turn));
    MadeSurvey turned(grid_surface(
        60, 3.1, [=](double x, double y) { return height(c * x - s * y, s * x + c * y); }));
    const auto ab = Bearing::degrees(37.5 + turn);
    EXPECT_NEAR(excavate(falling_pit(0, ab), turned).dug.volume, volume, 1e-6) << turn;
  }
}

// The same ground with every triangle split in three at its middle.
TEST(Excavation, FinerSplitOfTheSameGroundChangesNothing_excavation_4) {
  const auto coarse = grid_surface(45, 4.7, rough_ground(7, 3, 0.8));
  geometry::Surface fine;
  fine.vertices = coarse.vertices;
  for (const auto& t : coarse.triangles) {
    const auto at = [&](std::size_t i) { return coarse.vertices[static_cast<std::size_t>(t[i])]; };
    const auto middle = static_cast<geometry::Index>(fine.vertices.size());
    fine.vertices.push_back({(at(0).x + at(1).x + at(2).x) / 3, (at(0).y + at(1).y + at(2).y) / 3,
                             (at(0).z + at(1).z + at(2).z) / 3});
    for (std::size_t i = 0; i < 3; ++i) fine.triangles.push_back({t[i], t[(i + 1) % 3], middle});
  }
  geometry::link_neighbours(fine);
  MadeSurvey a(coarse), b(fine);
  const auto whole = excavate(falling_pit(0), a), split = excavate(falling_pit(0), b);
  expect_sound(split);
  EXPECT_NEAR(split.dug.volume, whole.dug.volume, 1e-9 * whole.dug.volume);
  EXPECT_NEAR(split.dug.area, whole.dug.area, 1e-9 * whole.dug.area);
}

// Columns of a fine grid, each the depth at its centre: agrees to the grid's own error.
double by_columns(const design::Excavation& pit, const geometry::Surface& ground, double step) {
  const geometry::Locator locator(ground);
  double volume = 0;
  for (double x = -30; x < 30; x += step)
    for (double y = -30; y < 30; y += step) {
      const GridPoint p = pit.frame.to_grid(geometry::Point2{x + step / 2, y + step / 2});
      const auto floor = pit.surface_at(p);
      if (!floor || !pit.dug_at(p)) continue;
      const double top = locator.height_at(pit.frame.to_site(p)).value();
      volume += std::max(0.0, top - pit.frame.to_site(*floor)) * step * step;
    }
  return volume;
}

TEST(Excavation, AgreesWithFineColumns) {
  MadeSurvey survey(grid_surface(45, 2.3, rough_ground(11, 3, 0.8)));
  for (const bool bench : {false, true}) {
    auto input = falling_pit(0);
    if (bench) input.pit.benches = {{Length::metres(1.2), Length::metres(0.8), std::nullopt, {}}};
    const auto pit = excavate(input, survey);
    EXPECT_NEAR(by_columns(pit, survey.ground().surface, 0.05), pit.dug.volume,
                2e-4 * pit.dug.volume);
  }
}

// An L-shaped floor is rectangle plus rectangle less their overlap, vertical sides and level ground
// aside: here with batters, where the union of the three pits holds by inclusion and exclusion.
TEST(Excavation, LShapeIsCoveredByItsRectangles) {
  const auto outline = [](std::initializer_list<std::pair<double, double>> points) {
    auto input = plain_pit(1, 1, 0, run(1));
    input.tank.corner_a.reset();
    for (const auto& [e, n] : points) input.tank.outline.push_back(grid_point(e, n));
    return input;
  };
  MadeSurvey survey(grid_surface(45, 2.3, rough_ground(5, 3, 0.3)));
  const auto volume = [&](const design::DesignInput& input) {
    const auto pit = excavate(input, survey);
    expect_sound(pit);
    return pit;
  };
  const auto l = volume(outline({{0, 0}, {0, 14}, {6, 14}, {6, 5}, {15, 5}, {15, 0}}));
  const auto tall = volume(outline({{0, 0}, {0, 14}, {6, 14}, {6, 0}}));
  const auto wide = volume(outline({{0, 0}, {0, 5}, {15, 5}, {15, 0}}));
  EXPECT_GT(l.dug.volume, tall.dug.volume);
  EXPECT_LT(l.dug.volume, tall.dug.volume + wide.dug.volume);
  EXPECT_NEAR(by_columns(l, survey.ground().surface, 0.05), l.dug.volume, 2e-4 * l.dug.volume);
  auto both = tall.pit.cuts;
  both.insert(both.end(), wide.pit.cuts.begin(), wide.pit.cuts.end());
  EXPECT_NEAR(geometry::removed_volume(survey.ground().surface, both), l.dug.volume,
              1e-9 * l.dug.volume);
}

TEST(Excavation, BenchOfNoWidthChangesNothing) {
  MadeSurvey survey(grid_surface(45, 2.3, rough_ground(3, 3, 0.5)));
  auto input = falling_pit(0);
  const double volume = excavate(input, survey).dug.volume;
  input.pit.benches = {{Length::metres(1.1), Length{}, std::nullopt, {}}};
  const auto pit = excavate(input, survey);
  expect_sound(pit);
  EXPECT_NEAR(pit.dug.volume, volume, 1e-9 * volume);
}

// A ridge and a ditch across the pit, and ground that dips below the floor.
TEST(Excavation, RidgeAndDitchAcrossThePit) {
  MadeSurvey survey(grid_surface(50, 1.9, [](double x, double y) {
    return 2.5 + 0.8 * std::abs(std::sin(0.2 * x)) - (std::abs(y) < 1 ? 3.5 : 0.0);
  }));
  const auto pit = excavate(falling_pit(0), survey);
  expect_sound(pit);
  EXPECT_NEAR(by_columns(pit, survey.ground().surface, 0.05), pit.dug.volume,
              5e-4 * pit.dug.volume);
}

TEST(Excavation, LeavingTheSurveyIsRefusedWithPlaceAndDepth) {
  MadeSurvey survey(grid_surface(14, 2.0, [](double, double) { return 6.0; }));
  try {
    excavate(falling_pit(0), survey);
    FAIL() << "dug beyond the survey";
  } catch (const Refusal& refusal) {
    ASSERT_EQ(refusal.problems().size(), 1U);
    EXPECT_NE(refusal.problems()[0].found.find("runs out of the survey at E "), std::string::npos);
    EXPECT_NE(refusal.problems()[0].found.find(" m deep"), std::string::npos);
  }
}

TEST(Excavation, HillBeyondTheBatterIsAFindingNotACut) {
  MadeSurvey survey(grid_surface(60, 2.0, [](double x, double) { return x > 20 ? 60.0 : 3.0; }));
  const auto pit = excavate(plain_pit(24, 9.6, 0, run(1)), survey);
  ASSERT_EQ(pit.findings.size(), 1U);
  EXPECT_EQ(pit.findings[0].code, "ground-above-batter");
  EXPECT_NEAR(pit.dug.volume, 24 * 9.6 * 3 + 33.6 * 9 + 4.0 / 3 * 27, 1e-6);
}

}  // namespace
}  // namespace squaredig
