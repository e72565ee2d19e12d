// The record takes figures and verdicts as the stages give them, and the tank where it was built.
#include "record/record.h"

#include <gtest/gtest.h>

#include "grounds.h"

namespace squaredig::record {
namespace {

design::DesignInput designed() {
  auto input = testing::plain_pit(12, 6, 10, Batter{}, grid_point(500, 600), Bearing::degrees(90));
  input.tank.height = Length::metres(1.2);
  input.tank.voids = Ratio::percent(95);
  input.tank.outlet_level = Elevation::metres(10.9);
  input.bedding.thickness = Length::millimetres(20);
  return input;
}

RecordInput dated() {
  RecordInput input;
  input.date = std::chrono::year{2026} / 4 / 10;
  return input;
}

const Figure& figure(const std::vector<Figure>& figures, const std::string& what) {
  for (const auto& f : figures)
    if (f.what == what) return f;
  ADD_FAILURE() << "no figure " << what;
  return figures.front();
}

TEST(Record, WithoutASurveyedBaseItIsTheDesign_record_1) {
  const auto result = record(dated(), {designed()});
  EXPECT_EQ(result.storage.stands_on, "the underside as designed");
  EXPECT_NEAR(result.storage.below_outlet->in_cubic_metres(), 61.56, 1e-9);  // 72 x 0.9 x 0.95
  EXPECT_TRUE(result.stages.empty());
  EXPECT_FALSE(result.tank_built);
  ASSERT_EQ(result.tank_designed.size(), 4U);
  EXPECT_EQ(result.tank_designed[0].height, Elevation::metres(10));
  EXPECT_EQ(figure(result.designed, "dig level at A").value, 10 - 0.020);
  EXPECT_EQ(figure(result.designed, "bedding").value, 20);
}

// The base was dug 30 mm low: everything stands 30 mm lower, and more is held below the
// outlet: 72 x 0.93 x 0.95.
TEST(Record, TheTankStandsOnTheBaseAsSurveyed) {
  base::BaseResult base;
  base.verdict = Verdict::NotProven;
  base.surveyed = "2026-03-20 14:10";
  base.best_plane = {Elevation::metres(9.95), Fall{}, Bearing{}};
  base.head.inputs = {{"as-dug.csv", "00ff", 3, 3, {}}};
  base.checks = {{"level mean",
                  Verdict::NotProven,
                  Length::millimetres(-30),
                  Length::millimetres(5),
                  Length::millimetres(2),
                  {},
                  {}}};
  pegs::PegsResult pegs;
  pegs.as_set.emplace();
  pegs.as_set->verdict = Verdict::Conforms;
  pegs.as_set->corners = {{"B", grid_point(512.004, 600.003), {}, {}, {}}};
  const auto result = record(dated(), {designed(), &pegs, nullptr, &base});
  EXPECT_NEAR(result.storage.below_outlet->in_cubic_metres(), 72 * 0.93 * 0.95, 1e-9);
  ASSERT_TRUE(result.tank_built);
  EXPECT_EQ((*result.tank_built)[1].at, grid_point(512.004, 600.003));
  EXPECT_NEAR((*result.tank_built)[1].height.in_metres(), 9.97, 1e-12);
  ASSERT_EQ(result.stages.size(), 2U);
  EXPECT_EQ(result.stages[0].verdict, "as set conforms");
  EXPECT_EQ(result.stages[0].when, "2026-04-10");
  EXPECT_EQ(result.stages[0].when_is, "date of the job file");
  EXPECT_EQ(result.stages[1].verdict, "not proven");
  EXPECT_EQ(result.stages[1].when, "2026-03-20 14:10");
  EXPECT_EQ(result.stages[1].when_is, "survey of the base");
  ASSERT_EQ(result.stages[1].inputs.size(), 1U);
  EXPECT_EQ(result.stages[1].inputs[0].sha256, "00ff");
  const auto& mean = figure(result.stages[1].figures, "level mean");
  EXPECT_EQ(mean.value, -30);
  EXPECT_EQ(mean.limit, 5);
  EXPECT_EQ(mean.verdict, "not proven");
}

fill::LayerBuilt layer(Verdict verdict) {
  fill::LayerBuilt built;
  built.name = "cap 1";
  built.mean_thickness = built.thinnest = Length::millimetres(150);
  built.planned = Length::millimetres(150);
  built.tolerance = Length::millimetres(20);
  built.verdict = verdict;
  return built;
}

TEST(Record, TheFillIsAsGoodAsItsWorstPart_record_2) {
  fill::FillResult fill;
  const auto told = [&] { return record(dated(), {designed(), nullptr, nullptr, nullptr, &fill}); };
  EXPECT_EQ(told().stages[0].verdict, "not asked");
  fill.layers = {layer(Verdict::Conforms)};
  EXPECT_EQ(told().stages[0].verdict, "conforms");
  EXPECT_EQ(figure(told().stages[0].figures, "cap 1, thinnest").limit, 130);
  fill.layers.push_back(layer(Verdict::NotProven));
  EXPECT_EQ(told().stages[0].verdict, "not proven");
  fill.lift_log = {{"1", "AB", std::chrono::year{2026} / 3 / 24, Length::metres(0.7), "CD",
                    Length::metres(0.7), true}};
  EXPECT_EQ(told().stages[0].verdict, "does not conform");
  EXPECT_EQ(told().stages[0].when, "2026-03-24");
  EXPECT_EQ(told().stages[0].when_is, "last line of the lift log");
}

}  // namespace
}  // namespace squaredig::record
