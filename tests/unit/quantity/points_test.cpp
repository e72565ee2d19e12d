#include "quantity/points.h"

#include <gtest/gtest.h>

namespace squaredig {
namespace {

SurveyPoint at(double e, double n, double h) {
  SurveyPoint point;
  point.at = grid_position(e, n, h);
  return point;
}

TEST(PointTable, GivesBackTheBytesThatWereAdded_points_1) {
  std::vector<std::string> labels = {"P1",
                                     "",
                                     "a,b\"c",
                                     "=1+1",
                                     "Zäune",
                                     std::string(65535, 'x'),
                                     std::string("nul\0inside", 10),
                                     std::string(256, 'y')};
  std::vector<std::string> codes = {"GL", "GL", "", "TOB", "GL", "Böschung", "a b", "TOB"};
  PointTable table;
  for (std::size_t i = 0; i < labels.size(); ++i) table.add(at(1, 2, 3), labels[i], codes[i]);
  ASSERT_EQ(table.size(), labels.size());
  for (std::size_t i = 0; i < labels.size(); ++i) {
    EXPECT_EQ(table.label(i), labels[i]);
    EXPECT_EQ(table.code(i), codes[i]);
  }
}

TEST(PointTable, RefusesALabelThatCannotBeKept) {
  PointTable table;
  EXPECT_THROW(table.add(at(0, 0, 0), std::string(65536, 'x'), ""), Refusal);
  EXPECT_TRUE(table.empty());
}

TEST(PointTable, KnowsTheFileAndLineOfAPoint) {
  PointTable table;
  auto point = at(1, 2, 3);
  for (const auto& [file, line, label] :
       {std::tuple{"a.csv", 2U, "A"}, std::tuple{"b.csv", 9U, "B"}}) {
    point.file = table.add_file(file);
    point.line = line;
    table.add(point, label, "GL");
  }
  EXPECT_EQ(table.place(1), (Place{"b.csv", 9, 1}));
  EXPECT_EQ(table.find("B"), 1U);
  EXPECT_FALSE(table.find("b"));
}

TEST(SurveyPoint, SigmasAreAbsentUntilGiven) {
  SurveyPoint point;
  EXPECT_FALSE(point.sigma_height());
  point.sigma_height_mm = 15;
  EXPECT_EQ(point.sigma_height(), Length::millimetres(15));
  EXPECT_FALSE(point.sigma_plan());
}

}  // namespace
}  // namespace squaredig
