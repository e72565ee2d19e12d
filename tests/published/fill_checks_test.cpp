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
