// Two published worked examples, read in place from the shared data; feet.
// Source: textbook problems with answers, see SOURCES.md beside the files.
#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <map>
#include <sstream>

#include "field/ray.h"
#include "field/traverse.h"
#include "shared_data.h"

namespace squaredig::field {
namespace {

using Row = std::map<std::string, std::string>;

std::vector<Row> rows_of(const std::string& file) {
  std::ifstream in(testing::shared_data(file));
  std::vector<std::string> header;
  std::vector<Row> rows;
  for (std::string line; std::getline(in, line);) {
    if (line.empty() || line[0] == '#') continue;
    std::istringstream cells(line);
    std::vector<std::string> row;
    for (std::string cell; std::getline(cells, cell, ',');) row.push_back(cell);
    if (header.empty()) {
      header = row;
      continue;
    }
    rows.emplace_back();
    for (std::size_t i = 0; i < row.size(); ++i) rows.back()[header[i]] = row[i];
  }
  return rows;
}

// "+4-24-10" or "68-05-35"
double degrees(const std::string& text) {
  int d = 0, m = 0, s = 0;
  char dash = 0;
  std::istringstream in(text.substr(text[0] == '+' || text[0] == '-' ? 1 : 0));
  in >> d >> dash >> m >> dash >> s;
  return (text[0] == '-' ? -1 : 1) * (d + m / 60.0 + s / 3600.0);
}

// "S 68-05-35 W"
Bearing quadrant(const std::string& text) {
  const double angle = degrees(text.substr(2, text.size() - 4));
  const bool south = text.front() == 'S', west = text.back() == 'W';
  return Bearing::degrees(south ? 180 + (west ? angle : -angle) : (west ? -angle : angle));
}

TEST(PublishedTextbooks, LoopTraverse) {
  SQUAREDIG_NEEDS_SHARED_DATA("obs/textbook_loop_traverse.csv");
  const auto rows = rows_of("obs/textbook_loop_traverse.csv");
  ASSERT_EQ(rows.size(), 4U);
  std::vector<TraverseLeg> legs;
  for (const Row& row : rows)
    legs.push_back({quadrant(row.at("bearing")), Length::metres(std::stod(row.at("length_ft")))});
  const Traverse t = closed_traverse(legs);
  for (std::size_t i = 0; i < 4; ++i) {
    EXPECT_NEAR(t.legs[i].north.in_metres(), std::stod(rows[i].at("lat_ft")), 0.0011);
    EXPECT_NEAR(t.legs[i].east.in_metres(), std::stod(rows[i].at("dep_ft")), 0.0011);
  }
  EXPECT_NEAR(t.misclosure_north.in_metres(), 0.083, 0.002);
  EXPECT_NEAR(t.misclosure_east.in_metres(), 0.075, 0.002);
  EXPECT_NEAR(t.length.in_metres(), 1347.57, 1e-9);
}

// Curvature and refraction are left out in the book: a sphere so large that it is flat.
TEST(PublishedTextbooks, TrigonometricLevelling) {
  SQUAREDIG_NEEDS_SHARED_DATA("obs/textbook_trig_levelling.csv");
  const auto rows = rows_of("obs/textbook_trig_levelling.csv");
  ASSERT_EQ(rows.size(), 3U);
  const Earth flat{Length::metres(1e13), Ratio{}};
  for (const Row& row : rows) {
    const Ray ray{Length::metres(std::stod(row.at("slope_ft"))),
                  Angle::degrees(90 - degrees(row.at("vertical_angle_dms")))};
    const Reach reach = reach_of(ray, flat, {});
    EXPECT_NEAR(reach.arc.in_metres(), std::stod(row.at("answer_horiz_ft")), 0.006);
    EXPECT_NEAR(745.39 + 5.41 + reach.rise.in_metres() - 5.64, std::stod(row.at("answer_rl_ft")),
                0.006)
        << row.at("point");
  }
}

}  // namespace
}  // namespace squaredig::field
