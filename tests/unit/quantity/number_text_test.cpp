#include "quantity/number_text.h"

#include <gtest/gtest.h>

#include <array>
#include <bit>
#include <charconv>
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
    const auto value = std::bit_cast<double>(random());
    if (!std::isfinite(value)) continue;
    const auto back = parse_number(shortest(value));
    ASSERT_TRUE(back) << shortest(value) << " seed " << kSeed;
    EXPECT_EQ(*back, value) << "seed " << kSeed;
  }
  using Limits = std::numeric_limits<double>;
  for (double value : {0.0, 0.1, 715830.250, Limits::max(), Limits::min(), Limits::denorm_min()})
    EXPECT_EQ(parse_number(shortest(value)), value);
}

// Against std::from_chars of the C++ standard library.
TEST(NumberText, ReadsDecimalsAsTheLibraryDoes) {
  constexpr unsigned kSeed = 5;
  std::mt19937_64 random(kSeed);
  for (int i = 0; i < 200000; ++i) {
    std::string text = random() % 4 == 0 ? "-" : "";
    for (auto left = random() % 18; left > 0; --left)
      text += static_cast<char>('0' + random() % 10);
    if (random() % 8 != 0) text.insert(text.size() - random() % (text.size() + 1), ".");
    double value = 0;
    const char* end = text.data() + text.size();
    const auto [read, error] = std::from_chars(text.data(), end, value);
    const auto parsed = parse_number(text);
    ASSERT_EQ(parsed.has_value(), error == std::errc{} && read == end) << text;
    if (parsed) {
      ASSERT_EQ(std::bit_cast<std::uint64_t>(*parsed), std::bit_cast<std::uint64_t>(value)) << text;
    }
  }
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

// Against std::to_chars of the C++ standard library, whose text is the shortest by its definition.
TEST(NumberText, ShortestIsTheLibrarysText) {
  constexpr unsigned kSeed = 11;
  std::mt19937_64 random(kSeed);
  const auto library = [](double value) {
    std::array<char, 64> room{};
    return std::string(room.data(),
                       std::to_chars(room.data(), room.data() + room.size(), value).ptr);
  };
  std::vector<double> values{1e-4,
                             2e-4,
                             9e-4,
                             1e-3,
                             0.0011,
                             0.1,
                             1,
                             10,
                             3e5,
                             300000.5,
                             5.8e6,
                             99999999999.9999,
                             99999999999.99995,
                             1e11,
                             123456789012.5,
                             0.00005,
                             0.00015,
                             1e15,
                             1e-300,
                             4503599627370497.5};
  for (int i = 0; i < 200000; ++i) {
    const auto digits = static_cast<double>(random() >> (14 + random() % 50));
    const double decimal = digits / std::pow(10, static_cast<double>(random() % 8));
    for (const double v : {decimal, std::nextafter(decimal, HUGE_VAL), std::nextafter(decimal, 0)})
      values.push_back(v);
  }
  for (const double value : values)
    for (const double v : {value, -value}) {
      if (v == 0) continue;
      ASSERT_EQ(shortest(v), library(v)) << "seed " << kSeed;
    }
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
