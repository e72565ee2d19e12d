#include <gtest/gtest.h>

#include <set>

#include "unit/ground/made_input.h"

namespace squaredig::ground {
namespace {
using namespace testing;

double plane(double x, double y) { return 60 + 0.3 * x - 0.2 * y; }

GroundInput scattered(const Height& height, unsigned seed) {
  std::mt19937 random(seed);
  GroundInput input;
  for (int i = 0; i < 600; ++i) {
    const double x = static_cast<double>(random() % 50000) / 1000;
    const double y = static_cast<double>(random() % 50000) / 1000;
    add_point(input, x, y, height(x, y));
  }
  return input;
}

TEST(Examine, PlanesHaveNoSuspectsAndChangeNone_examine_1) {
  EXPECT_TRUE(examined(scattered(plane, 101)).suspects.empty());
  GroundInput input = scattered(rolling, 102);
  for (const std::size_t i : {17U, 240U, 455U}) {
    Elevation& height = input.points.points[i].at.height;
    height = height + Length::metres(3);
  }
  const GroundResult level = examined(input);
  ASSERT_EQ(level.suspects.size(), 3U);
  for (SurveyPoint& p : input.points.points) {
    const auto at = frame().to_site(p.at.at);
    p.at.height = p.at.height + Length::metres(plane(at.x, at.y));
  }
  const GroundResult tilted = examined(input);
  ASSERT_EQ(tilted.suspects.size(), 3U);
  for (std::size_t i = 0; i < 3; ++i) {
    EXPECT_EQ(tilted.suspects[i].point, level.suspects[i].point);
    EXPECT_NEAR(tilted.suspects[i].by.in_metres(), level.suspects[i].by.in_metres(), 1e-9);
  }
}

TEST(Examine, ReadIsUsedAndSetAside_examine_2) {
  GroundInput input = scattered(plane, 103);
  for (int i = 0; i < 30; ++i) add_point(input, i, 2 * i, 61);
  for (int i = 0; i < 10; ++i) add_point(input, i, 2 * i, 62);
  input.longest_edge = Length::metres(2.5);
  input.breaklines = {string_of("top", {{1, 1, 60}, {40, 43, 60}}),
                      string_of("toe", {{60, 60, 60}, {61, 80, 60}})};
  input.outline = {
      string_of("edge", {{1, 1, 60}, {45, 3, 60}, {44, 44, 60}, {2, 40, 60}}, "o.csv")};
  const GroundResult r = examined(input);
  ASSERT_EQ(r.head.inputs.size(), 3U);
  std::size_t read = 0;
  for (const InputRecord& record : r.head.inputs) {
    EXPECT_EQ(record.read, record.used + record.set_aside.size()) << record.file;
    read += record.read;
  }
  EXPECT_EQ(read, 640U + 4U + 4U);
  EXPECT_GT(r.head.inputs[0].set_aside.size(), 10U);
  EXPECT_EQ(r.head.inputs[1].set_aside.size(), 2U);  // the toe lies outside
}

TEST(Examine, OnePointRaisedAloneIsTheSuspect_examine_3) {
  for (std::size_t i = 0; i < 600; i += 37) {
    GroundInput input = scattered(plane, 104);
    Elevation& height = input.points.points[i].at.height;
    const double by = i % 2 == 0 ? 0.31 : -2.5;
    height = height + Length::metres(by);
    const GroundResult r = examined(input);
    ASSERT_EQ(r.suspects.size(), 1U) << "seed 104, point " << i + 1;
    EXPECT_EQ(r.suspects[0].point, "P" + std::to_string(i + 1));
    EXPECT_NEAR(r.suspects[0].by.in_metres(), by, 1e-9);
  }
}

TEST(Examine, ContoursStandAtMultiplesOfTheInterval_examine_4) {
  for (const double rise : {0.02, 0.3, 4.0}) {
    const GroundResult r =
        examined(scattered([&](double x, double) { return 60.03 + rise * x; }, 104));
    ASSERT_TRUE(r.contour_interval.has_value()) << rise;
    const double step = r.contour_interval->in_metres();
    std::set<double> levels;
    for (const Contour& c : r.contours) {
      levels.insert(c.level.in_metres());
      const double times = c.level.in_metres() / step;
      EXPECT_NEAR(times, std::round(times), 1e-9);
      // derived: on this plane the line of a level is one of constant x
      for (const GridPoint p : c.line)
        EXPECT_NEAR(60.03 + rise * frame().to_site(p).x, c.level.in_metres(), 1e-9);
    }
    const double between = r.highest.in_metres() / step - r.lowest.in_metres() / step;
    EXPECT_NEAR(static_cast<double>(levels.size()), between, 1);
    EXPECT_LE(levels.size(), kMostContourLevels);
    EXPECT_EQ(r.rim.size(), 1U);
  }
  EXPECT_FALSE(examined(scattered([](double, double) { return 60.0; }, 105)).contour_interval);
}

}  // namespace
}  // namespace squaredig::ground
