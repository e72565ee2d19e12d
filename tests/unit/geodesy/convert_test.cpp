#include "geodesy/convert.h"

#include <gtest/gtest.h>

#include <GeographicLib/TransverseMercator.hpp>
#include <cmath>

#include "geodesy/grid.h"
#include "refusal_text.h"

namespace squaredig::geodesy {
namespace {

const Place kPlace{"ground.csv", 1, 1};
const Length kExact;
std::string refusal(const std::vector<Position>& points, const char* from, const char* to,
                    Length worst) {
  return testing::refusal_text([&] { convert(points, from, to, worst, kPlace); });
}

TEST(Convert, TheJobsOwnSystemChangesNothing_convert_1) {
  const Converted same =
      convert({{715830.2537, 734697.6011, 62.35}}, "EPSG:2157", "EPSG:2157", kExact, kPlace);
  EXPECT_FALSE(same.used);
  EXPECT_EQ(same.points[0].east, 715830.2537);
  EXPECT_EQ(same.points[0].north, 734697.6011);
  EXPECT_EQ(same.points[0].up, 62.35);
  // one system under two names, whose axes stand in another order
  EXPECT_FALSE(convert({{-6.3, 53.3, 9}}, "EPSG:4326", "OGC:CRS84", kExact, kPlace).used);
}

TEST(Convert, ThereAndBackIsTheSamePoint_convert_2) {
  // Alderbrook school in the Irish grid and in zone 29 of ETRS89
  const Position at{715830.25, 734697.6, 62.35};
  const Converted zone = convert({at}, "EPSG:2157", "EPSG:25829", kExact, kPlace);
  ASSERT_TRUE(zone.used);
  EXPECT_NE(zone.used->name.find("IRENET95 to ETRS89 (1)"), std::string::npos) << zone.used->name;
  EXPECT_DOUBLE_EQ(zone.used->accuracy.in_metres(), 0);
  EXPECT_EQ(zone.points[0].up, 62.35);
  // the other grid by an independent library: zone 29, central meridian 9 degrees west, GRS 80
  const Geographic g = Grid::open("EPSG:2157", kPlace).to_geographic(grid_point(at.east, at.north));
  const GeographicLib::TransverseMercator other(6378137, 1 / 298.257222101, 0.9996);
  double x = 0, y = 0;
  other.Forward(-9, g.latitude.in_degrees(), g.longitude.in_degrees(), x, y);
  EXPECT_NEAR(zone.points[0].east, x + 500000, 1e-6);
  EXPECT_NEAR(zone.points[0].north, y, 1e-6);
  const Converted back = convert(zone.points, "EPSG:25829", "EPSG:2157", kExact, kPlace);
  EXPECT_NEAR(back.points[0].east, at.east, 1e-6);
  EXPECT_NEAR(back.points[0].north, at.north, 1e-6);
}

TEST(Convert, LongitudesAndNorthingFirstKeepTheirMeaning) {
  // New Zealand's grid declares northing first
  const Converted p = convert({{174.8, -41.3, 3}}, "EPSG:4167", "EPSG:2193", kExact, kPlace);
  const GridPoint own =
      Grid::open("EPSG:2193", kPlace).to_grid({Angle::degrees(-41.3), Angle::degrees(174.8)});
  EXPECT_NEAR(p.points[0].east, own.easting.in_metres(), 1e-9);
  EXPECT_NEAR(p.points[0].north, own.northing.in_metres(), 1e-9);
}

TEST(Convert, NothingComesByAWayLessAccurateThanAsked_convert_3) {
  const std::vector<Position> points = {{-6.3, 53.3, 0}};
  EXPECT_EQ(refusal(points, "EPSG:4326", "EPSG:2157", Length::millimetres(10)),
            "ground.csv:1:1: the way from EPSG:4326 to EPSG:2157 (Inverse of IRENET95 to WGS 84 "
            "(1) + Irish Transverse Mercator) is good to 1 m only; a way good to 0.01 m; export "
            "the file in the job's own reference system\n");
  const Converted told = convert(points, "EPSG:4326", "EPSG:2157", Length::metres(1), kPlace);
  EXPECT_DOUBLE_EQ(told.used->accuracy.in_metres(), 1);
  // neither a ballpark nor a missing grid file, however little is asked for
  const Length anything = Length::metres(1000);
  EXPECT_NE(refusal({{144.9, -37.8, 0}}, "EPSG:7844", "EPSG:4139", anything).find("ballpark"),
            std::string::npos);
  EXPECT_NE(refusal({{144.9, -37.8, 50}}, "EPSG:7843", "EPSG:9463", anything).find("AUSGeoid2020"),
            std::string::npos);
  EXPECT_NE(refusal({{1e30, 734697.6, 0}}, "EPSG:2157", "EPSG:25829", anything), "");
}

}  // namespace
}  // namespace squaredig::geodesy
