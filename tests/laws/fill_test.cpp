// The laws of the fill, on rough ground.
#include "fill/fill.h"

#include <gtest/gtest.h>

#include "grounds.h"

namespace squaredig {
namespace {

using testing::grid_surface;
using testing::MadeSurvey;
using testing::plain_pit;
using testing::rough_ground;

design::DesignInput pit_with_extras(GridPoint centre = grid_point(0, 0)) {
  const auto ab = Bearing::degrees(37.5);
  auto input = plain_pit(24, 9.6, 0.02, Batter::run_per_rise(1), centre, ab);
  input.tank.height = Length::metres(1.32);
  input.tank.fall = Fall::percent(0.5);
  input.tank.fall_toward = "CD";
  input.bedding.thickness = Length::millimetres(20);
  input.pit.gap.all = Length::metres(0.7);
  input.pit.batter = {Batter::run_per_rise(1), {{"BC", Batter{}}}, {}};
  input.pit.ramps = {{"CD",
                      Length::metres(6),
                      Length::metres(4),
                      Batter::run_per_rise(6),
                      Batter::run_per_rise(1),
                      {}}};
  const auto at = [&](double e, double n) {
    return grid_point(centre.easting.in_metres() + e, centre.northing.in_metres() + n);
  };
  input.pit.sumps = {
      {{at(0, 0), at(0, 1), at(1, 1), at(1, 0)}, Elevation::metres(-0.8), Batter{}, {}}};
  const auto v = [&](double e, double n, double z) {
    return GridPosition{at(e, n), Elevation::metres(z)};
  };
  input.pit.trenches = {{{v(2, 1, 0.9), v(14, -12, 0.8), v(25, -14, 0.7)},
                         Length::metres(0.9),
                         Length::millimetres(10),
                         Length::millimetres(100),
                         Batter{},
                         {}}};
  input.tank.pipes = {
      {"inlet", "AB", Length::metres(3), Elevation::metres(0.4), Length::millimetres(300), {}}};
  return input;
}

fill::FillInput usual() {
  fill::FillInput input;
  input.side_lift = Length::metres(0.3);
  input.special_height = Length::metres(1.5);
  input.capping = {Length::metres(0.15), Length::metres(0.15), Length::metres(0.15)};
  input.capping_beyond = Length::metres(0.5);
  input.finish = fill::ExistingGround{};
  input.compacted_per_bank = Ratio::of(0.9);
  return input;
}

fill::FillResult run(const fill::FillInput& input, const design::DesignInput& design,
                     ground::Survey& survey) {
  const auto pit = design::excavate(design, survey);
  return fill::fill(input, {design, pit, std::nullopt, nullptr});
}

void expect_closed(const fill::FillResult& result) {
  const double cut = result.closure.cut.in_cubic_metres();
  EXPECT_NEAR(result.closure.difference.in_cubic_metres(), 0, 1e-9 * cut);
}

TEST(Fill, FillsAreCutAndFillToFloorAndAboveLessLeftOpen_fill_1) {
  for (unsigned seed = 1; seed <= 12; ++seed) {
    SCOPED_TRACE(seed);
    MadeSurvey survey(grid_surface(60, 2.9, rough_ground(seed, seed % 3 ? 2.6 : 1.2, 0.7)));
    auto input = usual();
    if (seed % 4 == 1) input.finish = Elevation::metres(2.0);
    if (seed % 4 == 2) input.finish = Elevation::metres(3.4);
    if (seed % 4 == 3) {
      const auto finish = grid_surface(50, 9.1, rough_ground(seed + 50, 2.4, 0.3));
      SurfaceMesh mesh;
      for (const auto& v : finish.vertices) mesh.vertices.push_back(grid_position(v.x, v.y, v.z));
      mesh.faces = finish.triangles;
      input.finish = mesh;
    }
    expect_closed(run(input, pit_with_extras(), survey));
  }
}

// Derived: level ground, vertical sides, everything a box.
TEST(Fill, BoxesAddUp) {
  MadeSurvey survey(grid_surface(40, 3.3, [](double, double) { return 2.02; }));
  auto design = plain_pit(12, 6, 0.02, Batter{}, grid_point(0, 0), Bearing::degrees(90));
  design.bedding.thickness = Length::millimetres(20);
  design.tank.height = Length::metres(1.2);
  design.pit.gap.all = Length::metres(0.7);
  auto input = usual();
  const auto result = run(input, design, survey);
  expect_closed(result);
  const double hole = 13.4 * 7.4, tank = 72;
  EXPECT_NEAR(result.bedding.in_cubic_metres(), hole * 0.02, 1e-9);
  EXPECT_NEAR(result.tank.in_cubic_metres(), tank * 1.2, 1e-9);
  ASSERT_EQ(result.side_fill.size(), 4U);
  for (const auto& lift : result.side_fill) {
    EXPECT_TRUE(lift.special);  // 1.5 m of special fill reaches past the tank top
    EXPECT_NEAR(lift.placed.in_cubic_metres(), (hole - tank) * 0.3, 1e-9);
  }
  ASSERT_EQ(result.capping.size(), 3U);
  for (const auto& layer : result.capping) {
    EXPECT_NEAR(layer.area.in_square_metres(), 13 * 7, 1e-9);
    EXPECT_NEAR(layer.placed.in_cubic_metres(), 13 * 7 * 0.15, 1e-9);
  }
  EXPECT_NEAR(result.finish.in_cubic_metres(), hole * 0.8 - 13 * 7 * 0.45, 1e-9);
  EXPECT_EQ(result.left_open.in_cubic_metres(), 0);
  EXPECT_EQ(result.above_ground.in_cubic_metres(), 0);
  // a finish half a metre lower leaves that open; one half a metre higher stands above
  input.finish = Elevation::metres(1.8);
  const auto lower = run(input, design, survey);
  expect_closed(lower);
  EXPECT_NEAR(lower.left_open.in_cubic_metres(), hole * 0.22, 1e-9);
  input.finish = Elevation::metres(2.52);
  const auto higher = run(input, design, survey);
  expect_closed(higher);
  EXPECT_NEAR(higher.above_ground.in_cubic_metres(), hole * 0.5, 1e-9);
}

TEST(Fill, LiftsSumToTheSideFill_fill_2) {
  MadeSurvey survey(grid_surface(60, 2.9, rough_ground(5, 2.6, 0.7)));
  auto input = usual();
  input.special_height = Length::metres(0.75);
  const auto result = run(input, pit_with_extras(), survey);
  CompactedVolume special, rest;
  for (const auto& lift : result.side_fill) (lift.special ? special : rest) += lift.placed;
  EXPECT_NEAR(special / result.special, 1, 1e-12);
  EXPECT_NEAR(rest / result.side, 1, 1e-12);
  // broken at 0.75 m: 0.3 0.6 0.75 1.05 1.32
  EXPECT_EQ(result.side_fill.size(), 5U);
  EXPECT_GT(result.pipe.in_cubic_metres(), 0);
}

TEST(Fill, ThinnerLiftsChangeNoTotal_fill_3) {
  MadeSurvey survey(grid_surface(60, 2.9, rough_ground(6, 2.6, 0.7)));
  auto input = usual();
  const auto thick = run(input, pit_with_extras(), survey);
  input.side_lift = Length::metres(0.11);
  const auto thin = run(input, pit_with_extras(), survey);
  EXPECT_NEAR((thick.special + thick.side) / (thin.special + thin.side), 1, 1e-9);
  EXPECT_NEAR(thick.finish / thin.finish, 1, 1e-9);
}

TEST(Fill, MovingTheJobChangesNothing_fill_4) {
  const auto height = [](double x, double y) { return 2.6 + 0.03 * x - 0.02 * y; };
  MadeSurvey here(grid_surface(60, 2.9, height));
  MadeSurvey there(grid_surface(60, 2.9, height), grid_position(1525748, 5021772, 0));
  const auto a = run(usual(), pit_with_extras(), here);
  const auto b = run(usual(), pit_with_extras(grid_point(1525748, 5021772)), there);
  EXPECT_NEAR(a.special.in_cubic_metres(), b.special.in_cubic_metres(), 1e-6);
  EXPECT_NEAR(a.finish.in_cubic_metres(), b.finish.in_cubic_metres(), 1e-6);
  EXPECT_NEAR(a.trench.in_cubic_metres(), b.trench.in_cubic_metres(), 1e-6);
  EXPECT_NEAR(a.ramp.in_cubic_metres(), b.ramp.in_cubic_metres(), 1e-6);
}

TEST(Fill, CappingIsStoppedByANearerWallWithAFinding) {
  MadeSurvey survey(grid_surface(40, 3.3, [](double, double) { return 2.02; }));
  auto design = plain_pit(12, 6, 0.02, Batter{}, grid_point(0, 0), Bearing::degrees(90));
  design.tank.height = Length::metres(1.2);
  design.pit.gap.all = Length::metres(0.2);
  const auto result = run(usual(), design, survey);
  expect_closed(result);
  EXPECT_NEAR(result.capping[0].area.in_square_metres(), 12.4 * 6.4, 1e-9);
  ASSERT_EQ(result.head.findings.size(), 3U);
  EXPECT_EQ(result.head.findings[0].code, "capping-stopped");
}

}  // namespace
}  // namespace squaredig
