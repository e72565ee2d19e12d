#include "quantity/number_text.h"

#include <gtest/gtest.h>

#include <bit>
#include <clocale>
#include <cmath>
#include <limits>
#include <random>

namespace squaredig {
namespace {

TEST(NumberText, EveryFiniteNumberReadsBackToTheLastBit_number_1) {
  constexpr unsigned kSeed = 7;
  std::mt19937_64 random(kSeed);
  for (int i = 0; i < 20000; ++i) {
    const double value = std::bit_cast<double>(random());
    if (!std::isfinite(value)) continue;
    const auto back = parse_number(shortest(value));
    ASSERT_TRUE(back) << shortest(value) << " seed " << kSeed;
    EXPECT_EQ(*back, value) << "seed " << kSeed;
  }
  using Limits = std::numeric_limits<double>;
  for (double value : {0.0, 0.1, 715830.250, Limits::max(), Limits::min(), Limits::denorm_min()})
    EXPECT_EQ(parse_number(shortest(value)), value);
}

TEST(NumberText, RefusesWhatIsNotOneFiniteNumber) {
  for (const char* text : {"", " ", "1,5", "1 2", "nan", "inf", "-inf", "infinity", "1e400", "0x10",
                           "+-1", "++1", "+", "-", "1O2.35", "1.2.3", "1e", "12 m",
                           "\xC2\xA0"
                           "1"})
    EXPECT_FALSE(parse_number(text)) << text;
  EXPECT_EQ(parse_number(" +1.50 "), 1.5);
  EXPECT_EQ(parse_number("2."), 2.0);
  EXPECT_EQ(parse_number("-.5"), -0.5);
  EXPECT_EQ(parse_number("1e3\r"), 1000.0);
}

TEST(NumberText, FixedRoundsTheBinaryValueAndHasNoMinusZero) {
  EXPECT_EQ(fixed(0.125, 2), "0.12");  // exact tie: to even
  EXPECT_EQ(fixed(0.375, 2), "0.38");
  EXPECT_EQ(fixed(2.675, 2), "2.67");  // the binary value lies below the tie
  EXPECT_EQ(fixed(-0.004, 2), "0.00");
  EXPECT_EQ(fixed(-0.0, 0), "0");
  EXPECT_EQ(fixed(-0.006, 2), "-0.01");
  EXPECT_EQ(fixed(5021771.82, 3), "5021771.820");
}

TEST(NumberText, ShortestHasNoMinusZero) {
  EXPECT_EQ(shortest(-0.0), "0");
  EXPECT_EQ(shortest(0.1), "0.1");
  EXPECT_EQ(shortest(64.105), "64.105");
}

TEST(NumberText, IsTheSameInEveryLocale) {
  const std::string before = std::setlocale(LC_ALL, nullptr);
  for (const char* name : {"de_DE.UTF-8", "fr_FR.UTF-8", "C.UTF-8", "C"}) {
    if (std::setlocale(LC_ALL, name) == nullptr) continue;  // not every system has them all
    EXPECT_EQ(shortest(1234567.5), "1234567.5") << name;
    EXPECT_EQ(fixed(1234567.5, 1), "1234567.5") << name;
    EXPECT_EQ(parse_number("1234567.5"), 1234567.5) << name;
  }
  std::setlocale(LC_ALL, before.c_str());
}

TEST(NumberText, TrimmedLeavesInnerBlanks) {
  EXPECT_EQ(trimmed(" \ta b\r"), "a b");
  EXPECT_EQ(trimmed(" \t "), "");
}

}  // namespace
}  // namespace squaredig
