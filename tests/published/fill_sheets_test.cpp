// Sheet materials cut from rolls: check rows, and an independent count that lays the strips one by
// one and cuts them from the rolls one by one.
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdint>
#include <random>

#include "fill/sheets.h"

namespace squaredig::fill {
namespace {

Length m(double v) { return Length::metres(v); }
double m2(Area a) { return a.in_square_metres(); }

// Derived take-off rows: width, length, roll width, lap -> strips, area ordered, per cent over net.
TEST(PublishedTakeOff, StripsOverARectangle) {
  struct Case {
    double width, length, roll, lap;
    std::int64_t strips;
    double ordered, percent_over;
  };
  for (const auto& c :
       {Case{13, 17, 4.0, 0.3, 4, 272, 23.1}, Case{13, 17, 5.2, 0.3, 3, 265.2, 20.0},
        Case{11, 10, 4, 0.5, 3, 120, 9.1},  // an exact fit: 3 x 4 - 2 x 0.5 = 11
        Case{11, 10, 4, 0.6, 4, 160, 45.5}, Case{14, 20, 3.8, 0.3, 4, 304, 8.6}}) {
    const auto counted = strips_across(m(c.width), m(c.roll), m(c.lap));
    EXPECT_EQ(counted, c.strips);
    const auto strips = static_cast<double>(counted);
    EXPECT_GE(strips * c.roll - (strips - 1) * c.lap, c.width - 1e-9);  // they cover
    EXPECT_NEAR(strips * c.roll * c.length, c.ordered, 1e-9);
    EXPECT_NEAR((c.ordered / (c.width * c.length) - 1) * 100, c.percent_over, 0.05);
    // a roll that holds them all: the better direction never takes more
    EXPECT_LE(m2(lay_rectangle(m(c.length), m(c.width), {m(c.roll), m(100)}, m(c.lap)).with_laps),
              c.ordered + 1e-9);
  }
  // the fourth one's strips would cover 14.2
  const auto fourth = static_cast<double>(strips_across(m(11), m(4), m(0.6)));
  EXPECT_NEAR(fourth * 4 - (fourth - 1) * 0.6, 14.2, 1e-12);
}

// Derived: the skin of a box 12 x 6 x 1.2 is 187.20 m2, with 15 percent 215.28; two geogrids 1.0 m
// past a tank of 12 x 6 are 112 m2 each, 224 m2 in all.
TEST(PublishedTakeOff, NetAreas) {
  const double skin = m2(wrap_box(m(12), m(6), m(1.2), std::nullopt, m(0.15)).net);
  EXPECT_NEAR(skin, 187.20, 1e-9);
  EXPECT_NEAR(skin * 1.15, 215.28, 1e-9);
  EXPECT_NEAR(m2(lay_layers(m(12 + 2), m(6 + 2), 1, std::nullopt, m(0.2)).net), 112, 1e-9);
  EXPECT_NEAR(m2(lay_layers(m(12 + 2), m(6 + 2), 2, std::nullopt, m(0.2)).net), 224, 1e-9);
}

// The count from outside: strips put down until the far edge is covered, each piece then cut from
// the first roll that still has it.
struct Count {
  std::int64_t strips = 0;
  double area = 0;
  std::vector<double> pieces;

  void lay(double along, double across, double roll, double roll_length, double lap, int times) {
    std::vector<double> strip;
    double from = 0;
    for (; along - from > roll_length + 1e-9; from += roll_length - lap)
      strip.push_back(roll_length);
    strip.push_back(std::min(along - from, roll_length));
    std::int64_t wanted = 1;
    for (double covered = roll; covered < across - 1e-9; covered += roll - lap) ++wanted;
    for (std::int64_t i = 0; i < wanted * times; ++i)
      for (const double piece : strip) pieces.push_back(piece), area += piece * roll;
    strips += wanted * times;
  }

