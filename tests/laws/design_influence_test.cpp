// The laws of the influence line.
#include <gtest/gtest.h>

#include "design/influence.h"
#include "whole_pit.h"

namespace squaredig {
namespace {

using design::influence_zone;
using design::InfluenceFrom;
using testing::grid_surface;
using testing::MadeSurvey;
using testing::plain_pit;

TEST(Influence, NeverInsideTheCrest_influence_1) {
  for (unsigned seed = 1; seed <= 10; ++seed) {
    SCOPED_TRACE(seed);
    MadeSurvey survey(grid_surface(60, 3.3, testing::rough_ground(seed, 3, 0.3)));
    auto input = testing::whole_pit();
    input.pit.benches.clear();
    input.pit.ramps.clear();
    const auto pit = design::excavate(input, survey);
    const auto found =
        influence_zone(input, pit, Batter::run_per_rise(1.2), InfluenceFrom::EveryToe, survey);
    ASSERT_TRUE(found.zone);
    EXPECT_FALSE(found.off_survey);
    for (double turn = 0; turn < 360; turn += 7) {
      const auto ray = Bearing::degrees(turn);
      EXPECT_GE(found.zone->reach(grid_point(0, 0), ray).in_metres(),
                pit.reach(grid_point(0, 0), ray).in_metres() - 1e-9);
    }
  }
}

TEST(Influence, NoZoneWhereEveryBatterIsAsFlat_influence_2) {
  MadeSurvey survey(grid_surface(60, 3.3, testing::rough_ground(3, 3, 0.3)));
  auto input = plain_pit(18, 8, 0, Batter::run_per_rise(1));
  const auto pit = design::excavate(input, survey);
  const auto zone = [&](double run, InfluenceFrom from) {
    return influence_zone(input, pit, Batter::run_per_rise(run), from, survey).zone.has_value();
  };
  EXPECT_FALSE(zone(1, InfluenceFrom::EveryToe));
  EXPECT_TRUE(zone(1.01, InfluenceFrom::EveryToe));
  // a vertical sump has a toe of its own
  input.pit.sumps = {
      {{grid_point(2, -1), grid_point(4, -1), grid_point(4, 0.5), grid_point(2, 0.5)},
       Elevation::metres(-0.7),
       Batter{},
       {}}};
  EXPECT_TRUE(zone(1, InfluenceFrom::EveryToe));
  EXPECT_FALSE(zone(1, InfluenceFrom::Floor));
}

// Derived: in level ground 3 m above a vertical side's toe the line at 1.5:1 reaches 4.5 m out.
TEST(Influence, ReachesRunTimesDepth) {
  MadeSurvey survey(grid_surface(60, 7.3, [](double, double) { return 3.0; }));
  const auto input = plain_pit(20, 10, 0, Batter{});
  const auto pit = design::excavate(input, survey);
  const auto found =
      influence_zone(input, pit, Batter::run_per_rise(1.5), InfluenceFrom::Floor, survey);
  ASSERT_TRUE(found.zone);
  EXPECT_NEAR(found.zone->reach(grid_point(0, 0), Bearing::degrees(0)).in_metres(), 9.5, 1e-9);
  MadeSurvey small(grid_surface(14, 2, [](double, double) { return 3.0; }));
  const auto off =
      influence_zone(input, pit, Batter::run_per_rise(1.5), InfluenceFrom::Floor, small);
  EXPECT_FALSE(off.zone);
  EXPECT_TRUE(off.off_survey);
}

}  // namespace
}  // namespace squaredig
