// Layers as built and the log of lifts, each check with its source.
#include <gtest/gtest.h>

#include "fill_box.h"

namespace squaredig::fill {
namespace {

using testing::box_job;
using testing::fill_under;

Length m(double v) { return Length::metres(v); }

TEST(Layers, ThicknessBetweenSurveys) {
  auto job = box_job();
  job.fill.layer_tolerance = Length::millimetres(20);
  const auto layer = [](const std::string& name, double level, double dip) {
    LayerSurvey survey{name, {}, {"job.toml", 1, 1}};
    survey.points.add_file(name + ".csv");
    for (double e = -8; e <= 8; e += 2)
      for (double n = -5; n <= 5; n += 1) {
        SurveyPoint p;
        p.at = grid_position(e, n, level - (e == 2 && n == 1 ? dip : 0));
        p.sigma_height_mm = 2;
        survey.points.add(p, "L", "");
      }
    return survey;
  };
  job.fill.layers = {layer("cap 1", 1.35, 0), layer("cap 2", 1.50, 0.03)};
  const auto result = fill_under(job, 2.0);
  ASSERT_EQ(result.layers.size(), 2U);
  EXPECT_NEAR(result.layers[0].mean_thickness.in_millimetres(), 150, 1e-6);
  EXPECT_NEAR(result.layers[0].volume.in_cubic_metres(), 13 * 7 * 0.15, 1e-9);
  EXPECT_EQ(result.layers[0].verdict, Verdict::Conforms);
  EXPECT_NEAR(result.layers[1].thinnest.in_millimetres(), 120, 1e-6);
  EXPECT_EQ(result.layers[1].thinnest_at, grid_point(2, 1));
  // a pyramid of 30 mm over the six triangles round the point: a third of their area
  EXPECT_NEAR(result.layers[1].volume.in_cubic_metres(), 13 * 7 * 0.15 - 0.03 * 2 * 1 * 3 / 3,
              1e-9);
  EXPECT_EQ(result.layers[1].verdict, Verdict::DoesNotConform);
}

// Planted at 0.9, 1.0 and 1.1 of the tolerance of 50 mm, thin and thick: surveyed to 2 mm, so 3.29
// mm of uncertainty.
TEST(Layers, ThreeVerdicts) {
  auto job = box_job();
  job.fill.layer_tolerance = Length::millimetres(50);
  const auto verdict = [&](double off) {
    LayerSurvey survey{"cap 1", {}, {"job.toml", 1, 1}};
    survey.points.add_file("cap1.csv");
    for (double e = -8; e <= 8; e += 2)
      for (double n = -5; n <= 5; n += 1) {
        SurveyPoint p;
        p.at = grid_position(e, n, 1.35 + (e == 2 && n == 1 ? off : 0));
        p.sigma_height_mm = 2;
        survey.points.add(p, "L", "");
      }
    job.fill.layers = {survey};
    return fill_under(job, 2.0).layers[0].verdict;
  };
  for (const double side : {-0.05, 0.05}) {
    EXPECT_EQ(verdict(0.9 * side), Verdict::Conforms) << side;
    EXPECT_EQ(verdict(1.0 * side), Verdict::NotProven) << side;
    EXPECT_EQ(verdict(1.1 * side), Verdict::DoesNotConform) << side;
  }
}

// A survey of half the layer says so, and points without sigmas too.
TEST(Layers, WhatWasNotMeasuredIsTold) {
  auto job = box_job();
  job.fill.layer_tolerance = Length::millimetres(50);
  LayerSurvey half{"cap 1", {}, {"job.toml", 1, 1}};
  half.points.add_file("cap1.csv");
  for (double e = -8; e <= 0; e += 2)
    for (double n = -5; n <= 5; n += 1) {
      SurveyPoint p;
      p.at = grid_position(e, n, 1.35);
      half.points.add(p, "L" + std::to_string(half.points.size() + 1), "");
    }
  job.fill.layers = {half};
  const auto result = fill_under(job, 2.0);
  const auto& layer = result.layers[0];
  EXPECT_NEAR(layer.area.in_square_metres(), 6.5 * 7, 1e-9);
  EXPECT_NEAR(layer.wanted_area.in_square_metres(), 13 * 7, 1e-9);
  int told = 0;
  for (const auto& caution : result.head.cautions)
    told += caution.find("surveyed over 45.5 of 91.0 m2") != std::string::npos ||
            caution.find("judged without uncertainty") != std::string::npos;
  EXPECT_EQ(told, 2);
  // points over the capping, each with the thickness under it: 4 columns of 7
  ASSERT_EQ(layer.points.size(), 4U * 7);
  for (const auto& p : layer.points) EXPECT_NEAR(p.thickness.in_millimetres(), 150, 1e-9);
  EXPECT_EQ(layer.points[0].point, "L14");
}

// FHWA HEC-22, eq 10.10 (formula seen): a basin of bottom L x W and batters Z holds LWD + (L + W) Z
// D^2
// + 4/3 Z^2 D^3. Each lift is the difference of two of these less the tank; bedding, finish
// likewise.
TEST(PublishedFill, LiftsOfABatteredPit) {
  auto job = box_job();
  job.design.pit.batter.all = Batter::run_per_rise(1.5);
  job.design.bedding.thickness = Length::millimetres(50);
  job.design.tank.underside_level = Elevation::metres(0.05);
  job.fill.special_height = m(0.75);
  const auto basin = [](double depth) {
    const double l = 13.4, w = 7.4, z = 1.5;
    return l * w * depth + (l + w) * z * depth * depth + 4.0 / 3 * z * z * depth * depth * depth;
  };
  const auto result = fill_under(job, 2.55);
  EXPECT_NEAR(result.closure.cut.in_cubic_metres(), basin(2.55), 1e-8);
  EXPECT_NEAR(result.bedding.in_cubic_metres(), basin(0.05), 1e-8);
  ASSERT_EQ(result.side_fill.size(), 5U);  // broken at 0.75: 0.3 0.6 0.75 1.05 1.2
  const std::vector<double> tops{0.3, 0.6, 0.75, 1.05, 1.2};
  double below = 0;
  for (std::size_t i = 0; i < tops.size(); ++i) {
    const double lift = basin(0.05 + tops[i]) - basin(0.05 + below) - 72 * (tops[i] - below);
    EXPECT_NEAR(result.side_fill[i].placed.in_cubic_metres(), lift, 1e-8) << i;
    EXPECT_EQ(result.side_fill[i].special, tops[i] <= 0.75);
    // mean of the end areas, the common mistake, is not it
    const auto area = [&](double z) { return (basin(z + 1e-4) - basin(z - 1e-4)) / 2e-4 - 72; };
    const double mean = (area(0.05 + tops[i]) + area(0.05 + below)) / 2 * (tops[i] - below);
    EXPECT_GT(mean - lift, 1e-3);
    below = tops[i];
  }
  EXPECT_NEAR(result.finish.in_cubic_metres(), basin(2.55) - basin(1.25) - 13 * 7 * 0.45, 1e-8);
}

// Equal lifts on both sides: more than one lift's difference between opposite sides is told (the
// rule of a clause that asks for equal layers both sides, seen second-hand).
TEST(LiftLog, OneSidedFillIsTold) {
  auto job = box_job();
  const auto lift = [](const char* side, double height, int line) {
    return LiftRecord{
        "1", side, std::chrono::year{2026} / 4 / 2, m(height), {"lifts.csv", line, 1}};
  };
  job.fill.lift_log = {lift("AB", 0.3, 2), lift("CD", 0.3, 3), lift("AB", 0.6, 4)};
  for (const auto& finding : fill_under(job, 2.0).head.findings)
    EXPECT_NE(finding.code, "one-sided-fill");
  job.fill.lift_log->push_back(lift("AB", 0.9, 5));
  int told = 0;
  for (const auto& finding : fill_under(job, 2.0).head.findings)
    if (finding.code == "one-sided-fill") {
      ++told;
      EXPECT_NE(finding.text.find("2026-04-02, line 5: side AB"), std::string::npos);
    }
  EXPECT_EQ(told, 1);
}

}  // namespace
}  // namespace squaredig::fill
