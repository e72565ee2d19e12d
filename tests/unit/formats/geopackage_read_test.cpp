// GeoPackages in: layers by name, heights, systems; and files that are none.
#include "formats/geopackage_read.h"

#include <gtest/gtest.h>

#include <filesystem>

#include "formats/geopackage_write.h"
#include "other_program.h"
#include "refusal_text.h"
#include "text_file.h"

namespace squaredig::formats {
namespace {

using squaredig::testing::output_of;
using squaredig::testing::refusal_text;
using squaredig::testing::text_file;

GpkgLayer points_layer(const std::string& name) {
  return {
      name,
      GpkgShape::Point,
      {{"name"}, {"code"}},
      {{{{grid_position(715830.25, 734697.6, 62.35)}}, {std::string("G\"1"), std::string("GL")}},
       {{{grid_position(715831.25, 734697.6, 63)}}, {std::string("T1"), std::string("TREE")}}}};
}

SourceFile package(std::vector<GpkgLayer> layers, const std::string& crs = "EPSG:2157") {
  GpkgOut out;
  out.crs = crs;
  out.layers = std::move(layers);
  SourceFile source = text_file(geopackage_bytes(out), "g.gpkg");
  source.grid = GridWanted{2157, 5731};
  return source;
}

std::string faults(const SourceFile& source) {
  return refusal_text([&] { read_geopackage_points(source); });
}

TEST(GeoPackageRead, PointsOfTheOnlyLayer) {
  SourceFile source = package({points_layer("ground")});
  const auto all = read_geopackage_points(source);
  ASSERT_EQ(all.points.size(), 2U);
  EXPECT_EQ(all.points.points[0].at, grid_position(715830.25, 734697.6, 62.35));
  EXPECT_EQ(all.points.label(0), "G\"1");
  EXPECT_EQ(all.points.code(1), "TREE");
  EXPECT_TRUE(all.assumed.empty());
  source.codes = {"GL"};
  EXPECT_EQ(read_geopackage_points(source).points.size(), 1U);
  for (const char* beside : {"-wal", "-shm", "-journal", ".aux.xml"})
    EXPECT_FALSE(std::filesystem::exists(source.path + beside)) << beside;
}

// Journals of another program are neither worked into the file nor taken away.
TEST(GeoPackageRead, AJournalBesideItIsLeftAloneAndRefused) {
  const SourceFile source = package({points_layer("ground")});
  for (const std::string ending : {"-wal", "-journal"}) {
    const std::string beside = source.path + ending;
    std::ofstream(beside) << "changes";
    EXPECT_EQ(faults(source),
              "g.gpkg:1:1: changes that are not in it yet, in \"g.gpkg" + ending +
                  "\"; a whole GeoPackage; close the program that has it open, or save a copy and "
                  "name that\n");
    EXPECT_EQ(squaredig::testing::content(beside), "changes");
    std::ofstream(beside, std::ios::trunc).close();
    EXPECT_EQ(faults(source), "");
    EXPECT_TRUE(std::filesystem::exists(beside));
    std::filesystem::remove(beside);
  }
}

TEST(GeoPackageRead, LayersByName) {
  SourceFile source = package({points_layer("ground"), points_layer("trees")});
  EXPECT_EQ(faults(source),
            "g.gpkg:1:1: layers \"ground\", \"trees\"; one layer, or the name of one; name it in "
            "the job: { file = \"...\", layer = \"...\" }\n");
  source.layer = "trees";
  EXPECT_EQ(faults(source), "");
  source.layer = "kerbs";
  EXPECT_EQ(faults(source),
            "g.gpkg:1:1: layers \"ground\", \"trees\"; a layer \"kerbs\"; name it in the job: { "
            "file = \"...\", layer = \"...\" }\n");
}

TEST(GeoPackageRead, ItsSystemIsHeldAgainstTheJobs) {
  EXPECT_EQ(faults(package({points_layer("ground")}, "EPSG:25832")),
            "g.gpkg:1:1: coordinate system \"EPSG:25832\"; EPSG:2157 as the job states; convert "
            "the file, or correct crs in the job\n");
  EXPECT_NE(faults(package({points_layer("ground")}, "EPSG:4326")).find("coordinates in degrees"),
            std::string::npos);
  const auto local = read_geopackage_points(package({points_layer("ground")}, "local"));
  EXPECT_EQ(local.assumed.back(),
            "g.gpkg: the file states no coordinate system; it is taken in EPSG:2157");
}

TEST(GeoPackageRead, Strings) {
  const GpkgLayer kerbs{
      "kerbs",
      GpkgShape::Line,
      {{"name"}},
      {{{{grid_position(0, 0, 1), grid_position(5, 0, 2)}}, {std::string("kerb")}},
       {{{grid_position(0, 9, 1), grid_position(5, 9, 2)}}, {std::monostate{}}}}};
  const SourceFile source = package({kerbs});
  const auto file = read_geopackage_strings(source, Heights::Needed);
  ASSERT_EQ(file.strings.size(), 2U);
  EXPECT_EQ(file.strings[0].name, "kerb");
  EXPECT_EQ(file.strings[1].name, "kerbs");
  EXPECT_EQ(file.strings[1].vertices[1].at, grid_position(5, 9, 2));
  EXPECT_EQ(faults(source),
            "g.gpkg:1:1: a LINESTRING; points; correct it and export it again\n"
            "g.gpkg:2:1: a LINESTRING; points; correct it and export it again\n");
}

// Written by another program: without heights, and with a polygon that has a hole.
TEST(GeoPackageRead, WhatAnotherProgramWrote) {
  if (!squaredig::testing::has_program("ogr2ogr")) GTEST_SKIP() << "skipped: no ogr2ogr";
  const auto converted = [](const std::string& geometry) {
    const SourceFile json = text_file(
        R"({"type":"FeatureCollection","crs":{"type":"name","properties":{"name":"EPSG:2157"}},)"
        R"("features":[{"type":"Feature","properties":{},"geometry":)" +
            geometry + "}]}",
        "in.geojson");
    SourceFile source = text_file("", "out.gpkg");
    std::filesystem::remove(source.path);
    output_of("ogr2ogr -f GPKG " + source.path + " " + json.path);
    source.grid = GridWanted{2157, 0};
    return source;
  };
  EXPECT_EQ(faults(converted(R"({"type":"Point","coordinates":[1,2]})")),
            "out.gpkg:1:1: a point without height; easting, northing and height; export the points "
            "with their heights\n");
  const SourceFile hole =
      converted(R"({"type":"Polygon","coordinates":[[[0,0,1],[9,0,1],[9,9,1],[0,0,1]],)"
                R"([[5,1,1],[6,1,1],[6,2,1],[5,1,1]]]})");
  EXPECT_NE(refusal_text([&] {
              read_geopackage_strings(hole, Heights::Needed);
            }).find("out.gpkg:1:1: a polygon with holes;"),
            std::string::npos);
}

TEST(GeoPackageRead, FilesThatAreNone) {
  for (const std::string& bytes : {std::string(), std::string("SQLite format 3\0", 16),
                                   std::string(5000, 'x'), std::string("{\"type\":\"Point\"}")})
    EXPECT_EQ(
        faults(text_file(bytes, "g.gpkg")).rfind("g.gpkg:1:1: a file that cannot be opened", 0),
        0U);
  const std::string good = [] {
    GpkgOut out;
    out.crs = "EPSG:2157";
    out.layers = {points_layer("ground")};
    return geopackage_bytes(out);
  }();
  for (const std::size_t size : {100U, 1000U, 5000U, 50000U})
    EXPECT_NE(faults(text_file(good.substr(0, size), "g.gpkg")), "") << size;
}

}  // namespace
}  // namespace squaredig::formats
