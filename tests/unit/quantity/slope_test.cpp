#include "quantity/slope.h"

#include <gtest/gtest.h>

namespace squaredig {
namespace {

TEST(Batter, ReadsRunPerRise) {
  EXPECT_EQ(Batter::parse("1.5:1"), Batter::run_per_rise(1.5));
  EXPECT_EQ(Batter::parse("3:2"), Batter::run_per_rise(1.5));
  EXPECT_EQ(Batter::parse(" 1 : 2 "), Batter::run_per_rise(0.5));
  EXPECT_EQ(Batter::parse("0:1"), Batter{});
  EXPECT_TRUE(Batter::parse("0:1")->vertical());
}

TEST(Batter, RefusesWhatIsNotRunPerRise) {
  for (const char* text : {"", ":", "1", "1.5", "1:0", "0:0", "-1:1", "1:-1", "1:1:1", "1/1",
                           "1in2", "nan:1", "1:inf", "1,5:1", "45"})
    EXPECT_FALSE(Batter::parse(text)) << text;
}

TEST(Batter, IsShownInWordsAndDegrees) {
  EXPECT_EQ(Batter::run_per_rise(1.5).words(), "1.5 across for each 1 up (33.7 degrees)");
  EXPECT_EQ(Batter::run_per_rise(1).words(), "1 across for each 1 up (45.0 degrees)");
  EXPECT_EQ(Batter{}.words(), "vertical (90 degrees)");
  EXPECT_EQ(Batter{}.text(), "0:1");
  EXPECT_EQ(Batter::parse(Batter::run_per_rise(0.25).text()), Batter::run_per_rise(0.25));
}

TEST(Batter, SteepnessIsMeasuredAboveTheHorizontal) {
  EXPECT_EQ(Batter{}.above_horizontal().in_degrees(), 90);
  EXPECT_NEAR(Batter::run_per_rise(1).above_horizontal().in_degrees(), 45, 1e-13);
  // atan(1/2), derived: 26.565 051 177 degrees
  EXPECT_NEAR(Batter::run_per_rise(2).above_horizontal().in_degrees(), 26.565051177, 1e-9);
}

TEST(Fall, IsDropPerRun) {
  EXPECT_EQ(Fall::percent(0.5).drop_per_run(), 0.005);
  EXPECT_EQ(Fall::drop_per_run(0.02).in_percent(), 2);
  EXPECT_EQ(Fall{}.in_percent(), 0);
}

}  // namespace
}  // namespace squaredig
