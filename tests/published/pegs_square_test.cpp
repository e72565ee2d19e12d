// Right angles, diagonals, skew, the equal-diagonal trap, sloping tapes and setting-out tolerances.
#include <gtest/gtest.h>

#include <cmath>

#include "unit/pegs/as_set.h"

namespace squaredig::pegs {
namespace {

constexpr double kFoot = 0.3048;

Site rectangle(double length, double width) {
  Site site([](double, double) { return 3.0; });
  site.design.tank.length = Length::metres(length);
  site.design.tank.width = Length::metres(width);
  site.design.tank.bearing_ab = Bearing::degrees(0);
  site.design.tank.corner_a = grid_point(715825, 734665);
  give_tolerances(site, 10);
  return site;
}

// The corners A B C D of a figure: A-B north, the rest to the east of it.
std::vector<GridPoint> figure(std::initializer_list<std::pair<double, double>> north_east) {
  std::vector<GridPoint> corners;
  for (const auto& [north, east] : north_east)
    corners.push_back(grid_point(715825 + east, 734665 + north));
  return corners;
}

AsSetResult as_set(Site site, const std::vector<GridPoint>& corners) {
  site.pegs.as_set = pegs_round(corners, 3);
  return *site.run().as_set;
}

TapeResult taped(Site site, std::initializer_list<double> ab_bc_cd_da_ac_bd) {
  const char* ends[][2] = {{"A", "B"}, {"B", "C"}, {"C", "D"}, {"D", "A"}, {"A", "C"}, {"B", "D"}};
  site.pegs.tape.emplace();
  for (const double length : ab_bc_cd_da_ac_bd) {
    const auto& end = ends[site.pegs.tape->size()];
    site.pegs.tape->push_back(
        {end[0], end[1], Length::metres(length), std::nullopt, {"tape.csv", 2, 1}});
  }
  return *site.run().tape;
}

// SQ-1: FAO Irrigation Water Management manual, chapter 4, "3-4-5 method" (heading quoted); the
// other triples are derived.
TEST(PublishedSquare, TripletsMakeARightAngle) {
  const int triplets[][3] = {{3, 4, 5}, {6, 8, 10}, {5, 12, 13}, {20, 21, 29}, {9, 12, 15}};
  for (const auto& t : triplets) {
    const PegsResult r = rectangle(t[1], t[0]).run();
    for (const NamedLength& d : r.diagonals) EXPECT_NEAR(d.grid.in_metres(), t[2], 1e-9);
    for (const Corner& c : r.corners) EXPECT_NEAR(c.interior_angle.in_degrees(), 90, 1e-6);
  }
}

// SQ-2: arithmetic. O06: derived; the 9 x 15 ft diagonal 17.49 ft is seen (practice pages).
TEST(PublishedSquare, RectangleDiagonals) {
  const double metric[][3] = {{24, 12, 26.832816}, {30, 16, 34}, {40, 20, 44.721360}};
  for (const auto& m : metric)
    EXPECT_NEAR(rectangle(m[0], m[1]).run().diagonals[1].grid.in_metres(), m[2], 5e-7);
  const double feet[][3] = {
      {12, 6, 13.4164}, {13, 7, 14.7648}, {20, 10, 22.3607}, {24, 8, 25.2982}};
  for (const auto& f : feet)
    EXPECT_NEAR(rectangle(f[0] * kFoot, f[1] * kFoot).run().diagonals[0].grid.in_metres() / kFoot,
                f[2], 5.1e-5);
  EXPECT_NEAR(rectangle(15 * kFoot, 9 * kFoot).run().diagonals[0].grid.in_metres() / kFoot, 17.49,
              0.005);
}

// SQ-3: one minute of skew opens the diagonals by 2 L W e / d: geometry.
TEST(PublishedSquare, OneMinuteOfSkew) {
  const double cases[][3] = {{24, 12, 6.24}, {30, 16, 8.21}, {40, 20, 10.41}};
  for (const auto& c : cases) {
    const double shift = c[1] * std::tan(Angle::seconds(60).in_radians());
    const AsSetResult r = as_set(rectangle(c[0], c[1]),
                                 figure({{0, 0}, {c[0], 0}, {c[0] + shift, c[1]}, {shift, c[1]}}));
    EXPECT_NEAR(r.diagonal_difference->in_millimetres(), c[2], 0.006);
    EXPECT_NEAR(r.out_of_square->in_seconds(), 60, 0.01);
  }
}

// O07: a 12 x 6 m parallelogram whose diagonals differ by 10, 20, 50 mm is skewed by 5.6, 11.2 and
// 28.0 mm over 6 m: derived.
TEST(PublishedSquare, DiagonalDifferenceToSkew) {
  const double cases[][2] = {{10, 5.6}, {20, 11.2}, {50, 28.0}};
  for (const auto& c : cases) {
    const double shift = c[1] / 1000;
    const AsSetResult r =
        as_set(rectangle(12, 6), figure({{0, 0}, {12, 0}, {12 + shift, 6}, {shift, 6}}));
    EXPECT_NEAR(r.diagonal_difference->in_millimetres(), c[0], 0.1);  // 0.05 mm of skew is 0.09 mm
    // the last two are well beyond the 10 mm asked here, though every side is right
    EXPECT_EQ(verdict_of(r.checks, "diagonal difference") == Verdict::DoesNotConform,
              *r.diagonal_difference > Length::millimetres(10));
    EXPECT_EQ(verdict_of(r.checks, "side AB"), Verdict::Conforms);
  }
}

// O08, SQ-4: a trapezium has equal diagonals too: derived (the site story is seen).
TEST(PublishedSquare, EqualDiagonalsDoNotProveARectangle) {
  // ends 12.2 and 11.8, 6.0 apart: both diagonals 13.4164, slanted sides 6.0033
  const auto trapezium = figure({{-0.1, 0}, {12.1, 0}, {11.9, 6}, {0.1, 6}});
  const AsSetResult set = as_set(rectangle(12, 6), trapezium);
  EXPECT_NEAR(set.diagonals[0].grid.in_metres(), 13.4164, 5e-5);
  EXPECT_NEAR(set.diagonals[1].grid.in_metres(), 13.4164, 5e-5);
  EXPECT_NEAR(set.sides[1].grid.in_metres(), 6.0033, 5e-5);
  EXPECT_EQ(verdict_of(set.checks, "diagonal difference"), Verdict::Conforms);
  EXPECT_EQ(verdict_of(set.checks, "side AB"), Verdict::DoesNotConform);
  EXPECT_EQ(set.verdict, Verdict::DoesNotConform);

  const TapeResult tape = taped(rectangle(12, 6), {12.2, 6.0033, 11.8, 6.0033, 13.4164, 13.4164});
  EXPECT_EQ(tape.verdict, Verdict::DoesNotConform);
  EXPECT_NEAR(tape.diagonal_difference->in_metres(), 0, 1e-12);
  EXPECT_FALSE(tape.likely_wrong)
      << tape.words;  // the lengths agree: the shape is wrong, not a length
  EXPECT_EQ(tape.words,
            "The lengths agree with one another. The diagonals agree, and still it is no rectangle "
            "as designed: equal diagonals prove none.");

  // 24.000 and 23.900, 12 apart: both diagonals 26.788, legs 12.0001
  const AsSetResult long_one =
      as_set(rectangle(24, 12), figure({{0, 0}, {24, 0}, {23.95, 12}, {0.05, 12}}));
  EXPECT_NEAR(long_one.diagonals[0].grid.in_metres(), 26.788, 5e-4);
  EXPECT_NEAR(long_one.diagonals[1].grid.in_metres(), 26.788, 5e-4);
  EXPECT_NEAR(long_one.sides[1].grid.in_metres(), 12.0001, 5e-5);
  EXPECT_EQ(long_one.verdict, Verdict::DoesNotConform);
}

// O09: 40 ft horizontal with a drop of 2 ft reads 40.05 ft on the tape (seen). O10: derived.
TEST(PublishedSquare, SlopingTapes) {
  const double cases[][3] = {
      {40.04997, 2, 40}, {12.0037, 0.3, 12}, {13.0096, 0.5, 13}, {30.0167, 1, 30}};
  for (const auto& c : cases) {
    Site site = rectangle(c[2], 6);
    site.pegs.tape = {{"A", "B", Length::metres(c[0]), Length::metres(-c[1]), {"tape.csv", 2, 1}}};
    EXPECT_NEAR(site.run().tape->sides[0]->in_metres(), c[2], 6e-5);
  }
  Site site = rectangle(40, 6);
  site.pegs.tape = {{"A", "B", Length::metres(40.05), Length::metres(2), {"tape.csv", 2, 1}}};
  EXPECT_NEAR(site.run().tape->sides[0]->in_metres(), 40, 0.005);
}

// Setting-out tolerances of published form, from memory and quoted from a summary: IS 11134
// position points +-K sqrt(L) mm, with K 5 for earthwork (TOL-1), and ISO 4463-1 secondary points
// +-1.5 sqrt(L) mm, at least 8 mm (TOL-5). The program has no tolerance of its own: these are typed
// in, and judged.
TEST(PublishedSquare, TolerancesFromMemoryAreJudgedAsTyped) {
  const auto earthwork = [](double metres) { return 5 * std::sqrt(metres); };
  const double table[][2] = {{4, 10.0}, {12, 17.3}, {24, 24.5}, {50, 35.4}};  // TOL-6: arithmetic
  for (const auto& t : table) EXPECT_NEAR(earthwork(t[0]), t[1], 0.05);
  const double secondary = std::max(8.0, 1.5 * std::sqrt(24.0));
  for (const double limit_mm : {earthwork(24), secondary}) {
    Site site = rectangle(24, 12);
    site.pegs.side_tolerance = Length::millimetres(limit_mm);
    const auto side = [&](double mm) {
      return verdict_of(taped(site, {24 + mm / 1000, 12, 24, 12, 26.832816, 26.832816}).checks,
                        "side AB");
    };
    EXPECT_EQ(side(limit_mm - 0.1), Verdict::Conforms);
    EXPECT_EQ(side(limit_mm + 0.1), Verdict::DoesNotConform);
  }
}

}  // namespace
}  // namespace squaredig::pegs
