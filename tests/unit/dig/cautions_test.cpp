// What the dig warns of, and the words it never uses.
#include <gtest/gtest.h>

#include "dig/dig.h"
#include "whole_pit.h"

namespace squaredig {
namespace {

using testing::grid_surface;
using testing::MadeSurvey;
using testing::plain_pit;

struct Site {
  design::DesignInput design = plain_pit(20, 10, 0, Batter::run_per_rise(1));
  dig::DigInput input;
  MadeSurvey survey{grid_surface(60, 7.3, [](double x, double) { return 3.0 + 0.05 * x; })};
  Site() {
    input.cell = Length::metres(2);
    design.pit.batter_given_by = "geotechnical report 12";
    design.pit.vertical_caution_depth = Length::metres(1.5);
  }
  dig::DigResult run() { return dig::dig(input, design, design::excavate(design, survey), survey); }
};

std::size_t count(const dig::DigResult& result, const std::string& words) {
  return static_cast<std::size_t>(
      std::count_if(result.head.cautions.begin(), result.head.cautions.end(),
                    [&](const std::string& c) { return c.find(words) != std::string::npos; }));
}

// Ground at 3 + 0.05 x: the south side's face is highest at its east end, 3.5 m; the west one's
// depth is 2.5 m all along.
TEST(Cautions, EachDeepVerticalFaceIsToldByName) {
  Site site;
  site.design.pit.batter.by_side = {{"CD", Batter{}}, {"DA", Batter{}}};
  auto result = site.run();
  ASSERT_EQ(result.vertical_faces.size(), 2U);
  EXPECT_EQ(result.vertical_faces[0].name, "on side CD");
  EXPECT_NEAR(result.vertical_faces[0].height.in_metres(), 3.5, 1e-5);
  EXPECT_EQ(result.vertical_faces[1].name, "on side DA");
  EXPECT_NEAR(result.vertical_faces[1].height.in_metres(), 2.5, 1e-5);
  EXPECT_EQ(count(result, "NO BATTER GIVEN: support by others."), 2U);
  EXPECT_EQ(count(result, "face on side CD is 3.50 m high"), 1U);
  site.design.pit.vertical_caution_depth = Length::metres(2.6);
  EXPECT_EQ(count(site.run(), "NO BATTER GIVEN"), 1U);
  site.design.pit.vertical_caution_depth = Length::metres(4);
  EXPECT_EQ(count(site.run(), "NO BATTER GIVEN"), 0U);
}

// A vertical sump is as high as it is deep below the floor, not below the ground.
TEST(Cautions, FacesInsideThePitAreMeasuredFromTheFloor) {
  Site site;
  site.design.pit.sumps = {
      {{grid_point(2, -1), grid_point(4, -1), grid_point(4, 0.5), grid_point(2, 0.5)},
       Elevation::metres(-0.7),
       Batter{},
       {}}};
  const auto result = site.run();
  ASSERT_EQ(result.vertical_faces.size(), 1U);
  EXPECT_EQ(result.vertical_faces[0].name, "of sumps");
  EXPECT_NEAR(result.vertical_faces[0].height.in_metres(), 0.7, 1e-5);
  EXPECT_EQ(count(result, "NO BATTER GIVEN"), 0U);
}

TEST(Cautions, WithoutANameForTheBatter) {
  Site site;
  EXPECT_EQ(count(site.run(), "NO BATTER GIVEN"), 0U);
  site.design.pit.batter_given_by.reset();
  EXPECT_EQ(count(site.run(), "NO BATTER GIVEN: support by others. Nobody is named"), 1U);
}

TEST(Cautions, SpoilAndWater) {
  Site site;
  EXPECT_EQ(count(site.run(), "spoil"), 0U);
  EXPECT_EQ(count(site.run(), "Groundwater"), 0U);
  site.input.spoil_setback = Length::metres(1);
  site.input.water_level = Elevation::metres(-0.1);
  EXPECT_EQ(count(site.run(), "entered 1.00 m back from the crest"), 1U);
  EXPECT_EQ(count(site.run(), "Groundwater"), 0U);
  site.design.tank.fall = Fall::percent(1);
  site.design.tank.fall_bearing = Bearing::degrees(90);
  EXPECT_EQ(count(site.run(), "stands 0.10 m above the dig level at corner B"), 1U);
}

// Never a word that says the ground will stand.
TEST(Cautions, NeverAWordOfPraise) {
  MadeSurvey survey(grid_surface(50, 3.7, testing::rough_ground(3, 3.2, 0.4)));
  const auto design = testing::whole_pit();
  dig::DigInput input;
  input.cell = Length::metres(2);
  input.spoil_setback = Length::metres(1);
  input.water_level = Elevation::metres(1);
  const auto result = dig::dig(input, design, design::excavate(design, survey), survey);
  std::vector<std::string> said = result.head.cautions;
  for (const auto& finding : result.head.findings) said.push_back(finding.text);
  ASSERT_GT(said.size(), 3U);
  for (const auto& text : said)
    for (const char* word : {"safe", "compliant", "stable", "approved", "OK to enter"})
      EXPECT_EQ(text.find(word), std::string::npos) << text;
}

}  // namespace
}  // namespace squaredig