  std::int64_t rolls(double roll_length) const {
    auto sorted = pieces;
    std::sort(sorted.rbegin(), sorted.rend());
    std::vector<double> used;
    for (const double piece : sorted) {
      std::size_t i = 0;
      while (i < used.size() && used[i] + piece > roll_length + 1e-9) ++i;
      if (i == used.size()) used.push_back(0);
      used[i] += piece;
    }
    return static_cast<std::int64_t>(used.size());
  }
};

Count better(const Count& a, const Count& b, double roll_length) {
  const std::int64_t in_a = a.rolls(roll_length), in_b = b.rolls(roll_length);
  if (in_a != in_b) return in_a < in_b ? a : b;
  return b.area < a.area ? b : a;
}

struct RandomSheet {
  double length, width, height, roll, roll_length, lap;
};

std::vector<RandomSheet> random_sheets(unsigned seed) {
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> size(1, 40), high(0.3, 4), roll(1, 6), much(10, 60);
  std::uniform_real_distribution<double> lap(0.05, 0.45);
  std::vector<RandomSheet> sheets;
  for (int i = 0; i < 500; ++i) {
    RandomSheet s{size(random), size(random), high(random), roll(random), much(random), 0};
    s.lap = lap(random) * s.roll;
    if (i % 5 == 0) {  // exact fits: so many strips to the millimetre
      const double n = 1 + i % 7;
      s.roll = std::round(s.roll * 1000) / 1000;
      s.lap = std::round(s.lap * 1000) / 1000;
      s.width = n * s.roll - (n - 1) * s.lap;
    }
    sheets.push_back(s);
  }
  return sheets;
}

Count counted_rectangle(double first, double second, const RandomSheet& s, int times) {
  Count along, across;
  along.lay(first, second, s.roll, s.roll_length, s.lap, times);
  across.lay(second, first, s.roll, s.roll_length, s.lap, times);
  return better(along, across, s.roll_length);
}

Count counted_wrap(double along, double around, const RandomSheet& s) {
  Count wrap = counted_rectangle(around + 2 * s.lap, s.height + 2 * s.lap, s, 2);
  wrap.lay(2 * (around + s.height) + s.lap, along, s.roll, s.roll_length, s.lap, 1);
  return wrap;
}

TEST(Sheets, AgreeWithAnIndependentCount) {
  int exact = 0;
  for (const auto& s : random_sheets(77)) {
    SCOPED_TRACE(::testing::Message() << s.length << " " << s.width << " " << s.height << " roll "
                                      << s.roll << " x " << s.roll_length << " lap " << s.lap);
    const Roll roll{m(s.roll), m(s.roll_length)};
    const auto grid = lay_layers(m(s.length), m(s.width), 3, roll, m(s.lap));
    const Count rectangle = counted_rectangle(s.length, s.width, s, 3);
    EXPECT_EQ(grid.strips, rectangle.strips);
    EXPECT_EQ(grid.rolls, rectangle.rolls(s.roll_length));
    EXPECT_NEAR(m2(*grid.with_laps), rectangle.area, 1e-6);
    const auto wrap = wrap_box(m(s.length), m(s.width), m(s.height), roll, m(s.lap));
    const Count box = better(counted_wrap(s.length, s.width, s), counted_wrap(s.width, s.length, s),
                             s.roll_length);
    EXPECT_EQ(wrap.strips, box.strips);
    EXPECT_EQ(wrap.rolls, box.rolls(s.roll_length));
    EXPECT_NEAR(m2(*wrap.with_laps), box.area, 1e-6);
    EXPECT_NEAR(m2(*wrap.ordered), m2(*wrap.with_laps) + m2(*wrap.waste), 1e-9);
    const auto n = static_cast<double>(strips_across(m(s.width), m(s.roll), m(s.lap)));
    if (std::abs(n * s.roll - (n - 1) * s.lap - s.width) < 1e-9) ++exact;
  }
  EXPECT_GE(exact, 100);
}

TEST(Sheets, StripsCoverAndNoMoreThanNeeded_sheets_1) {
  for (const auto& s : random_sheets(78)) {
    const auto n = static_cast<double>(strips_across(m(s.width), m(s.roll), m(s.lap)));
    EXPECT_GE(n * s.roll - (n - 1) * s.lap, s.width - 1e-8);
    if (n > 1) {
      EXPECT_LT((n - 1) * s.roll - (n - 2) * s.lap, s.width - 1e-10);
    }
  }
}

TEST(Sheets, AnExactFitTakesNoStripAndNoRollMore_sheets_2) {
  for (int n = 1; n < 60; ++n)
    for (const double lap : {0.1, 0.15, 0.3, 0.7}) {
      EXPECT_EQ(strips_across(m(n * 3.7 - (n - 1) * lap), m(3.7), m(lap)), n) << n << " " << lap;
      // n pieces of a tenth of 0.3 n: 0.1 is no binary number
      EXPECT_EQ(rolls_for({{10L * n, m(0.3)}}, m(3.0)), n) << n;
    }
}

TEST(Sheets, LapsAreNeverNegative_sheets_3) {
  for (const auto& s : random_sheets(79)) {
    const Roll roll{m(s.roll), m(s.roll_length)};
    const auto wrap = wrap_box(m(s.length), m(s.width), m(s.height), roll, m(s.lap));
    EXPECT_GE(m2(*wrap.with_laps), m2(wrap.net) - 1e-9);
    EXPECT_GE(m2(*wrap.waste), -1e-6);
    const auto grid = lay_layers(m(s.length), m(s.width), 3, roll, m(s.lap));
    EXPECT_GE(m2(*grid.with_laps), m2(grid.net) - 1e-9);
    EXPECT_GE(m2(*grid.waste), -1e-6);
    // spread evenly, the strips lap by what was asked for at least
    const auto n = static_cast<double>(strips_across(m(s.width), m(s.roll), m(s.lap)));
    if (n > 1) {
      EXPECT_GE((n * s.roll - s.width) / (n - 1), s.lap - 1e-9);
    }
  }
}

TEST(Sheets, NoRollIsCutLongerThanItIs_sheets_4) {
  for (const auto& s : random_sheets(80)) {
    const Roll roll{m(s.roll), m(s.roll_length)};
    const Laid laid = lay_rectangle(m(s.length), m(s.width), roll, m(s.lap), 2);
    Length all;
    for (const auto& piece : laid.pieces) {
      EXPECT_LE(piece.length, roll.length);
      EXPECT_GT(piece.length, Length{});
      all += piece.length * static_cast<double>(piece.count);
    }
    const std::int64_t rolls = rolls_for(laid.pieces, roll.length);
    EXPECT_GE(roll.length * static_cast<double>(rolls), all - m(1e-6));
    // never two rolls half empty: first fit would have put the one's pieces into the other
    EXPECT_LT(roll.length * static_cast<double>(rolls - 1) / 2, all + m(1e-6));
  }
}

// By hand: a girth of 2 x (9.6 + 1.32) + 0.15 = 21.99 m, five strips over 24 m; each end two strips
// of 1.62 m. Two girths and three ends come from one roll of 50 m, so three rolls do.
TEST(Sheets, OffcutsAreUsed) {
  const auto wrap = wrap_box(m(24), m(9.6), m(1.32), Roll{m(6), m(50)}, m(0.15));
  EXPECT_EQ(wrap.strips, 5 + 4);
  EXPECT_EQ(wrap.rolls, 3);
  EXPECT_NEAR(m2(*wrap.with_laps), 6 * (5 * 21.99 + 4 * 1.62), 1e-9);
  EXPECT_NEAR(m2(*wrap.waste), 900 - 6 * (5 * 21.99 + 4 * 1.62), 1e-9);
  EXPECT_EQ(wrap.laid,
            "5 strips of 21.99 m round the tank crosswise, on each end 2 strips of 1.62 m");
}

}  // namespace
}  // namespace squaredig::fill
