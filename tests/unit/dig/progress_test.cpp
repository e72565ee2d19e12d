// Surveys during the dig. Pits in level ground, so that every figure can be derived.
#include <gtest/gtest.h>

#include "dig/dig.h"
#include "geometry/overlay.h"
#include "ground/build_ground.h"
#include "grounds.h"

namespace squaredig {
namespace {

using testing::grid_surface;
using testing::MadeSurvey;
using testing::plain_pit;

dig::ProgressSurvey survey_of(std::string name, double half, double step,
                              const testing::Height& height) {
  dig::ProgressSurvey survey;
  survey.name = std::move(name);
  survey.sigma_height = Length::millimetres(10);
  int number = 0;
  for (double x = -half; x <= half + 1e-9; x += step)
    for (double y = -half; y <= half + 1e-9; y += step) {
      SurveyPoint p;
      p.at = grid_position(x, y, height(x, y));
      survey.points.add(p, std::to_string(++number), "");
    }
  return survey;
}

struct Site {
  design::DesignInput design = plain_pit(20, 10, 0, Batter{});
  dig::DigInput input;
  MadeSurvey survey{grid_surface(60, 7.3, [](double, double) { return 3.0; })};
  Site() {
    input.cell = Length::metres(5);
    input.bulking = Ratio::of(1.25);
  }
  dig::DigResult run() { return dig::dig(input, design, design::excavate(design, survey), survey); }
};

// Vertical pit of 200 m2, 3 m deep: half dug, then to the floor with 0.1 m too deep in the east.
TEST(Progress, DugRemainingAndOverDig) {
  Site site;
  site.input.progress = {
      survey_of("week 1", 20, 2.5, [](double, double) { return 1.5; }),
      survey_of("week 2", 20, 2.5, [](double x, double) { return x > 1 ? -0.1 : 0.0; })};
  const auto result = site.run();
  ASSERT_EQ(result.progress.size(), 2U);
  const auto& first = result.progress[0];
  EXPECT_EQ(first.name, "week 1");
  EXPECT_NEAR(first.dug.in_cubic_metres(), 300, 1e-6);
  EXPECT_NEAR(first.remaining.in_cubic_metres(), 300, 1e-6);
  EXPECT_NEAR(first.over_dig.in_cubic_metres(), 0, 1e-9);
  EXPECT_NEAR(first.dug_loose->in_cubic_metres(), 375, 1e-6);
  EXPECT_NEAR(first.surveyed.in_square_metres(), 200, 1e-6);
  const auto& second = result.progress[1];
  // east of x = 2.5 a full 0.1 m, from 0 to 2.5 half of it
  const double over = 0.1 * 7.5 * 10 + 0.05 * 2.5 * 10;
  EXPECT_NEAR(second.over_dig.in_cubic_metres(), over, 1e-6);
  EXPECT_NEAR(second.over_dig_area.in_square_metres(), 100, 1e-6);
  EXPECT_NEAR(second.deepest_over_dig.in_metres(), 0.1, 1e-9);
  EXPECT_NEAR(second.dug.in_cubic_metres(), 300 + over, 1e-6);
  EXPECT_NEAR(second.remaining.in_cubic_metres(), 0, 1e-6);
  double plan = 0;
  for (const auto& cell : second.over_dig_plan) plan += cell.volume.in_cubic_metres();
  EXPECT_NEAR(plan, over, 1e-6);
  ASSERT_EQ(result.head.findings.size(), 1U);
  EXPECT_EQ(result.head.findings[0].code, "over-dig");
}

// What bedding may make up needs no person.
TEST(Progress, OverDigWithinTheBeddingIsNoFinding) {
  Site site;
  site.design.bedding.thickness = Length{};
  site.design.bedding.most = Length::millimetres(150);
  site.input.progress = {survey_of("week 2", 20, 2.5, [](double, double) { return -0.1; })};
  EXPECT_TRUE(site.run().head.findings.empty());
}

// On rough ground, with surveys of any cover, some of which put earth back.
TEST(Progress, DugSoFarAndRemainingMakeTheCut_dig_5) {
  for (unsigned seed = 1; seed <= 8; ++seed) {
    SCOPED_TRACE(seed);
    Site site;
    site.survey = MadeSurvey(grid_surface(45, 3.1, testing::rough_ground(seed, 3, 0.5)));
    site.design.pit.batter.all = Batter::run_per_rise(1);
    const auto rough = testing::rough_ground(seed + 100, 1.2, 0.8);
    site.input.progress = {survey_of("a", 9, 1.7, rough),
                           survey_of("b", 25, 2.9, testing::rough_ground(seed + 50, 0.2, 0.5)),
                           survey_of("c", 6, 1.1, testing::rough_ground(seed + 70, 0.3, 0.5))};
    const auto result = site.run();
    double dug = 0;
    for (const auto& now : result.progress) {
      dug += now.dug.in_cubic_metres();
      EXPECT_NEAR(dug + now.remaining.in_cubic_metres() - now.over_dig.in_cubic_metres(),
                  result.cut.in_cubic_metres(), 1e-7 * result.cut.in_cubic_metres());
      EXPECT_LE(now.surveyed.in_square_metres(), result.crest_area.in_square_metres() * (1 + 1e-9));
    }
    EXPECT_LT(result.progress[2].surveyed.in_square_metres(), 145);
  }
}

// Against 10 000 draws of both surveys' heights: 10 mm for the survey, 15 mm for the ground.
TEST(Progress, SigmaAgreesWithDraws) {
  Site site;
  site.survey = MadeSurvey(grid_surface(22, 5.5, [](double, double) { return 3.0; }));
  site.input.progress = {survey_of("week 1", 12, 4, [](double, double) { return 1.5; })};
  const auto now = site.run().progress[0];
  ASSERT_TRUE(now.dug_sigma && now.remaining_sigma);
  // level surfaces: the volume is linear in every height, its weights those of the two sums
  const auto volume_at = [&](const geometry::Surface& surface) {
    const geometry::Locator locator(surface);
    const std::vector<geometry::PlaneFacet> floor{
        {{{-10, -5}, {10, -5}, {10, 5}, {-10, 5}}, {{0, 0}, 0, 0, 0}}};
    return geometry::between(surface, locator, floor).above;
  };
  constexpr unsigned kSeed = 20260304;
  std::mt19937_64 random(kSeed);
  std::normal_distribution<double> normal(0, 1);
  const auto before = grid_surface(22, 5.5, [](double, double) { return 3.0; });
  ground::GroundInput points;
  points.points = site.input.progress[0].points;
  const auto after = ground::build_ground(points, geometry::SiteFrame{}).ground.surface;
  double squares = 0, remaining = 0;
  constexpr int kDraws = 10000;
  const double was = volume_at(before), is = volume_at(after);
  for (int i = 0; i < kDraws; ++i) {
    auto g = before, t = after;
    for (auto& v : g.vertices) v.z += 0.015 * normal(random);
    for (auto& v : t.vertices) v.z += 0.010 * normal(random);
    const double left = volume_at(t) - is;
    const double dug = volume_at(g) - was - left;
    squares += dug * dug;
    remaining += left * left;
  }
  EXPECT_NEAR(now.dug_sigma->in_cubic_metres(), std::sqrt(squares / kDraws),
              0.03 * std::sqrt(squares / kDraws))
      << kSeed;
  EXPECT_NEAR(now.remaining_sigma->in_cubic_metres(), std::sqrt(remaining / kDraws),
              0.03 * std::sqrt(remaining / kDraws))
      << kSeed;
}

}  // namespace
}  // namespace squaredig
