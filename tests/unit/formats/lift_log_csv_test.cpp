#include "formats/lift_log_csv.h"

#include <gtest/gtest.h>

#include "text_file.h"

namespace squaredig::formats {
namespace {

using squaredig::testing::text_file;

std::vector<std::string> faults_of(const std::string& bytes) {
  try {
    read_lift_log_csv(text_file(bytes, "lifts.csv"));
  } catch (const Refusal& refusal) {
    std::vector<std::string> texts;
    for (const auto& problem : refusal.problems()) texts.push_back(problem.text());
    return texts;
  }
  return {};
}

TEST(LiftLogCsv, RowsInOrder) {
  const auto file = read_lift_log_csv(text_file(
      "side,lift,date,height_above_underside\nAB,1,2026-04-02,0.30\nCD,1,2026-04-02,0.29\n"));
  ASSERT_EQ(file.lifts.size(), 2U);
  EXPECT_EQ(file.lifts[1].side, "CD");
  EXPECT_EQ(file.lifts[1].above_underside.in_metres(), 0.29);
  EXPECT_EQ(file.lifts[0].date, std::chrono::year{2026} / 4 / 2);
  EXPECT_EQ(file.record.read, 2U);
}

TEST(LiftLogCsv, DaysThatAreNoneAndDatesThatRunBack) {
  const auto faults = faults_of(
      "lift,side,date,height_above_underside\n1,AB,2026-02-30,0.3\n1,CD,2026-04-03,0.3\n"
      "2,AB,2026-04-02,0.6\n");
  ASSERT_EQ(faults.size(), 2U);
  EXPECT_EQ(
      faults[0],
      "lifts.csv:2:6: the date \"2026-02-30\"; a day such as 2026-04-02; write year, month and "
      "day with hyphens");
  EXPECT_EQ(faults[1].substr(0, 14), "lifts.csv:4:6:");
}

}  // namespace
}  // namespace squaredig::formats
