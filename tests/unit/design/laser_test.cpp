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
  EXPECT_NEAR(laser.check_error()->in_millimetres(), 1, 1e-9);
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
