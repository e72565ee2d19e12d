// A real survey: rock bed of the InfraModel examples, buildingSMART Finland, CC BY 4.0.
#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

#include "ground/examine.h"
#include "quantity/number_text.h"
#include "shared_data.h"

namespace squaredig::ground {
namespace {

std::vector<std::vector<std::string>> rows_of(const std::string& file) {
  std::ifstream in(squaredig::testing::shared_data(file));
  std::vector<std::vector<std::string>> rows;
  for (std::string line; std::getline(in, line);) {
    std::istringstream cells(line);
    rows.emplace_back();
    for (std::string cell; std::getline(cells, cell, ',');) rows.back().push_back(cell);
  }
  rows.erase(rows.begin());
  return rows;
}

GridPosition position(const std::string& northing, const std::string& easting,
                      const std::string& height) {
  return grid_position(*parse_number(easting), *parse_number(northing), *parse_number(height));
}

GroundInput rock_bed() {
  GroundInput input;
  input.points.add_file("rockbed_points.csv");
  for (const auto& r : rows_of("csv/rockbed_points.csv")) {
    SurveyPoint p;
    p.at = position(r[1], r[2], r[3]);
    p.line = static_cast<std::uint32_t>(input.points.size() + 2);
    input.points.add(p, r[0], r[4]);
  }
  int line = 1;
  for (const auto& r : rows_of("csv/rockbed_breaklines.csv")) {
    if (input.breaklines.empty() || input.breaklines.back().name != r[0])
      input.breaklines.push_back({r[0], "rockbed_breaklines.csv", {}});
    input.breaklines.back().vertices.push_back({position(r[2], r[3], r[4]), true, ++line});
  }
  return input;
}

TEST(RockBed, BuildsAndIsExamined) {
  SQUAREDIG_NEEDS_SHARED_DATA("csv/rockbed_points.csv");
  GroundInput input = rock_bed();
  const auto frame = geometry::SiteFrame::around(input.points.points[0].at);
  const BuiltGround whole = build_ground(input, frame);
  EXPECT_EQ(geometry::verify(whole.ground.surface), std::vector<std::string>{});
  input.longest_edge = Length::metres(5);
  const BuiltGround built = build_ground(input, frame);
  EXPECT_EQ(geometry::verify(built.ground.surface), std::vector<std::string>{});
  const GroundResult r = examine(input, built);
  // seen in the data's list of known truths: 988 points, 67 strings of 1107 vertices, heights
  // 13.809..21.948, and the surveyed surface's plan area 2160.710 m2, which has bare patches
  EXPECT_EQ(r.head.inputs[0].read, 988U);
  EXPECT_EQ(r.head.inputs[1].read, 1107U);
  EXPECT_EQ(r.lowest, Elevation::metres(13.809));
  EXPECT_EQ(r.highest, Elevation::metres(21.948));
  const auto whole_area = geometry::plan_area(whole.ground.surface);
  EXPECT_LT(r.plan_area.in_square_metres(), whole_area);
  EXPECT_GT(r.plan_area.in_square_metres(), 2160.710);
  EXPECT_GT(r.surface_area, r.plan_area);
  EXPECT_LT(r.suspects.size(), 20U);  // rough rock is no row of spikes
}

}  // namespace
}  // namespace squaredig::ground
