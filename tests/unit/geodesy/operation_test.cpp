#include "geodesy/operation.h"

#include <gtest/gtest.h>

#include <GeographicLib/TransverseMercator.hpp>
#include <cmath>
#include <cstdlib>

#include "refusal_text.h"

namespace squaredig::geodesy {
namespace {

const Place kPlace{"job.toml", 5, 11};
Geographic near(double latitude, double longitude) {
  return {Angle::degrees(latitude), Angle::degrees(longitude)};
}

TEST(Operation, TheOperationNamedIsTheOneThatRuns_operation_1) {
  const Operation op = Operation::best("EPSG:2157", "EPSG:4326", near(53.3, -6.3), kPlace);
  EXPECT_EQ(op.used().name, "Inverse of Irish Transverse Mercator + IRENET95 to WGS 84 (1)");
  EXPECT_DOUBLE_EQ(op.used().accuracy.in_metres(), 1);
  EXPECT_TRUE(op.used().grid_files.empty());
  EXPECT_EQ(op.used().software.substr(0, 5), "PROJ ");
  const Grid grid = Grid::open("EPSG:2157", kPlace);
  const Position p = op.apply({715830.25, 734697.6, 0});
  const Geographic g = grid.to_geographic(grid_point(715830.25, 734697.6));
  // both datums coincide in that operation
  EXPECT_NEAR(p.east, g.longitude.in_degrees(), 1e-9);
  EXPECT_NEAR(p.north, g.latitude.in_degrees(), 1e-9);
}

TEST(Operation, LongitudeIsEastAndLatitudeNorth) {
  for (const char* code : {"EPSG:2193", "EPSG:6676", "EPSG:7855"}) {
    const Grid grid = Grid::open(code, kPlace);
    const AreaOfUse area = *grid.area_of_use();
    const GridPoint middle =
        grid.to_grid({(area.south_west.latitude + area.north_east.latitude) / 2,
                      (area.south_west.longitude + area.north_east.longitude) / 2});
    const ToWgs84 way = std::get<ToWgs84>(ToWgs84::search(grid, middle, kPlace));
    const Geographic g = way(middle);
    const Geographic own = grid.to_geographic(middle);
    EXPECT_NEAR((g.latitude - own.latitude).in_degrees(), 0, 1e-4)
        << code << " " << way.used().name;
    EXPECT_NEAR((g.longitude - own.longitude).in_degrees(), 0, 1e-4) << code;
    EXPECT_GT(way.used().accuracy.in_metres(), 0) << code;
  }
}

TEST(Operation, ProjectionOfOneDatumHasNoErrorOfItsOwn) {
  const Operation op = Operation::best("EPSG:7844", "EPSG:7855", near(-37.8, 144.9), kPlace);
  EXPECT_DOUBLE_EQ(op.used().accuracy.in_metres(), 0);
  const Position p = op.apply({144.9, -37.8, 12});
  EXPECT_NEAR(p.up, 12, 0);
  EXPECT_NEAR(p.east, 315120, 1000);
}

// The other grid by an independent library: zone 29, meridian 9 degrees west, GRS 80.
TEST(Operation, AnotherGridOfAnAlignedDatumToAMicrometre) {
  const Position at{715830.25, 734697.6, 62.35};
  const Operation there = Operation::best("EPSG:2157", "EPSG:25829", near(53.3, -6.3), kPlace);
  EXPECT_NE(there.used().name.find("IRENET95 to ETRS89 (1)"), std::string::npos);
  EXPECT_DOUBLE_EQ(there.used().accuracy.in_metres(), 0);
  const Position zone = there.apply(at);
  EXPECT_EQ(zone.up, 62.35);
  const Geographic g = Grid::open("EPSG:2157", kPlace).to_geographic(grid_point(at.east, at.north));
  const GeographicLib::TransverseMercator other(6378137, 1 / 298.257222101, 0.9996);
  double x = 0, y = 0;
  other.Forward(-9, g.latitude.in_degrees(), g.longitude.in_degrees(), x, y);
  EXPECT_NEAR(zone.east, x + 500000, 1e-6);
  EXPECT_NEAR(zone.north, y, 1e-6);
  const Position back =
      Operation::best("EPSG:25829", "EPSG:2157", near(53.3, -6.3), kPlace).apply(zone);
  EXPECT_NEAR(back.east, at.east, 1e-6);
  EXPECT_NEAR(back.north, at.north, 1e-6);
}

// Each of these comes back from the library without an error and without the height or the datum
// having been changed: 50.000 to 50.000.
TEST(Operation, MissingGridsAreNamed) {
  const auto text = [](const char* from, const char* to, Geographic at) {
    return testing::refusal_text([&] { Operation::best(from, to, at, kPlace); });
  };
  const std::string australian = text("EPSG:7843", "EPSG:9463", near(-37.8, 144.9));
  EXPECT_NE(australian.find("AUSGeoid2020"), std::string::npos) << australian;
  const std::string world = text("EPSG:4979", "EPSG:9518", near(52, 5));
  EXPECT_NE(world.find("egm2008"), std::string::npos) << world;
  const std::string british = text("EPSG:4937", "EPSG:7405", near(52.6, 1.7));
  EXPECT_NE(british.find("OSGM15"), std::string::npos) << british;
  const std::string american = text("EPSG:4267", "EPSG:4269", near(39, -98));
  EXPECT_NE(american.find("conus"), std::string::npos) << american;
}

TEST(Operation, ABallparkIsRefused) {
  // Puerto Rico's old datum and the Australian one: no transformation is known between them
  const std::string text = testing::refusal_text(
      [] { Operation::best("EPSG:7844", "EPSG:4139", near(-37.8, 144.9), kPlace); });
  EXPECT_NE(text.find("only a ballpark or none"), std::string::npos) << text;
}

TEST(Operation, NothingButFiniteNumbersComeOut_operation_2) {
  const Operation op = Operation::best("EPSG:4326", "EPSG:2157", near(53.3, -6.3), kPlace);
  const Position p = op.apply({-6.3, 53.3, 0});
  EXPECT_TRUE(std::isfinite(p.east) && std::isfinite(p.north));
  EXPECT_NE(testing::refusal_text([&] { op.apply({HUGE_VAL, 53.3, 0}); }), "");
  EXPECT_NE(testing::refusal_text([&] { op.apply({-6.3, 153.3, 0}); }), "");
}

// With PROJ_NETWORK=ON the library would count grids on the network as at hand.
TEST(Operation, TheNetworkIsNeverAsked_operation_3) {
  setenv("PROJ_NETWORK", "ON", 1);
  const std::string text = testing::refusal_text(
      [] { Operation::best("EPSG:7843", "EPSG:9463", near(-37.8, 144.9), kPlace); });
  unsetenv("PROJ_NETWORK");
  EXPECT_NE(text.find("AUSGeoid2020"), std::string::npos) << text;
}

// A world-wide system drifts from the plate's own by 7 cm a year there. Without a date the library
// takes the operation at its reference epoch, 2020, and says nothing.
TEST(Operation, ADateIsNeverSupposed_operation_4) {
  const auto at_alice = near(-23.67, 133.885);
  EXPECT_NE(testing::refusal_text([&] {
              Operation::best("EPSG:9000", "EPSG:7844", at_alice, kPlace);
            }).find("depends on the date of the positions; the year in which they were measured"),
            std::string::npos);
  const auto drift = [&](double year) {
    const Operation op = Operation::best("EPSG:9000", "EPSG:7844", at_alice, kPlace, year);
    return (op.apply({133.885, -23.67, 0}).north + 23.67) * 3600 * 30.77;
  };
  EXPECT_NEAR(drift(2020), 0, 1e-6);
  EXPECT_NEAR(drift(2015) - drift(2016), 0.059, 0.003);
}

TEST(Operation, AnInstalledGridFileIsTold) {
  const Operation op = Operation::best("EPSG:4979", "EPSG:9707", near(52, 5), kPlace);
  ASSERT_EQ(op.used().grid_files.size(), 1U);
  EXPECT_NE(op.used().grid_files[0].find("egm96_15"), std::string::npos);
  // formats of the library's own tests: h 100 at 52 N 5 E is 56.58 above the geoid of EGM96
  EXPECT_NEAR(op.apply({5, 52, 100}).up, 56.6, 0.3);
}

}  // namespace
}  // namespace squaredig::geodesy
