// What would settle a check that is not proven: that many readings do, one fewer does not.
#include <gtest/gtest.h>

#include <cmath>
#include <regex>

#include "unit/base/base_fixture.h"

namespace squaredig::base {
namespace {

using testing::BaseFixture;
using testing::mm;
using testing::named;

// The number of readings asked, and of what, from "...: 3 readings of that point instead of 1, or".
struct Asked {
  double readings = 0, instead_of = 0;
  std::string of;
};
Asked asked(const std::string& words) {
  std::smatch m;
  const std::regex form(
      ": ([0-9]+) readings of ([a-z ]+) instead of ([0-9]+), or a better instrument");
  if (!std::regex_search(words, m, form)) return {};
  return {std::stod(m[1]), std::stod(m[3]), m[2]};
}

// With readings so many times repeated the own part of every sigma shrinks by its root.
Verdict after(BaseFixture base, const std::string& check, double times) {
  base.input.sigma_height = base.input.sigma_height / std::sqrt(times);
  base.input.sigma_plan = base.input.sigma_plan / std::sqrt(times);
  return named(base.check(), check).verdict;
}

void expect_settled_by_its_words(const BaseFixture& base, const std::string& check,
                                 const std::string& of) {
  const Check open = named(base.check(), check);
  ASSERT_EQ(open.verdict, Verdict::NotProven) << check;
  const Asked a = asked(open.words);
  EXPECT_EQ(a.of, of) << open.words;
  ASSERT_GT(a.readings, a.instead_of) << open.words;
  EXPECT_NE(after(base, check, a.readings / a.instead_of), Verdict::NotProven) << open.words;
  EXPECT_EQ(after(base, check, (a.readings - 1) / a.instead_of), Verdict::NotProven) << open.words;
}

BaseFixture noisy(double sigma_mm) {
  BaseFixture base;
  base.length = 12, base.width = 4.8;
  base.least_mm = -1000, base.most_mm = 1000;
  base.module_along = 0;
  base.input.sigma_height = Length::millimetres(sigma_mm);
  base.input.sigma_common = Length::millimetres(0.3);
  return base;
}

TEST(Settle, LevelsByReadingsOfThePoint) {
  BaseFixture base = noisy(2);
  base.input.level_tolerance = Tolerance{Length::millimetres(5), Length::millimetres(10)};
  base.add_grid(1.5, [](double, double) { return 3.0; });
  expect_settled_by_its_words(base, "level high", "that point");
  base = noisy(2);
  base.input.level_tolerance = Tolerance{Length::millimetres(5), Length::millimetres(10)};
  base.add_grid(1.5, [](double, double) { return -8.0; });
  expect_settled_by_its_words(base, "level low", "that point");
}

// A low base under a high limit has all the room between them, not the difference of two sizes.
TEST(Settle, TheRoomIsThatToTheLimit) {
  BaseFixture base = noisy(6);
  base.input.level_tolerance = Tolerance{Length::millimetres(5), Length::millimetres(100)};
  base.add_grid(1.5, [](double, double) { return -4.0; });
  EXPECT_NE(named(base.check(), "level high").words.find("below 5.47 mm, now 6.01 mm"),
            std::string::npos)
      << named(base.check(), "level high").words;
  expect_settled_by_its_words(base, "level high", "that point");
}

TEST(Settle, TheMeanByMorePoints) {
  BaseFixture base = noisy(8);
  base.input.mean_tolerance = Length::millimetres(5);
  base.add_grid(1.5, [](double, double) { return -4.2; });
  expect_settled_by_its_words(base, "level mean", "points spread alike");
}

TEST(Settle, FlatnessStraightedgeAndStacksByReadingsOfTheirPoints) {
  BaseFixture base = noisy(2);
  base.input.flatness_tolerance = Length::millimetres(10);
  base.input.straightedge = Straightedge{Length::metres(3), Length::millimetres(8)};
  base.input.stack_gap_tolerance = Length::millimetres(13);
  base.module_along = 1.2;
  base.add_grid(1.5, [](double along, double) { return -std::abs(along - 6.1) * 2; });
  expect_settled_by_its_words(base, "flatness", "each point");
  base.input.straightedge->tolerance =
      Length::millimetres(mm(named(base.check(), "straightedge").value) + 1);
  expect_settled_by_its_words(base, "straightedge",
                              "each point round where it touches and stands open");
  base.input.stack_gap_tolerance =
      Length::millimetres(mm(named(base.check(), "stack gap").value) - 1);
  expect_settled_by_its_words(base, "stack gap", "each point under the two units");
}

TEST(Settle, FallByMorePoints) {
  BaseFixture base = noisy(4);
  base.input.fall_tolerance = Fall::percent(0.1);
  base.add_grid(1.5, [](double along, double) { return 0.8 * along; });
  expect_settled_by_its_words(base, "fall", "points spread alike");
}

TEST(Settle, BeddingByReadingsRoundThePlace) {
  BaseFixture base = noisy(3);
  base.least_mm = 15, base.most_mm = 30;
  base.add_grid(1.5, [](double along, double) { return along > 6 ? 3.0 : -7.0; });
  expect_settled_by_its_words(base, "bedding thinnest", "each point round it");
  expect_settled_by_its_words(base, "bedding thickest", "each point round it");
}

TEST(Settle, ExtentByReadingsOfTheToePoint) {
  BaseFixture base = noisy(1);
  base.fall_percent = 0;
  base.input.sigma_plan = Length::millimetres(20);
  base.input.extent_tolerance = Length::millimetres(50);
  base.add_grid(1.5, [](double, double) { return 0.0; });
  SurveyPoint toe;
  const design::Tank tank = base.planned().tank;
  toe.at = {tank.from_a(Length::metres(5), Length::metres(-0.17)), tank.dig_level.level};
  base.input.points.add(toe, "T1", "TOE");
  expect_settled_by_its_words(base, "extent", "that toe point");
}

// Of 1.82 mm that are allowed all points share 2 mm already.
TEST(Settle, WhereTheSharedPartIsTooMuchNoReadingHelps) {
  BaseFixture base = noisy(1);
  base.input.sigma_common = Length::millimetres(2);
  base.input.level_tolerance = Tolerance{Length::millimetres(5), Length::millimetres(10)};
  base.add_grid(1.5, [](double, double) { return 2.0; });
  const std::string words = named(base.check(), "level high").words;
  EXPECT_NE(words.find("2.00 mm of that all points share: no further reading helps, only a better "
                       "carrying over of the level"),
            std::string::npos)
      << words;
}

TEST(Settle, WhereAHundredReadingsWouldNotDoAnInstrumentIsNamed) {
  BaseFixture base = noisy(2);
  base.input.sigma_common = Length{};
  base.input.level_tolerance = Tolerance{Length::millimetres(5), Length::millimetres(10)};
  base.add_grid(1.5, [](double, double) { return 4.8; });
  EXPECT_NE(named(base.check(), "level high").words.find("only a better instrument does that"),
            std::string::npos);
}

TEST(Settle, WithoutAValueItSaysWhatItTakes) {
  BaseFixture base;
  base.ask_for_all();
  base.module_along = 1.2;
  base.input.stack_gap_tolerance = Length::millimetres(5);
  base.input.extent_tolerance = Length::millimetres(50);
  base.input.straightedge = Straightedge{Length::metres(3), Length::millimetres(5)};
  base.input.density_ratio = Ratio::percent(95);
  base.input.tests.emplace();
  base.add(5, 5, 0);
  const BaseResult r = base.check();
  for (const char* name :
       {"flatness", "fall", "straightedge", "stack gap", "bedding thinnest", "bedding thickest"})
    EXPECT_NE(named(r, name).words.find("it takes"), std::string::npos) << name;
  EXPECT_EQ(named(r, "extent").words, "no toe point was surveyed");
  EXPECT_EQ(named(r, "compaction").words, "the file of compaction tests has no test");
  for (const Check& check : r.checks)
    if (!check.value) {
      EXPECT_EQ(check.verdict, Verdict::NotProven) << check.name;
    }
}

}  // namespace
}  // namespace squaredig::base
