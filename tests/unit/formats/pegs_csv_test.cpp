#include "formats/pegs_csv.h"

#include <gtest/gtest.h>

#include "formats/points_csv.h"
#include "unit/formats/made_pegs.h"
#include "unit/formats/text_file.h"

namespace squaredig::formats {
namespace {

TEST(PegsCsv, ReadsBackAsPoints_pegs_csv_1) {
  const pegs::PegsResult r = made_pegs();
  const auto file =
      read_points_csv(testing::text_file(pegs_csv(r)), {Heights::Optional, Names::Unique});
  ASSERT_EQ(file.points.size(), 8 + 4 + hard_labels().size());
  for (std::size_t i = 0; i < 8; ++i) {
    EXPECT_EQ(file.points.label(i), r.reference[i].name);
    EXPECT_EQ(file.points.code(i), "PEG");
    EXPECT_EQ(file.points.points[i].at.at, r.reference[i].at);
  }
  EXPECT_FALSE(file.points.points[7].has_height);
  EXPECT_EQ(file.points.points[8].at, r.corners[0].at);
}

// What a spreadsheet would run gets an apostrophe in front; all else is kept byte for byte.
TEST(PegsCsv, HardLabelsStayText) {
  const auto file = read_points_csv(testing::text_file(pegs_csv(made_pegs())), {Heights::Optional});
  for (std::size_t i = 0; i < hard_labels().size(); ++i) {
    const std::string& label = hard_labels()[i];
    const bool formula = label[0] == '=' || label[0] == '@';
    EXPECT_EQ(file.points.label(12 + i), formula ? "'" + label : label);
  }
}

TEST(PegsCsv, EachScheduleBeginsWithItsBacksightCheck) {
  pegs::PegsResult r = made_pegs();
  pegs::PolarRow row;
  row.backsight = "CP2";
  row.bearing = Bearing::degrees(90.5);
  row.turn = Angle::degrees(12.25);
  row.ground_distance = Length::metres(20.5);
  row.grid_distance = Length::metres(20.25);
  for (const char* station : {"CP1", "CP3"}) {
    row.station = station;
    row.point = "A1";
    r.polar.push_back(row);
    row.point = "A2";
    row.check_from = "A1";
    row.check_distance = Length::metres(4);
    r.polar.push_back(row);
    row.check_from.clear();
    row.check_distance.reset();
    row.point = "CP2";
    r.backsight_checks.push_back(row);
  }
  EXPECT_EQ(pegs_polar_csv(r),
            "station,backsight,point,kind,bearing_deg,turn_deg,distance,grid_distance,height_"
            "difference,check_from,check_distance,staff_reading\n"
            "CP1,CP2,CP2,backsight check,90.5,12.25,20.5,20.25,,,,\n"
            "CP1,CP2,A1,set out,90.5,12.25,20.5,20.25,,,,\n"
            "CP1,CP2,A2,set out,90.5,12.25,20.5,20.25,,A1,4,\n"
            "CP3,CP2,CP2,backsight check,90.5,12.25,20.5,20.25,,,,\n"
            "CP3,CP2,A1,set out,90.5,12.25,20.5,20.25,,,,\n"
            "CP3,CP2,A2,set out,90.5,12.25,20.5,20.25,,A1,4,\n");
}

}  // namespace
}  // namespace squaredig::formats
