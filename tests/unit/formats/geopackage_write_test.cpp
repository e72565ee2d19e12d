// GeoPackages, read back by another program.
#include "formats/geopackage_write.h"

#include <gtest/gtest.h>

#include <limits>

#include "other_program.h"
#include "refusal_text.h"
#include "text_file.h"

namespace squaredig::formats {
namespace {

using testing::output_of;
using testing::text_file;

GpkgOut sample(const std::string& crs = "EPSG:2157") {
  GpkgOut out;
  out.crs = crs;
  out.date = std::chrono::year{2026} / 3 / 2;
  GpkgLayer lines{"lines",
                  GpkgShape::Line,
                  {{"name", GpkgType::Text}, {"length", GpkgType::Number}, {"n", GpkgType::Count}},
                  {}};
  lines.features.push_back({{{grid_position(1.1, 2.2, 3.3), grid_position(4.4, 5.5, 6.6)}},
                            {std::string("Bör\"d, line"), 1.0 / 3, 7LL}});
  lines.features.push_back({{{grid_position(0, 0, 0), grid_position(1, 0, 0)}},
                            {std::monostate{}, std::monostate{}, std::monostate{}}});
  GpkgLayer holes{"holes", GpkgShape::Polygon, {{"name", GpkgType::Text}}, {}};
  holes.features.push_back(
      {{{grid_position(0, 0, 1), grid_position(9, 0, 1), grid_position(9, 9, 1)},
        {grid_position(5, 1, 1), grid_position(8, 1, 1), grid_position(8, 4, 1)}},
       {std::string("with a hole")}});
  out.layers = {lines, holes};
  return out;
}

TEST(GeoPackage, SameBytesOnAnyDay_geopackage_1) {
  EXPECT_EQ(geopackage_bytes(sample()), geopackage_bytes(sample()));
  EXPECT_EQ(geopackage_bytes(sample("local")), geopackage_bytes(sample("local")));
  EXPECT_NE(geopackage_bytes(sample()).find("2026-03-02T00:00:00.000Z"), std::string::npos);
}

TEST(GeoPackage, AnotherProgramReadsItAll_geopackage_2) {
  if (!testing::has_program("ogrinfo")) GTEST_SKIP() << "skipped: no ogrinfo";
  const auto file = text_file(geopackage_bytes(sample()), "sample.gpkg");
  const std::string listing = output_of("ogrinfo -al '" + file.path + "'");
  EXPECT_NE(listing.find("LINESTRING Z (1.1 2.2 3.3,4.4 5.5 6.6)"), std::string::npos) << listing;
  EXPECT_NE(listing.find("name (String) = Bör\"d, line"), std::string::npos);
  EXPECT_NE(listing.find("n (Integer64) = 7"), std::string::npos);
  EXPECT_NE(listing.find("0.333333333333333"), std::string::npos);
  EXPECT_NE(listing.find("(null)"), std::string::npos);
  EXPECT_NE(listing.find("POLYGON Z ((0 0 1,9 0 1,9 9 1,0 0 1),(5 1 1,8 1 1,8 4 1,5 1 1))"),
            std::string::npos)
      << listing;
}

TEST(GeoPackage, ALocalGridIsCartesian) {
  if (!testing::has_program("ogrinfo")) GTEST_SKIP() << "skipped: no ogrinfo";
  const auto file = text_file(geopackage_bytes(sample("local")), "local.gpkg");
  const std::string listing = output_of("ogrinfo -so '" + file.path + "' lines");
  EXPECT_NE(listing.find("Undefined Cartesian SRS"), std::string::npos) << listing;
  EXPECT_EQ(listing.find("degree"), std::string::npos) << listing;
}

TEST(GeoPackage, RefusesWhatItCannotWrite) {
  EXPECT_NE(testing::refusal_text([] { geopackage_bytes(sample("EPSG:0")); }).find("EPSG:0"),
            std::string::npos);
  auto bad = sample();
  bad.layers[0].features[0].rings[0][0] =
      grid_position(std::numeric_limits<double>::quiet_NaN(), 0, 0);
  EXPECT_NE(testing::refusal_text([&] { geopackage_bytes(bad); }).find("layer lines"),
            std::string::npos);
  // the next file is whole again
  EXPECT_EQ(geopackage_bytes(sample()), geopackage_bytes(sample()));
}

}  // namespace
}  // namespace squaredig::formats
