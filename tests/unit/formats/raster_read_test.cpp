// Rasters in: ASCII grids and GeoTIFF give the same points at the cells' centres.
#include "formats/raster_read.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>

#include "other_program.h"
#include "refusal_text.h"
#include "shared_data.h"
#include "unit/formats/text_file.h"

namespace squaredig::formats {
namespace {

using squaredig::testing::output_of;
using squaredig::testing::refusal_text;
using squaredig::testing::text_file;

const std::string kHead = "ncols 3\nnrows 2\nxllcorner 100\nyllcorner 200\ncellsize 10\n";

std::string faults(const std::string& bytes) {
  return refusal_text([&] { read_ascii_grid_points(text_file(bytes, "d.asc")); });
}

// The ASCII grid turned into GeoTIFF by another program.
SourceFile as_tiff(const std::string& ascii, const std::string& options) {
  const SourceFile grid = text_file(ascii, "in.asc");
  SourceFile source = text_file("", "out.tif");
  output_of("gdal_translate -q -of GTiff " + options + " " + grid.path + " " + source.path);
  source.grid = GridWanted{2157, 0};
  return source;
}

TEST(AsciiGrid, HeightsAtTheCentresOfTheCells_raster_2) {
  const auto file = read_ascii_grid_points(
      text_file(kHead + "NODATA_value -9999\n1 2 -9999\n4 5.5 6\n", "d.asc"));
  ASSERT_EQ(file.points.size(), 5U);
  EXPECT_EQ(file.points.points[0].at, grid_position(105, 215, 1));
  EXPECT_EQ(file.points.points[2].at, grid_position(105, 205, 4));
  EXPECT_EQ(file.points.points[3].at, grid_position(115, 205, 5.5));
  EXPECT_EQ(file.points.points[3].line, 8U);
  EXPECT_EQ(file.record.read, 6U);
  EXPECT_EQ(file.record.set_aside, (std::vector<SetAside>{{7, "the cell has no data"}}));
}

TEST(AsciiGrid, CornerAndCentre) {
  const auto file = read_ascii_grid_points(text_file(
      "NROWS 1\r\nNCOLS 1\r\nXLLCENTER 7\r\nYLLCENTER 8\r\nDX 2\r\nDY 4\r\n3\r\n", "d.asc"));
  EXPECT_EQ(file.points.points[0].at, grid_position(7, 8, 3));
}

TEST(AsciiGrid, Faults) {
  EXPECT_EQ(faults(kHead + "1 2 3 4 5"),
            "d.asc:6:10: the file ends after 5 cells; 6 cells, ncols times nrows; export the grid "
            "again\n");
  EXPECT_EQ(faults(kHead + "1 2 3\n4 5 6 7"),
            "d.asc:7:7: more than 6 cells; ncols times nrows cells; export the grid again\n");
  EXPECT_EQ(faults(kHead + "1 2 3\n4 1,5 nan"),
            "d.asc:7:3: \"1,5\" is not a number; a number with a decimal point; export "
            "the grid again\n"
            "d.asc:7:7: \"nan\" is not a number; a number with a decimal point; export "
            "the grid again\n");
  EXPECT_EQ(faults(kHead + "1 2 3\n4 5 -9999"),
            "d.asc:7:5: a height of -9999 and no value stated for cells without data; the value "
            "that means no data; state it in the raster\n");
  EXPECT_EQ(faults("ncols 3\nnrows 2\n1 2 3 4 5 6"),
            "d.asc:1:1: no cellsize in the header; an ASCII grid with its header; export the grid "
            "again\n"
            "d.asc:1:1: no xllcorner in the header; an ASCII grid with its header; export the grid "
            "again\n"
            "d.asc:1:1: no yllcorner in the header; an ASCII grid with its header; export the grid "
            "again\n");
  EXPECT_EQ(faults("ncols 1e9\nnrows 2\nxllcorner 1\nyllcorner 1\ncellsize 0\n1"),
            "d.asc:1:1: 2e+09 cells; 1e9 cells at most; export a smaller area\n"
            "d.asc:1:1: a cell size that is not above 0; a size above 0; export the grid again\n");
  EXPECT_EQ(faults("ncols 2.5\nnrows -1\nxllcorner 1\nyllcorner 1\ncellsize 1\n1"),
            "d.asc:1:1: ncols 2.5; a whole number above 0; export the grid again\n"
            "d.asc:1:1: nrows -1; a whole number above 0; export the grid again\n");
  EXPECT_EQ(faults("ncols 1\nncols 1\nheight 5"),
            "d.asc:2:1: ncols twice; each key once; export the grid again\n"
            "d.asc:3:1: \"height\" in the header; ncols, nrows, xllcorner or xllcenter, yllcorner "
            "or yllcenter, cellsize or dx and dy, nodata_value; export the grid again\n");
  EXPECT_NE(faults(std::string(500000, 'a')).find("d.asc:1:1: a word of more than 64 letters"),
            std::string::npos);
  EXPECT_NE(faults(""), "");
}

TEST(GeoTiffRead, TheSamePointsAsTheAsciiGrid) {
  if (!squaredig::testing::has_program("gdal_translate")) GTEST_SKIP() << "no gdal_translate";
  const std::string ascii = kHead + "NODATA_value -9999\n1.1 2 -9999\n4 5.5 6\n";
  const auto wanted = read_ascii_grid_points(text_file(ascii, "d.asc"));
  for (const char* options : {"-a_srs EPSG:2157 -ot Float32",
                              "-a_srs EPSG:2157 -ot Float32 -co TILED=YES -co COMPRESS=DEFLATE",
                              "-a_srs EPSG:2157 -mo AREA_OR_POINT=Point"}) {
    SCOPED_TRACE(options);
    const auto file = read_geotiff_points(as_tiff(ascii, options));
    ASSERT_EQ(file.points.size(), wanted.points.size());
    for (std::size_t i = 0; i < wanted.points.size(); ++i)
      EXPECT_EQ(file.points.points[i].at, wanted.points.points[i].at);
    EXPECT_EQ(file.record.set_aside, (std::vector<SetAside>{{3, "the cell has no data"}}));
    EXPECT_TRUE(file.assumed.empty());
  }
}

TEST(GeoTiffRead, WholeNumbersAndLongOnes) {
  if (!squaredig::testing::has_program("gdal_translate")) GTEST_SKIP() << "no gdal_translate";
  for (const char* type : {"Float64", "Int16", "Byte"}) {
    const auto file = read_geotiff_points(
        as_tiff(kHead + "1 2 3\n4 5 60\n", std::string("-a_srs EPSG:2157 -ot ") + type));
    EXPECT_EQ(file.points.points[5].at, grid_position(125, 205, 60)) << type;
  }
}

TEST(GeoTiffRead, SystemsUnitsAndBands) {
  if (!squaredig::testing::has_program("gdal_translate")) GTEST_SKIP() << "no gdal_translate";
  const std::string ascii = kHead + "1 2 3\n4 5 6\n";
  const auto tiff_faults = [&](const std::string& options) {
    const SourceFile source = as_tiff(ascii, options);
    return refusal_text([&] { read_geotiff_points(source); });
  };
  EXPECT_EQ(tiff_faults("-a_srs EPSG:32617"),
            "out.tif:1:1: coordinate system \"EPSG:32617\"; EPSG:2157 as the job states; convert "
            "the file, or correct crs in the job\n");
  EXPECT_NE(tiff_faults("-a_srs EPSG:4326").find("coordinates in degrees, \"EPSG:4326\";"),
            std::string::npos);
  EXPECT_NE(tiff_faults("-a_srs EPSG:2157 -b 1 -b 1").find("2 bands; one band of heights;"),
            std::string::npos);
  EXPECT_NE(tiff_faults("-a_srs EPSG:2157 -a_scale 2").find("values scaled by 2 with offset 0;"),
            std::string::npos);
  SourceFile datum = as_tiff(ascii, "-a_srs EPSG:2157+5731");
  datum.grid = GridWanted{2157, 5731};
  EXPECT_TRUE(read_geotiff_points(datum).assumed.empty());
  datum.grid = GridWanted{2157, 5773};
  EXPECT_EQ(refusal_text([&] { read_geotiff_points(datum); }),
            "out.tif:1:1: heights in EPSG:5731; EPSG:5773 as the job states; convert the file, or "
            "correct heights in the job\n");
  SourceFile local = as_tiff(ascii, "-a_srs EPSG:2903");
  local.grid = GridWanted{};
  EXPECT_EQ(read_geotiff_points(local).points.points[0].at,
            grid_position(105 * (1200.0 / 3937.0), 215 * (1200.0 / 3937.0), 1200.0 / 3937.0));
}

// A row of two hundred million cells in a file of a few hundred bytes.
TEST(GeoTiffRead, SizesThatAreOnlyClaimedTakeNoMemory) {
  if (!squaredig::testing::has_program("gdal_create")) GTEST_SKIP() << "no gdal_create";
  const SourceFile wide = text_file("", "wide.tif");
  output_of(
      "gdal_create -q -of GTiff -ot Byte -outsize 200000000 1 -co SPARSE_OK=TRUE -a_srs "
      "EPSG:2157 -a_ullr 0 1 200000000 0 " +
      wide.path);
  EXPECT_LT(std::filesystem::file_size(wide.path), 4096U);
  EXPECT_EQ(refusal_text([&] { read_geotiff_points(wide); }),
            "wide.tif:1:1: rows of 200000000 cells in blocks of 200000000 by 1; a row of blocks of "
            "256 MB at most; export it in strips or tiles\n");
  // what lies beside a raster is not looked at
  const SourceFile source = as_tiff(kHead + "1 2 3\n4 5 6\n", "-a_srs EPSG:2157");
  const auto alone = read_geotiff_points(source);
  for (const char* const ending : {".aux.xml", ".ovr", ".msk"})
    std::ofstream(source.path + ending)
        << "<PAMDataset><GeoTransform>0, 1, 0, 10, 0, -1</GeoTransform></PAMDataset>";
  EXPECT_EQ(read_geotiff_points(source).points.points[0].at, alone.points.points[0].at);
  for (const char* const ending : {".aux.xml", ".ovr", ".msk"})
    std::filesystem::remove(source.path + ending);
}

TEST(RealRaster, TheKnownCellsAndHeights_raster_1) {
  SQUAREDIG_NEEDS_SHARED_DATA("dem/pre_runout_DEM.asc");
  SourceFile source;
  source.path = squaredig::testing::shared_data("dem/pre_runout_DEM.asc").string();
  source.name = "dem.asc";
  PointsWanted window;
  window.keep = [](const GridPosition& p) { return p.at.easting < Easting::metres(361100); };
  const auto file = read_ascii_grid_points(source);
  EXPECT_EQ(file.record.read, 80U * 122U);
  EXPECT_EQ(file.points.size(), 9638U);
  const auto& points = file.points.points;
  const auto [low, high] = std::minmax_element(
      points.begin(), points.end(),
      [](const SurveyPoint& a, const SurveyPoint& b) { return a.at.height < b.at.height; });
  EXPECT_EQ(low->at.height.in_metres(), 189.0281);
  EXPECT_EQ(high->at.height.in_metres(), 582.3846);
  EXPECT_NEAR(points[0].at.at.easting.in_metres(), 361020.59563119, 1e-6);
  const auto kept = read_ascii_grid_points(source, window);
  EXPECT_LT(kept.points.size(), 1100U);
  EXPECT_EQ(kept.record.used, 9638U);
  // the geoid grid is in degrees
  source.path = squaredig::testing::shared_data("geoid/test_vgrid_pixelispoint.tif").string();
  EXPECT_NE(refusal_text([&] { read_geotiff_points(source); }).find("coordinates in degrees"),
            std::string::npos);
}

}  // namespace
}  // namespace squaredig::formats
