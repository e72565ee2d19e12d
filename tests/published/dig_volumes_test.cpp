// Published volumes: cuttings, contours and pits through the whole kernel, loads and staffs; and
// published numbers that are wrong, as negative tests. "Seen" means that the number itself was read
// in the place named; otherwise the value is recomputed or derived.
#include <gtest/gtest.h>

#include <cstdint>
#include <numeric>

#include "dig/dig.h"
#include "dig/quoted.h"
#include "grounds.h"

namespace squaredig {
namespace {

using testing::grid_surface;
using testing::MadeSurvey;
using testing::plain_pit;

// A strip of ground along x with the given heights at equal stations, cross slope besides.
geometry::Surface strip(const std::vector<double>& heights, double spacing, double cross) {
  geometry::Surface s;
  const double half = 400;
  std::vector<double> z{heights};
  z.insert(z.begin(), heights.front());
  z.push_back(heights.back());
  const auto n = static_cast<geometry::Index>(z.size());
  for (geometry::Index i = 0; i < n; ++i)
    for (const double y : {-half, half})
      s.vertices.push_back({(i - 1) * spacing, y, z[static_cast<std::size_t>(i)] + cross * y});
  for (geometry::Index i = 0; i + 1 < n; ++i) {
    s.triangles.push_back({2 * i, 2 * i + 2, 2 * i + 1});
    s.triangles.push_back({2 * i + 2, 2 * i + 3, 2 * i + 1});
  }
  geometry::link_neighbours(s);
  return s;
}

struct Cutting {
  double exact, end_area;
};

// A cutting as a pit: floor of the formation's width, both sides battered, both ends vertical.
Cutting cutting(double width, double z, const std::vector<double>& depths, double spacing,
                double cross = 0) {
  const double length = spacing * static_cast<double>(depths.size() - 1);
  MadeSurvey survey(strip(depths, spacing, cross));
  auto input = plain_pit(length, width, 0, Batter::run_per_rise(z), grid_point(length / 2, 0));
  input.pit.batter.by_side = {{"BC", Batter{}}, {"DA", Batter{}}};
  dig::DigInput stage;
  stage.cell = Length::metres(spacing);
  const auto result = dig::dig(stage, input, design::excavate(input, survey), survey);
  return {result.cut.in_cubic_metres(), result.comparison.end_area.in_cubic_metres()};
}

// FHWA HEC-22, eq 10.19 (formula seen): h / 3 (A1 + A2 + root of A1 A2) between contours is right
// where the sections are similar. The contours of engineeringdiscoveries.com (inputs seen, value
// recomputed: 18 748.40), each pair as a square pit whose sides meet both areas.
TEST(PublishedConic, SimilarSectionsBetweenContours) {
  const std::vector<double> areas{375, 620, 945, 1365, 1880, 2570};
  double sum = 0;
  for (std::size_t i = 0; i + 1 < areas.size(); ++i) {
    const double below = std::sqrt(areas[i]), above = std::sqrt(areas[i + 1]);
    MadeSurvey survey(grid_surface(200, 5, [](double, double) { return 3.0; }));
    const auto batter = Batter::run_per_rise((above - below) / 2 / 3);
    const auto pit = design::excavate(plain_pit(below, below, 0, batter), survey);
    EXPECT_NEAR(pit.dug.area, areas[i + 1], 1e-8);
    sum += pit.dug.volume;
  }
  EXPECT_NEAR(sum, 18748.40, 0.005);
  EXPECT_GT(18847.5 - sum, 99);  // by end areas
}

// FOSSEE 10_8, 10_7, 10_6 and two-level sections 10_12, 10_9 (seen): the end areas that stand
// beside the exact volume are the published ones. Of 10_8's two numbers 3 815.775 is the one of the
// end areas; 3 840.30 is Simpson's rule over pairs, which these uneven depths do not fit.
TEST(PublishedCuttings, EndAreasBesideTheExactVolume) {
  EXPECT_NEAR(cutting(7.5, 2, {1.8, 2.175, 2.55, 2.925, 3.0}, 30).end_area, 3815.775, 0.005);
  EXPECT_NEAR(cutting(8.8, 1.5, {1.8, 2.4, 3.0, 3.6}, 20).end_area, 2111.4, 0.05);
  EXPECT_NEAR(cutting(10, 2, {2, 2.4, 3}, 20, 1.0 / 8).end_area, 1601.76, 0.005);
  EXPECT_NEAR(cutting(6, 2, {1.54, 1.64, 1.44, 1.94, 2.24, 2.24, 2.54}, 20).end_area, 2303.744,
              5e-4);
  const auto level = cutting(12, 1.5, {2.4, 2.4, 2.4}, 100);
  EXPECT_NEAR(level.exact, 7488, 1e-6);
  EXPECT_NEAR(level.end_area, 7488, 1e-4);
  EXPECT_NEAR(cutting(5, 2, {2.2, 2.2, 2.2}, 60, 1.0 / 20).exact, 2510.4545, 5e-5);
}

// Vose, Handbook of Railroad Construction (1857), art. 108 (seen at bitlit.ru, page 83): base 20
// ft, 1.5:1, cuts 0 5 10 15 0 at 50 ft. Exact end areas 56 250, exact prismoids 52 500; the book
// prints 56 200 from rounded areas.
TEST(PublishedCuttings, RailroadCutOf1857) {
  const auto cut = cutting(20, 1.5, {0, 5, 10, 15, 0}, 50);
  EXPECT_NEAR(cut.exact, 52500, 1e-5);
  EXPECT_NEAR(cut.end_area, 56250, 1e-3);
}

// FOSSEE 10_13: its prismoidal correction, 65.81, is twice the right one. Each span of a level
// section is Z L (h1 - h2)^2 / 6 less than the end areas; with two-level sections the true value
// follows from the exact cut: 4 150.07 less 32.906 is 4 117.163 (recomputed).
TEST(PublishedCuttings, CorrectionTwiceTooLarge) {
  const auto cut = cutting(9, 2, {2.5, 3.55, 4.9}, 30, 1.0 / 6);
  EXPECT_NEAR(cut.end_area, 4150.07, 0.005);
  EXPECT_NEAR(cut.end_area - cut.exact, 32.906, 0.001);
  EXPECT_NEAR(cut.exact, 4117.163, 0.001);
  EXPECT_GT(std::abs(cut.end_area - cut.exact - 65.81), 30);
}

double level_pit(double length, double width, double z_ends, double z_sides, double depth) {
  MadeSurvey survey(grid_surface(200, 31, [=](double, double) { return depth; }));
  auto input = plain_pit(length, width, 0, Batter::run_per_rise(z_sides));
  input.pit.batter.by_side = {{"BC", Batter::run_per_rise(z_ends)},
                              {"DA", Batter::run_per_rise(z_ends)}};
  return design::excavate(input, survey).dug.volume;
}

// Nine Chapters on the Mathematical Art, ch. 5, "chu tong" (inputs seen, answer from memory).
TEST(PublishedPrismoids, ChuTong) {
  EXPECT_NEAR(level_pit(30, 20, 1 / 6.0, 1 / 6.0, 30), 26500, 1e-6);
}

// Same chapter, "qu chi", a curved pool straightened by its mean perimeters (inputs seen,
// recomputed): top 10 wide and (20 + 40) / 2 long, bottom 5 wide and (14 + 24) / 2 long, 10 deep: 1
// 883 1/3.
TEST(PublishedPrismoids, QuChi) { EXPECT_NEAR(level_pit(19, 5, 0.55, 0.25, 10), 5650 / 3.0, 1e-8); }

// Same chapter (seen): 576 of wall take 768 in the ground, 4 dug being 3 compacted; a trench 16
// long and 10 deep, 6 wide at the top, is then 3.6 wide at the bottom.
TEST(PublishedPrismoids, TrenchThatFillsAWall) {
  const double trench = level_pit(16, 3.6, 0, 0.12, 10);
  EXPECT_NEAR(trench, 768, 1e-8);
  EXPECT_NEAR(trench * 3 / 4, 576, 1e-8);
}

// NRCS Agriculture Handbook 590, pond chapter (from memory): bottom 100 by 40 ft, 12 deep, sides
// and one end 2:1, the end with the ramp 4:1: (15 136 + 4 x 8 704 + 4 000) / 6 x 12 ft3, 3 996 yd3.
// The average of the end areas is 6.4 percent more.
TEST(PublishedPrismoids, PondWithARampedEnd) {
  MadeSurvey survey(grid_surface(200, 31, [](double, double) { return 12.0; }));
  auto input = plain_pit(100, 40, 0, Batter::run_per_rise(2));
  input.pit.batter.by_side = {{"BC", Batter::run_per_rise(4)}};
  const double pond = design::excavate(input, survey).dug.volume;
  EXPECT_NEAR(pond / 27, 3996, 0.5);
  EXPECT_NEAR(pond, (15136 + 4 * 8704 + 4000) / 6.0 * 12, 1e-6);
  EXPECT_NEAR((15136 + 4000) / 2.0 * 12 / pond, 1.064, 5e-4);
}

// mathcentral.uregina.ca, QQ.09.07 tom4 (seen): 100 by 70 ft at the top, four sides 2:1, 12 deep:
// 44 256 ft3, 1 639.1 yd3.
TEST(PublishedPrismoids, FourBatteredSides) {
  const double pond = level_pit(52, 22, 2, 2, 12);
  EXPECT_NEAR(pond, 44256, 1e-6);
  EXPECT_NEAR(pond / 27, 1639.1, 0.05);
}

// Sun Tzu's Computational Classic II 22 (seen, yawnoc.github.io): a wall of widths 20 and 54, 38
// high and 5 550 long holds 7 803 300; dug as a trench with vertical ends, a tenth of its length.
TEST(PublishedPrismoids, SunTzuWall) {
  MadeSurvey survey(grid_surface(600, 111, [](double, double) { return 38.0; }));
  auto input = plain_pit(555, 20, 0, Batter::run_per_rise(17.0 / 38));
  input.pit.batter.by_side = {{"BC", Batter{}}, {"DA", Batter{}}};
  EXPECT_NEAR(10 * design::excavate(input, survey).dug.volume, 7803300, 1e-3);
}

// web2.0calc.com frustum_1: 180 x 20 to 202 x 25 over 15 ft is 64 600; the page's 64 569.0056 joins
// the areas by the rule for similar figures, which these are not, and must not come out.
TEST(PublishedPrismoids, RootOfAreasIsNotTheLake) {
  const double lake = level_pit(180, 20, 11.0 / 15, 2.5 / 15, 15);
  EXPECT_NEAR(lake, 64600, 1e-5);
  const double a = 180 * 20, b = 202 * 25;
  EXPECT_NEAR(15.0 / 3 * (a + b + std::sqrt(a * b)), 64569.0056, 1e-3);
}

// From a text that follows HEC-22: 97 200 ft3 "at about 4.5 ft" needs 8.411 ft.
TEST(PublishedPrismoids, BasinDepthOfAWrongText) {
  EXPECT_NEAR(level_pit(100, 50, 4, 4, 4.5), 36594, 1e-5);
  EXPECT_NEAR(level_pit(100, 50, 4, 4, 8.411), 97200, 20);
}

// FOSSEE example 10_17 (seen): a trapezium of sides 3 and 7.5, 6 apart, levels 121.38, 119.64,
// 120.32 and 121.68 down to 118.17: 81.43, the mean of four depths times the area.
TEST(PublishedGrids, OneTrapeziumCell) {
  const auto m = [](double level) { return Length::metres(level - 118.17); };
  const std::vector<std::array<Length, 4>> cell{{m(121.38), m(119.64), m(120.32), m(121.68)}};
  EXPECT_NEAR(
      dig::corner_grid_volume(cell, Area::square_metres((3 + 7.5) / 2 * 6)).in_cubic_metres(),
      81.4275, 1e-9);
}

// Vose (1857), art. 106 (seen): level cuts of 1 to 10 ft, yd3 per 100 ft. Earth, base 19 ft, 1.5:1,
// is printed 802 at 7 ft, where its own rule gives 764.8; rock, base 18 ft, 1/4:1. The bases are
// read off the table itself. Printed values are whole yards, some of them off by one.
TEST(PublishedCuttings, TableOf1857) {
  const std::vector<double> earth{76, 163, 261, 371, 491, 622, 802, 919, 1083, 1260};
  const std::vector<double> rock{68, 137, 208, 282, 356, 433, 512, 593, 675, 759};
  for (std::size_t i = 0; i < earth.size(); ++i) {
    const auto depth = static_cast<double>(i + 1);
    const double in_earth = cutting(19, 1.5, {depth, depth, depth}, 50).exact / 27;
    if (depth == 7) {
      EXPECT_NEAR(in_earth, 764.8, 0.05);
      EXPECT_GT(earth[i] - in_earth, 37);
    } else {
      EXPECT_NEAR(in_earth, earth[i], 1) << depth;
    }
    EXPECT_NEAR(cutting(18, 0.25, {depth, depth, depth}, 50).exact / 27, rock[i], 1) << depth;
  }
}

// FOSSEE example 10_20 (seen): a 30 m square with a spot height in its middle, four triangles:
// 2 685; the mean of the corners or either diagonal alone makes 2 700.
TEST(PublishedGrids, SquareWithACentreSpot) {
  geometry::Surface s;
  s.vertices = {{-15, -15, 2.85}, {15, -15, 2.45}, {15, 15, 3.15}, {-15, 15, 3.55}, {0, 0, 2.95},
                {-40, -40, 2},    {40, -40, 2},    {40, 40, 2},    {-40, 40, 2}};
  for (geometry::Index i = 0; i < 4; ++i) {
    const geometry::Index j = (i + 1) % 4;
    s.triangles.push_back({i, j, 4});
    s.triangles.push_back({5 + i, 5 + j, i});
    s.triangles.push_back({5 + j, j, i});
  }
  geometry::link_neighbours(s);
  MadeSurvey survey(s);
  EXPECT_NEAR(design::excavate(plain_pit(30, 30, 0, Batter{}), survey).dug.volume, 2685, 1e-8);
}

// INDOT Survey Procedures, ch. 6, fig. 6-2 (seen): instrument 503.5, rod 1.5, formation 497.0, half
// width 29, 2:1: cut 5.0 at 39.0 from the centre line.
TEST(PublishedStakes, SlopeStakeOfACut) {
  MadeSurvey survey(grid_surface(120, 17, [](double, double) { return 503.5 - 1.5; }));
  const auto pit = design::excavate(plain_pit(60, 58, 497, Batter::run_per_rise(2)), survey);
  EXPECT_NEAR(pit.reach(grid_point(0, 0), Bearing::degrees(0)).in_metres(), 39.0, 1e-9);
  EXPECT_NEAR(pit.dug.deepest, 5.0, 1e-9);
}

// Nine Chapters, ch. 5, problem 1 (seen): 4 dug is 5 loose: 10 000 in the ground is 12 500 loose.
// Web page (seen): 8 000 with 40 percent is 11 200. Estimating in Building Construction, example
// 9-2 (seen): 1 000 with 30 percent is 186 loads of 7. Construction methods text, ch. 5: 950 of
// 3 000 kept, bank 2 800 to loose 2 295: 2 050 leave as 2 501, 84 loads of 30 (recomputed).
TEST(PublishedLoads, BankToLooseToLoads) {
  struct Row {
    double bank, bulking, keep, truck, loose, hauled;
    std::int64_t loads;
  };
  for (const Row& row :
       {Row{10000, 1.25, 0, 10, 12500, 12500, 1250}, Row{8000, 1.40, 0, 10, 11200, 11200, 1120},
        Row{1000, 1.30, 0, 7, 1300, 1300, 186},
        Row{3000, 2800.0 / 2295, 950, 30, 3660.13, 2501.09, 84}}) {
    MadeSurvey survey(grid_surface(100, 31, [&](double, double) { return row.bank / 1000; }));
    auto input = plain_pit(50, 20, 0, Batter{});
    dig::DigInput stage;
    stage.cell = Length::metres(10);
    stage.bulking = Ratio::of(row.bulking);
    stage.keep = BankVolume::cubic_metres(row.keep);
    stage.truck = LooseVolume::cubic_metres(row.truck);
    const auto result = dig::dig(stage, input, design::excavate(input, survey), survey);
    EXPECT_NEAR(result.cut.in_cubic_metres(), row.bank, 1e-8);
    EXPECT_NEAR(result.loose->in_cubic_metres(), row.loose, 0.005);
    EXPECT_NEAR(result.hauled->in_cubic_metres(), row.hauled, 0.005);
    EXPECT_EQ(result.truckloads, row.loads);
  }
}

}  // namespace
}  // namespace squaredig
