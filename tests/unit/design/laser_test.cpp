#include "design/laser.h"

#include <gtest/gtest.h>

#include "refusal_text.h"

namespace squaredig::design {
namespace {

Tank tank_at(GridPoint a) {
  Tank tank;
  tank.corners = {a};
  return tank;
}

PointTable marks() {
  PointTable table;
  SurveyPoint bm1, bm2, bare;
  bm1.at = grid_position(100, 200, 62.000);
  bm2.at = grid_position(130, 240, 62.500);
  bare.has_height = false;
  table.add(bm1, "BM1", "");
  table.add(bm2, "BM2", "");
  table.add(bare, "P", "");
  return table;
}

LaserInput from_mark(double staff_on_check_m) {
  LaserInput input;
  input.mark = LaserMark{"BM1", Length::metres(1.435), "BM2", Length::metres(staff_on_check_m),
                         Length::millimetres(3)};
  return input;
}

TEST(Laser, TheStaffOnTheMarkGivesTheMarkBack_laser_1) {
  const Laser laser = Laser::set_up(from_mark(0.936), tank_at({}), marks());
  EXPECT_NEAR(laser.staff_reading(grid_position(100, 200, 62))->in_metres(), 1.435, 1e-12);
  EXPECT_TRUE(laser.findings().empty());
}

TEST(Laser, ALevelPlaneReadsTheSameAnywhere_laser_2) {
  LaserInput input;
  input.plane_level = Elevation::metres(64.105);
  input.staff_length = Length::metres(5);
  const Laser laser = Laser::set_up(input, tank_at(grid_point(500000, 6000000)), {});
  for (const double e : {0.0, 500000.0, 715830.0})
    EXPECT_NEAR(laser.staff_reading(grid_position(e, 2 * e, 62.33))->in_metres(), 1.775, 1e-12);
  EXPECT_TRUE(laser.off_staff(Length::metres(5.001)));
  EXPECT_TRUE(laser.off_staff(Length::metres(-0.001)));
  EXPECT_FALSE(laser.off_staff(Length::metres(5)));
}

TEST(Laser, AFallingPlaneIsLowerDownhill) {
  LaserInput input;
  input.plane_level = Elevation::metres(64);
  input.fall = Fall::percent(1);
  input.fall_bearing = Bearing::degrees(90);
  const Laser laser = Laser::set_up(input, tank_at(grid_point(10, 10)), {});
  EXPECT_NEAR(laser.staff_reading(grid_position(30, 55, 62))->in_metres(), 1.8, 1e-12);
}

// Height of instrument 100.000 + 1.435: the dug base at 97.900 reads 3.535, the top of bedding at
// 98.000 reads 3.435 and the tank's top at 99.200 reads 2.235 (derived: instrument less level). A
// rod of 1.500 on the ground is 2.035 less than the base wants: cut (rule of NRCS TR-62).
TEST(Laser, HeightOfInstrumentLessTheLevel) {
  PointTable table;
  SurveyPoint mark, check;
  mark.at = grid_position(0, 0, 100);
  check.at = grid_position(9, 9, 101);
  table.add(mark, "TBM", "");
  table.add(check, "BM2", "");
  LaserInput input;
  input.mark =
      LaserMark{"TBM", Length::metres(1.435), "BM2", Length::metres(0.435), Length::millimetres(3)};
  const Laser laser = Laser::set_up(input, tank_at({}), table);
  const auto reading = [&](double level) {
    return laser.staff_reading(grid_position(3, 4, level))->in_metres();
  };
  EXPECT_NEAR(reading(97.900), 3.535, 1e-9);
  EXPECT_NEAR(reading(98.000), 3.435, 1e-9);
  EXPECT_NEAR(reading(99.200), 2.235, 1e-9);
  EXPECT_NEAR(reading(97.900) - 1.500, 2.035, 1e-9);
}

// Sight rails over a drain, exercise on askfilo 3430363636343630 (seen): formation 26.5 falling
// 1:200, a boning rod of 3 m, pegs each 100 m. The rails' plane stands 3 m above the formation.
TEST(Laser, SightRailsAbovePegs) {
  LaserInput input;
  input.plane_level = Elevation::metres(26.5 + 3);
  input.fall = Fall::percent(0.5);
  input.fall_bearing = Bearing::degrees(60);
  const Laser laser = Laser::set_up(input, tank_at(grid_point(0, 0)), {});
  const double pegs[] = {28.00, 27.34, 27.56, 26.90, 26.20},
               rails[] = {1.50, 1.66, 0.94, 1.10, 1.30};
  for (int i = 0; i < 5; ++i) {
    const GridPoint at = ahead(grid_point(0, 0), Bearing::degrees(60), Length::metres(100 * i));
    EXPECT_NEAR(laser.staff_reading({at, Elevation::metres(pegs[i])})->in_metres(), rails[i], 1e-9);
  }
}

// Dual grade: the plane falls 1 percent along one axis and 2 across it; its steepest way is between
// them. The check mark far off is compared on the plane, not on one level (derived).
TEST(Laser, DualGradeIsProvedOnThePlane) {
  PointTable table;
  SurveyPoint mark, check;
  mark.at = grid_position(0, 0, 50);
  check.at = grid_position(100, 100, 48);
  table.add(mark, "BM1", "");
  table.add(check, "BM2", "");
  LaserInput input;
  input.fall = Fall::percent(std::hypot(1.0, 2.0));
  input.fall_bearing = Bearing::of_line(grid_point(0, 0), grid_point(1, 2));
  // plane at the check mark: 51.5 - 1 - 2 = 48.5
  input.mark =
      LaserMark{"BM1", Length::metres(1.5), "BM2", Length::metres(0.5), Length::millimetres(1)};
  const Laser laser = Laser::set_up(input, tank_at({}), table);
  ASSERT_TRUE(laser.findings().empty());
  EXPECT_NEAR(laser.staff_reading(grid_position(10, 0, 50))->in_metres(), 1.4, 1e-12);
  EXPECT_NEAR(laser.staff_reading(grid_position(0, 10, 50))->in_metres(), 1.3, 1e-12);
}

TEST(Laser, NoReadingsWhereTheCheckMarkDisagrees_laser_3) {
  const Laser laser = Laser::set_up(from_mark(0.940), tank_at({}), marks());
  EXPECT_FALSE(laser.plane());
  EXPECT_FALSE(laser.staff_reading(grid_position(0, 0, 0)));
  ASSERT_EQ(laser.findings().size(), 1U);
  EXPECT_EQ(
      laser.findings()[0].text,
      "The laser read from mark \"BM1\" is 5.0 mm off on mark \"BM2\", permitted 3.0 mm: staff "
      "readings are withheld.");
  EXPECT_FALSE(Laser::set_up({}, tank_at({}), {}).plane());
}

TEST(Laser, RefusesUnknownMarksAndMarksWithoutHeight) {
  LaserInput input = from_mark(0.935);
  input.place = {"job.toml", 40, 1};
  input.mark->check_mark = "BM3";
  EXPECT_EQ(
      testing::refusal_text([&] { Laser::set_up(input, tank_at({}), marks()); }),
      "job.toml:40:1: no control point named \"BM3\"; a mark of the [control] file, spelled as it "
      "is there; correct the name or add the mark\n");
  input.mark->check_mark = "P";
  EXPECT_NE(testing::refusal_text([&] { Laser::set_up(input, tank_at({}), marks()); }), "");
}

}  // namespace
}  // namespace squaredig::design
