#include "formats/geotiff_write.h"

#include <gtest/gtest.h>

#include <limits>

#include "formats/json_internal.h"
#include "refusal_text.h"
#include "unit/formats/other_program.h"
#include "unit/formats/text_file.h"

namespace squaredig::formats {
namespace {

Raster sample() {
  Raster raster;
  raster.origin = grid_point(715830.25, 734697.6);
  raster.bearing = Bearing::degrees(37.5);
  raster.cell = Length::metres(0.5);
  raster.columns = 3;
  raster.rows = 2;
  raster.cells = {1.25, std::nullopt, -0.5, 0.1, 2.0, 3.0};
  raster.crs = "EPSG:2157";
  raster.description = "cut at the cell's centre, m";
  return raster;
}

// gdalinfo is the independent reader: another program, its own JSON.
#define NEEDS_GDALINFO() \
  if (!squaredig::testing::has_program("gdalinfo")) GTEST_SKIP() << "skipped: no gdalinfo"

Json info_of(const Raster& raster) {
  const auto file = squaredig::testing::text_file(geotiff_bytes(raster), "cut.tif");
  return Json::parse(
      squaredig::testing::output_of("(gdalinfo -json -stats '" + file.path + "' 2>/dev/null)"));
}

TEST(GeoTiff, SameRasterSameBytes_geotiff_1) {
  const std::string once = geotiff_bytes(sample());
  EXPECT_EQ(once, geotiff_bytes(sample()));
  EXPECT_EQ(once.substr(0, 4), std::string("II*\0", 4));
}

TEST(GeoTiff, AnotherProgramReadsIt) {
  NEEDS_GDALINFO();
  const Json info = info_of(sample());
  EXPECT_EQ(info["size"], (Json::array({3, 2})));
  const Json& band = info["bands"][0];
  EXPECT_EQ(band["type"], "Float32");
  EXPECT_EQ(band["noDataValue"], -9999.0);
  EXPECT_EQ(band["description"], "cut at the cell's centre, m");
  EXPECT_EQ(band["minimum"], -0.5);
  EXPECT_EQ(band["maximum"], 3.0);
  EXPECT_NE(info["coordinateSystem"]["wkt"].get<std::string>().find("ID[\"EPSG\",2157]"),
            std::string::npos);
}

TEST(GeoTiff, CellsLieAlongTheBearing_geotiff_2) {
  NEEDS_GDALINFO();
  const Raster raster = sample();
  const Json transform = info_of(raster)["geoTransform"];
  for (int row = 0; row < raster.rows; ++row)
    for (int column = 0; column < raster.columns; ++column) {
      const GridPoint centre = ahead(raster.origin, raster.bearing, raster.cell * (column + 0.5),
                                     raster.cell * (row + 0.5));
      const auto at = [&](std::size_t i) {
        return transform[i].get<double>() + transform[i + 1].get<double>() * (column + 0.5) +
               transform[i + 2].get<double>() * (row + 0.5);
      };
      EXPECT_NEAR(at(0), centre.easting.in_metres(), 1e-8);
      EXPECT_NEAR(at(3), centre.northing.in_metres(), 1e-8);
    }
}

TEST(GeoTiff, ALocalGridHasNoCrs) {
  NEEDS_GDALINFO();
  Raster raster = sample();
  raster.crs = "local";
  raster.bearing = Bearing::degrees(90);
  const Json info = info_of(raster);
  EXPECT_FALSE(info.contains("coordinateSystem") &&
               !info["coordinateSystem"]["wkt"].get<std::string>().empty());
  EXPECT_EQ(info["geoTransform"], (Json::array({715830.25, 0.5, 0.0, 734697.6, 0.0, -0.5})));
}

TEST(GeoTiff, Refusals) {
  Raster raster = sample();
  raster.crs = "EPSG:999999";
  EXPECT_EQ(
      squaredig::testing::refusal_text([&] { geotiff_bytes(raster); }),
      "job.toml:1:1: the CRS \"EPSG:999999\"; an EPSG code that PROJ knows; correct crs, or use "
      "\"local\"\n");
  raster = sample();
  raster.cells[0] = std::numeric_limits<double>::quiet_NaN();
  EXPECT_THROW(geotiff_bytes(raster), Refusal);
  raster = sample();
  raster.cells.pop_back();
  EXPECT_THROW(geotiff_bytes(raster), Refusal);
}

}  // namespace
}  // namespace squaredig::formats
