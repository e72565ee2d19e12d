#include <gtest/gtest.h>

#include "refusal_text.h"
#include "unit/pegs/site.h"

namespace squaredig::pegs {
namespace {

Site on_grid(const char* code) {
  Site site;
  site.on.grid = geodesy::Grid::open(code, {"job.toml", 7, 11});
  return site;
}

bool says(const std::vector<std::string>& texts, const std::string& part) {
  for (const std::string& t : texts)
    if (t.find(part) != std::string::npos) return true;
  return false;
}

TEST(Scale, FactorConvergenceAndWhatASideSuffers) {
  Site site = on_grid("EPSG:2157");
  const PegsResult r = site.run();
  const auto expected =
      geodesy::work_factors(*site.on.grid, grid_point(715830.25, 734697.6), Length::metres(62.35));
  EXPECT_EQ(r.scale.combined, expected.combined);
  EXPECT_EQ(*r.scale.convergence, expected.grid.convergence);
  EXPECT_EQ(*r.scale.point_scale, expected.grid.point_scale);
  EXPECT_EQ(r.scale.words,
            "Side AB is 24.000 m on the grid; on the ground it is 0.6 mm longer (combined factor "
            "0.99997485).");
  EXPECT_NEAR((r.sides[0].ground - r.sides[0].grid).in_millimetres(), 0.6, 0.05);
  EXPECT_TRUE(says(r.head.assumed, "height above the ellipsoid"));
}

TEST(Scale, AStatedFactorIsTaken) {
  Site site = on_grid("EPSG:2157");
  site.on.stated_factor = Ratio::of(0.9996);
  const PegsResult r = site.run();
  EXPECT_EQ(r.scale.combined.value(), 0.9996);
  EXPECT_EQ(r.scale.words,
            "Side AB is 24.000 m on the grid; on the ground it is 9.6 mm longer (combined factor "
            "0.99960000).");
  EXPECT_FALSE(says(r.head.assumed, "height above the ellipsoid"));
}

// Ground lengths in the job file: everything that is typed as a length shrinks onto the grid.
TEST(Scale, GroundLengthsComeBackOnTheGround) {
  Site site;
  site.on.stated_factor = Ratio::of(0.9996);
  site.design.plan_lengths = design::PlanLengths::Ground;
  site.design.combined_factor = Ratio::of(0.9996);
  site.pegs.offset = Length::metres(6);
  const PegsResult r = site.run();
  EXPECT_NEAR(r.sides[0].grid.in_metres(), 24 * 0.9996, 1e-9);
  EXPECT_NEAR(r.sides[0].ground.in_metres(), 24, 1e-9);
  EXPECT_NEAR(peg(r, "A1").beyond_corner.in_metres(), 6 * 0.9996, 1e-9);
  EXPECT_NEAR(r.corners[0].recovery[0].ground.in_metres(), 6, 1e-9);
}

TEST(Scale, ALocalGridSaysThatLengthsAreEqual) {
  const PegsResult r = Site().run();
  EXPECT_EQ(r.scale.combined.value(), 1);
  EXPECT_FALSE(r.scale.convergence);
  EXPECT_FALSE(r.geographic_way);
  EXPECT_TRUE(says(r.head.assumed, "local grid"));
}

TEST(Scale, SwappedEastingAndNorthingIsRefused) {
  Site site;
  const GridPosition there = grid_position(5812000, 321000, 60);
  testing::MadeSurvey survey(testing::grid_surface(60, 4, [](double, double) { return 5.0; }),
                             there);
  site.design.tank.corner_a = there.at;
  site.on.grid = geodesy::Grid::open("EPSG:7855", {"job.toml", 7, 11});
  const auto pit = design::excavate(site.design, survey);
  EXPECT_EQ(
      testing::refusal_text([&] { set_out(site.pegs, site.design, pit, survey, site.on); }),
      "job.toml:20:1: corner A at E 5812000.000 N 321000.000 lies outside the area of EPSG:7855 "
      "(GDA2020 / MGA zone 55), and inside it with easting and northing exchanged; easting before "
      "northing; exchange the two, here and in the files\n");
}

// The tank may stand right where a control point does not.
TEST(Scale, SwappedControlPointsAreRefusedEachByItsLine) {
  Site site = on_grid("EPSG:2157");
  PointTable& control = site.design.control;
  const GridPoint a = std::get<GridPoint>(*site.design.tank.corner_a);
  const std::size_t before = control.size();
  if (control.files.empty()) control.add_file("control.csv");
  const auto add = [&](const char* name, double east, double north, std::uint32_t line) {
    SurveyPoint point;
    point.at = grid_position(east, north, 60);
    point.line = line;
    control.add(point, name, "CONTROL");
  };
  add("CP8", a.easting.in_metres() + 20, a.northing.in_metres(), 11);
  EXPECT_EQ(control.size(), before + 1);
  EXPECT_NO_THROW(site.run());
  add("CP9", 900000.0, 450000.0, 12);  // inside only as E 450000 N 900000
  const std::string text = testing::refusal_text([&] { site.run(); });
  EXPECT_NE(text.find(":12:1: control point \"CP9\" at E 900000.000 N 450000.000 lies outside the "
                      "area of EPSG:2157"),
            std::string::npos)
      << text;
  EXPECT_EQ(text.find("CP8"), std::string::npos);
}

TEST(Scale, OutsideTheAreaIsACaution) {
  const PegsResult r = on_grid("EPSG:7855").run();
  EXPECT_TRUE(says(r.head.cautions, "lies outside the area of use of EPSG:7855"));
}

TEST(Scale, LongitudesTellTheirOperationAndAccuracy) {
  const PegsResult r = on_grid("EPSG:2157").run();
  ASSERT_TRUE(r.geographic_way);
  EXPECT_EQ(r.geographic_way->operation,
            "Inverse of Irish Transverse Mercator + IRENET95 to WGS 84 (1)");
  EXPECT_EQ(r.geographic_way->accuracy, Length::metres(1));
  EXPECT_NEAR(r.reference[0].geographic->latitude.in_degrees(), 53.35, 0.01);
  EXPECT_NEAR(r.reference[0].geographic->longitude.in_degrees(), -6.26, 0.01);
}

// The best way from the British grid needs a file that is not here: the pegs are set out all the
// same, without longitudes, and it is said which file is missing.
TEST(Scale, AMissingGridFileIsNamedAndLongitudesLeftOut) {
  Site site;
  const GridPosition there = grid_position(500000, 250000, 60);
  testing::MadeSurvey survey(testing::grid_surface(60, 4, [](double, double) { return 5.0; }),
                             there);
  site.design.tank.corner_a = there.at;
  site.on.grid = geodesy::Grid::open("EPSG:27700", {"job.toml", 7, 11});
  const PegsResult r =
      set_out(site.pegs, site.design, design::excavate(site.design, survey), survey, site.on);
  EXPECT_EQ(r.reference.size(), 8U);
  EXPECT_FALSE(r.geographic_way);
  EXPECT_FALSE(r.reference[0].geographic);
  EXPECT_TRUE(says(r.head.cautions, "OSTN15")) << r.head.cautions.at(0);
}

}  // namespace
}  // namespace squaredig::pegs
