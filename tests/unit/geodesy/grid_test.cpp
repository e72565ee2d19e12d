#include "geodesy/grid.h"

#include <gtest/gtest.h>

#include <cmath>

#include "geodesy/factors.h"
#include "refusal_text.h"

namespace squaredig::geodesy {
namespace {

const Place kPlace{"job.toml", 5, 11};

// The middle of each system's area, and the axis that the register declares first.
struct Sample {
  const char* code;
  double latitude, longitude;
};
// easting first: 7855 2157 27700 3067; northing first: 2193 31467 6676
constexpr Sample kSamples[] = {{"EPSG:7855", -37.8, 144.9}, {"EPSG:2157", 53.3, -6.3},
                               {"EPSG:27700", 52.7, 1.7},   {"EPSG:3067", 61.5, 23.8},
                               {"EPSG:2193", -41.3, 174.8}, {"EPSG:31467", 48.8, 9.2},
                               {"EPSG:6676", 36.7, 138.2}};

Geographic position(const Sample& s) {
  return {Angle::degrees(s.latitude), Angle::degrees(s.longitude)};
}

TEST(Grid, ThereAndBackIsTheSamePoint_grid_1) {
  for (const Sample& s : kSamples) {
    const Grid grid = Grid::open(s.code, kPlace);
    const GridPoint p = grid.to_grid(position(s));
    EXPECT_LT(distance(grid.to_grid(grid.to_geographic(p)), p).in_metres(), 1e-6) << s.code;
    EXPECT_EQ(grid.in_area(p), InArea::Inside) << s.code;
  }
}

TEST(Grid, EastIsEastWhateverTheRegisterDeclaresFirst_grid_2) {
  for (const Sample& s : kSamples) {
    const Grid grid = Grid::open(s.code, kPlace);
    const GridPoint p = grid.to_grid(position(s));
    const Geographic east = grid.to_geographic({p.easting + Length::metres(1000), p.northing});
    const Geographic north = grid.to_geographic({p.easting, p.northing + Length::metres(1000)});
    EXPECT_GT(east.longitude.in_degrees(), s.longitude + 0.008) << s.code;
    EXPECT_GT(north.latitude.in_degrees(), s.latitude + 0.008) << s.code;
  }
}

// Second opinion: scale and convergence by differences of the projection itself, over the lengths
// of one degree on the ellipsoid at that latitude.
TEST(Grid, ScaleIsTheSameInEveryDirection_grid_3) {
  for (const Sample& s : kSamples) {
    const Grid grid = Grid::open(s.code, kPlace);
    const GridFactors f = grid.factors(grid.to_grid(position(s)));
    constexpr double kStep = 0.001;
    const auto side = [&](double d_lat, double d_lon) {
      return grid.to_grid(
          {Angle::degrees(s.latitude + d_lat), Angle::degrees(s.longitude + d_lon)});
    };
    const GridPoint south = side(-kStep, 0);
    const GridPoint north = side(kStep, 0);
    const double up = distance(south, north).in_metres();
    const double across = distance(side(0, -kStep), side(0, kStep)).in_metres();
    // radii of GRS 80 and of the older ellipsoids from the mean radius: M N = R^2
    const double r = f.mean_radius.in_metres();
    const double arc = 2 * kStep * Angle::degrees(1).in_radians();
    const double product =
        up / arc * across / arc / std::cos(Angle::degrees(s.latitude).in_radians());
    EXPECT_NEAR(std::sqrt(product) / r, f.point_scale.value(), 1e-8) << s.code;
    const double meridian = Bearing::of_line(south, north).in_degrees();
    EXPECT_NEAR(std::remainder(meridian + f.convergence.in_degrees(), 360), 0, 1e-6) << s.code;
  }
}

TEST(Grid, SwappedEastingAndNorthingIsTold) {
  // Alderbrook school stands near E 715830 N 734697 of the Irish grid
  const Grid irish = Grid::open("EPSG:2157", kPlace);
  EXPECT_EQ(irish.in_area(grid_point(715830.25, 734697.6)), InArea::Inside);
  const Grid zone = Grid::open("EPSG:7855", kPlace);
  EXPECT_EQ(zone.in_area(grid_point(321000, 5812000)), InArea::Inside);
  EXPECT_EQ(zone.in_area(grid_point(5812000, 321000)), InArea::SwappedInside);
  EXPECT_EQ(zone.in_area(grid_point(100, 200)), InArea::Outside);
  // across 180 degrees: the area of New Zealand's grid
  const Grid zealand = Grid::open("EPSG:2193", kPlace);
  EXPECT_EQ(zealand.in_area(grid_point(1749000, 5427000)), InArea::Inside);
  EXPECT_EQ(zealand.in_area(grid_point(5427000, 1749000)), InArea::SwappedInside);
}

TEST(Grid, RefusesWhatIsNoGridInMetres) {
  const auto text = [](const char* code) {
    return testing::refusal_text([&] { Grid::open(code, kPlace); });
  };
  EXPECT_EQ(text("2157"),
            "job.toml:5:11: coordinate reference system \"2157\"; an authority and a code, such as "
            "\"EPSG:2157\"; write the code of the job's grid\n");
  EXPECT_NE(text("+proj=utm +zone=33"), "");
  EXPECT_NE(text("EPSG:@null"), "");
  EXPECT_NE(text("EPSG:999999").find("is not in the register"), std::string::npos);
  EXPECT_NE(text("EPSG:4326").find("is not a projected grid"), std::string::npos);
  EXPECT_NE(text("EPSG:2225").find("US survey foot"), std::string::npos);
  EXPECT_NE(text("EPSG:27572").find("Paris"), std::string::npos);
}

// Southing first and westing second: nothing to guess from, so nothing is guessed.
TEST(Grid, RefusesAxesThatPointSouthOrWest) {
  const std::string text = testing::refusal_text([] { Grid::open("EPSG:2065", kPlace); });
  EXPECT_NE(text.find("points south"), std::string::npos) << text;
}

TEST(Grid, RefusesScaleOnAGridThatIsNotConformal) {
  const Grid web = Grid::open("EPSG:3857", kPlace);
  EXPECT_NE(testing::refusal_text([&] { web.factors(grid_point(500000, 6000000)); }), "");
}

}  // namespace
}  // namespace squaredig::geodesy
