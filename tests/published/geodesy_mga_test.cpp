// The five stations and four lines of the map grid of Australia, zone 55.
// Source: GDA2020 Technical Manual v1.3 (ICSM), Table C.1 p.74, Figure C.2 p.75, Table 5.1 p.51;
// seen.
#include <gtest/gtest.h>

#include <GeographicLib/Geodesic.hpp>
#include <cmath>

#include "geodesy/factors.h"
#include "quantity/angle_text.h"

namespace squaredig::geodesy {
namespace {

struct Station {
  const char* id;
  const char* latitude;   // south
  const char* longitude;  // east
  double easting, northing;
  const char* convergence;  // the manual's: negative here, azimuth = grid bearing - convergence
  double k;
};
constexpr Station kStations[] = {
    {"GDA-1 Smeaton", "37 17 49.73133", "143 59 03.16715", 232681.853, 5867898.032, "1 49 42.581",
     1.0004803462},
    {"GDA-2 Buninyong", "37 39 10.15610", "143 55 35.38390", 228854.051, 5828259.038, "1 52 43.219",
     1.0005056691},
    {"GDA-3 Flinders Peak", "37 57 03.72030", "144 25 29.52440", 273741.297, 5796489.777,
     "1 35 03.647", 1.0002305586},
    {"GDA-4 Bellarine", "38 09 05.22717", "144 36 43.67715", 290769.028, 5774686.632, "1 28 32.238",
     1.0001391885},
    {"GDA-5 Arthurs Seat", "38 21 13.12685", "144 57 02.55485", 320936.377, 5752958.470,
     "1 16 19.020", 0.9999948876},
};

struct Line {
  const char* id;
  std::size_t from;
  double ellipsoidal, scale, plane;
  const char* bearing;
};
constexpr Line kLines[] = {
    {"GDA-L1", 0, 39803.761, 1.00049299, 39823.384, "185 30 56.71"},
    {"GDA-L2", 1, 54972.271, 1.00036397, 54992.279, "125 17 21.18"},
    {"GDA-L3", 2, 27659.334, 1.00018428, 27664.431, "142 00 39.67"},
    {"GDA-L4", 3, 37175.286, 1.00006517, 37177.709, "125 45 48.53"},
};

Angle dms(const char* text) { return *parse_angle(text, AngleNotation::DegreesMinutesSeconds); }
GridPoint at(const Station& s) { return grid_point(s.easting, s.northing); }
Grid zone_55() { return Grid::open("EPSG:7855", {"job.toml", 1, 1}); }

TEST(PublishedMga, StationsToTheMillimetre) {
  const Grid grid = zone_55();
  for (const Station& s : kStations) {
    const GridPoint p = grid.to_grid({-dms(s.latitude), dms(s.longitude)});
    EXPECT_NEAR(p.easting.in_metres(), s.easting, 0.0006) << s.id;
    EXPECT_NEAR(p.northing.in_metres(), s.northing, 0.0006) << s.id;
    const Geographic g = grid.to_geographic(at(s));
    EXPECT_NEAR((g.latitude + dms(s.latitude)).in_seconds(), 0, 3e-5) << s.id;
    EXPECT_NEAR((g.longitude - dms(s.longitude)).in_seconds(), 0, 3e-5) << s.id;
  }
}

TEST(PublishedMga, ConvergenceAndPointScaleOfTheStations) {
  const Grid grid = zone_55();
  for (const Station& s : kStations) {
    const GridFactors f = grid.factors(at(s));
    EXPECT_NEAR((f.convergence - dms(s.convergence)).in_seconds(), 0, 0.001) << s.id;
    EXPECT_NEAR(f.point_scale.value(), s.k, 1e-10) << s.id;
  }
}

// TRAP-8: the manual's convergence at Flinders Peak is -1 35 03.647 (azimuth = grid bearing less
// it); here it is told as +1 35 03.647, west of the central meridian in the south.
TEST(PublishedMga, ConvergenceTurnsAGridBearingIntoTheAzimuth_trap_8) {
  const Grid grid = zone_55();
  // Table C.1: azimuth Flinders Peak to Buninyong 306 52 05.37, grid bearing 305 17 01.72
  const GridFactors f = grid.factors(at(kStations[2]));
  EXPECT_GT(f.convergence.in_degrees(), 0);
  EXPECT_NEAR((dms("305 17 01.72") + f.convergence - dms("306 52 05.37")).in_seconds(), 0, 0.02);
}

// The scale of a line is that of its ends and middle by Simpson's rule, as the manual has it.
double line_scale(const Grid& grid, GridPoint from, GridPoint to) {
  const GridPoint middle{from.easting + (to.easting - from.easting) * 0.5,
                         from.northing + (to.northing - from.northing) * 0.5};
  const auto scale = [&](GridPoint p) { return grid.factors(p).point_scale.value(); };
  return (scale(from) + 4 * scale(middle) + scale(to)) / 6;
}

// The printed coordinates and lengths are rounded to a millimetre: two ends and the length itself
// bound the difference by 1.9 mm, and the scale by a millimetre over the line.
TEST(PublishedMga, LineScalesPlaneDistancesAndBearings) {
  const Grid grid = zone_55();
  for (const Line& line : kLines) {
    const GridPoint from = at(kStations[line.from]);
    const GridPoint to = at(kStations[line.from + 1]);
    const double scale = line_scale(grid, from, to);
    EXPECT_NEAR(scale, line.scale, 0.001 / line.ellipsoidal) << line.id;
    EXPECT_NEAR(distance(from, to).in_metres(), line.plane, 0.0019) << line.id;
    EXPECT_NEAR(line.ellipsoidal * scale, line.plane, 0.001) << line.id;
    EXPECT_NEAR((Bearing::of_line(from, to).from_north() - dms(line.bearing)).in_seconds(), 0, 0.02)
        << line.id;
  }
}

// The same table: azimuths both ways, by the geodesic of the independent library between the
// printed positions, and from the grid: azimuth = plane bearing less arc-to-chord plus convergence.
TEST(PublishedMga, AzimuthsAndArcToChordOfTheLines) {
  struct Ends {
    const char *there, *back;
    double first, second;  // arc-to-chord, seconds
  };
  const Ends ends[] = {{"187 21 06.34", "7 23 12.76", -27.05, 27.17},
                       {"127 10 25.07", "306 52 05.37", -20.67, 19.47},
                       {"143 35 55.53", "323 29 00.01", -12.22, 11.90},
                       {"127 14 31.76", "307 01 57.12", -11.00, 10.44}};
  const GeographicLib::Geodesic earth(6378137, 1 / 298.257222101);
  const Grid grid = zone_55();
  for (std::size_t i = 0; i < 4; ++i) {
    const Station& a = kStations[kLines[i].from];
    const Station& b = kStations[kLines[i].from + 1];
    const Angle theta = Bearing::of_line(at(a), at(b)).from_north();
    const Angle there = dms(ends[i].there), back = dms(ends[i].back);
    const auto seconds = [](Angle v) { return std::remainder(v.in_degrees(), 360) * 3600; };
    EXPECT_NEAR(seconds(theta + grid.factors(at(a)).convergence - there), ends[i].first, 0.02)
        << kLines[i].id;
    EXPECT_NEAR(seconds(theta + Angle::degrees(180) + grid.factors(at(b)).convergence - back),
                ends[i].second, 0.02)
        << kLines[i].id;
    double s = 0, from = 0, to = 0;
    earth.Inverse(-dms(a.latitude).in_degrees(), dms(a.longitude).in_degrees(),
                  -dms(b.latitude).in_degrees(), dms(b.longitude).in_degrees(), s, from, to);
    EXPECT_NEAR(s, kLines[i].ellipsoidal, 0.0011) << kLines[i].id;
    EXPECT_NEAR(seconds(Angle::degrees(from) - there), 0, 0.02) << kLines[i].id;
    EXPECT_NEAR(seconds(Angle::degrees(to + 180) - back), 0, 0.02) << kLines[i].id;
  }
}

// CSF-7: the true scale of line L2 is 1.00036397; the plain mean of its ends, 1.00036811, is 4.1
// ppm high.
TEST(PublishedMga, LineScaleIsNotTheMeanOfTheEnds) {
  const Grid grid = zone_55();
  const double mean = (grid.factors(at(kStations[1])).point_scale.value() +
                       grid.factors(at(kStations[2])).point_scale.value()) /
                      2;
  EXPECT_NEAR(mean, 1.00036811, 5e-9);
  EXPECT_NEAR(mean - line_scale(grid, at(kStations[1]), at(kStations[2])), 4.1e-6, 5e-8);
}

// TRAP-13: Buninyong in zone 54 stands at E 758173.797 N 5828674.340 (quoted from a sample of the
// national sheet): 529 km from where zone 55 has it, and outside the area of zone 55.
TEST(PublishedMga, TheNeighbouringZoneIsNoticed_trap_13) {
  const Grid next = Grid::open("EPSG:7854", {"job.toml", 1, 1});
  const GridPoint p = next.to_grid({-dms("37 39 10.15610"), dms("143 55 35.38390")});
  EXPECT_NEAR(p.easting.in_metres(), 758173.797, 0.001);
  EXPECT_NEAR(p.northing.in_metres(), 5828674.340, 0.001);
  EXPECT_NEAR((next.factors(p).convergence + dms("1 47 19.36")).in_seconds(), 0, 0.01);
  EXPECT_NEAR(next.factors(p).point_scale.value(), 1.00042107, 5e-9);
  EXPECT_NEAR(distance(p, at(kStations[1])).in_metres(), 529000, 500);
}

}  // namespace
}  // namespace squaredig::geodesy
