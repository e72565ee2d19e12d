// GeoJSON in: points and strings, strictly.
#include "formats/geojson_read.h"

#include <gtest/gtest.h>

#include "refusal_text.h"
#include "unit/formats/text_file.h"

namespace squaredig::formats {
namespace {

using squaredig::testing::refusal_text;
using squaredig::testing::text_file;

const std::string kCrs =
    R"("crs":{"type":"name","properties":{"name":"urn:ogc:def:crs:EPSG::2157"}},)";

std::string collection(const std::string& features, const std::string& crs = kCrs) {
  return R"({"type":"FeatureCollection",)" + crs + "\"features\":[" + features + "]}";
}
std::string feature(const std::string& geometry, const std::string& properties = "{}") {
  return R"({"type":"Feature","properties":)" + properties + ",\n\"geometry\":" + geometry + "}";
}
std::string point(const std::string& at, const std::string& properties = "{}") {
  return feature(R"({"type":"Point","coordinates":)" + at + "}", properties);
}
SourceFile file_of(const std::string& bytes) {
  SourceFile source = text_file(bytes, "g.json");
  source.grid = GridWanted{2157, 5731};
  return source;
}
std::string faults(const std::string& bytes) {
  return refusal_text([&] { read_geojson_points(file_of(bytes)); });
}
std::string string_faults(const std::string& bytes) {
  return refusal_text([&] { read_geojson_strings(file_of(bytes), Heights::Needed); });
}

TEST(GeoJsonRead, PointsWithLabelsAndCodes) {
  SourceFile source = file_of(collection(
      point("[715830.25,734697.6,62.35]", R"({"point":"G \"1\"","code":"GL"})") + "," +
      point("[1,2,3]", R"({"name":7,"code":"TREE"})") + "," +
      feature(R"({"type":"MultiPoint","coordinates":[[1,2,3],[4,5e0,-6.5]]})", R"({"code":"GL"})") +
      "," + feature("null")));
  const auto all = read_geojson_points(source);
  ASSERT_EQ(all.points.size(), 4U);
  EXPECT_EQ(all.points.points[0].at, grid_position(715830.25, 734697.6, 62.35));
  EXPECT_EQ(all.points.label(0), "G \"1\"");
  EXPECT_EQ(all.points.label(1), "7");
  EXPECT_EQ(all.points.points[3].at, grid_position(4, 5, -6.5));
  EXPECT_EQ(all.points.points[1].line, 3U);
  EXPECT_TRUE(all.assumed.empty());
  EXPECT_EQ(all.record.set_aside, (std::vector<SetAside>{{5, "the feature has no geometry"}}));
  source.codes = {"GL"};
  EXPECT_EQ(refusal_text([&] { read_geojson_points(source); }), "");
  const auto ground = read_geojson_points(source);
  EXPECT_EQ(ground.points.size(), 3U);
  EXPECT_EQ(ground.record.read, 5U);
}

TEST(GeoJsonRead, CodesThatAreAskedForMustBeThere) {
  SourceFile source = file_of(collection(point("[1,2,3]")));
  source.codes = {"GL"};
  EXPECT_EQ(refusal_text([&] { read_geojson_points(source); }),
            "g.json:2:51: a point without the property code; its code; export the codes too\n");
}

TEST(GeoJsonRead, WithoutAStatedSystemItIsInDegrees_geojson_1) {
  for (const char* at : {"[-6.2,53.3,10]", "[715830.25,734697.6,62.35]"})
    EXPECT_EQ(faults(collection(point(at), "")),
              "g.json:1:1: coordinates in degrees, \"a GeoJSON file without the member crs\"; "
              "EPSG:2157; export the file in the job's coordinate system\n");
  EXPECT_NE(faults(collection(point("[1,2,3]"),
                              R"("crs":{"type":"name","properties":{"name":"EPSG:4326"}},)"))
                .find("coordinates in degrees, \"EPSG:4326\"; EPSG:2157;"),
            std::string::npos);
  EXPECT_NE(faults(collection(point("[1,2,3]"), R"("crs":{"type":"name","properties":{"name":)"
                                                R"("urn:ogc:def:crs:OGC:1.3:CRS84"}},)"))
                .find("coordinates in degrees"),
            std::string::npos);
}

TEST(GeoJsonRead, ItsSystemIsHeldAgainstTheJobs) {
  const auto with = [](const std::string& name) {
    return collection(point("[1,2,3]"),
                      R"("crs":{"type":"name","properties":{"name":")" + name + "\"}},");
  };
  EXPECT_EQ(faults(with("EPSG:2157")), "");
  EXPECT_EQ(faults(with("urn:ogc:def:crs:EPSG:9.9:2157")), "");
  EXPECT_EQ(faults(with("EPSG:25832")),
            "g.json:1:1: coordinate system \"EPSG:25832\"; EPSG:2157 as the job states; convert "
            "the file, or correct crs in the job\n");
  EXPECT_EQ(faults(with("somewhere")),
            "g.json:1:1: coordinate system \"somewhere\"; EPSG:2157 as the job states; convert the "
            "file, or correct crs in the job\n");
  EXPECT_EQ(read_geojson_points(file_of(collection(point("[1,2,3]"), "\"crs\":null,"))).assumed,
            (std::vector<std::string>{
                "g.json: the file has no units; its lengths are taken in m",
                "g.json: the file states no coordinate system; it is taken in EPSG:2157"}));
  EXPECT_NE(faults(collection(point("[1,2,3]"),
                              R"("crs":{"type":"link","properties":{"href":"/etc/passwd"}},)"))
                .find("a coordinate system that is not given by name;"),
            std::string::npos);
}

TEST(GeoJsonRead, PositionsThatAreNone) {
  EXPECT_EQ(faults(collection(point("[1,2]"))),
            "g.json:2:49: a point without height; easting, northing and height; export the points "
            "with their heights\n");
  EXPECT_EQ(faults(collection(point("[1]") + "," + point("[1,2,3,4]") + "," + point("[\"1\",2,3]") +
                              "," + point("[1,null,3]") + "," + point("7"))),
            "g.json:2:47: a position of 1 numbers in a Point; easting, northing and height; export "
            "the file again\n"
            "g.json:3:53: a position of 4 numbers in a Point; easting, northing and height; export "
            "the file again\n"
            "g.json:4:53: a position of a Point that is no array of numbers; easting, northing and "
            "height; export the file again\n"
            "g.json:5:54: a position of a Point that is no array of numbers; easting, northing and "
            "height; export the file again\n"
            "g.json:6:45: a position of a Point that is no array of numbers; easting, northing and "
            "height; export the file again\n");
}

TEST(GeoJsonRead, TextThatIsNoGeoJson) {
  EXPECT_EQ(faults(""), "g.json:1:1: an empty file; a GeoJSON file; export the file again\n");
  EXPECT_EQ(faults("{\"type\":\n\"Feature\",,}").substr(0, 34),
            "g.json:2:12: text that is not JSON");
  EXPECT_EQ(faults(collection(point("[1,2,1e999]"))).substr(0, 34),
            "g.json:2:53: text that is not JSON");
  EXPECT_NE(faults(collection(point("[1,2,NaN]"))).find(": text that is not JSON"),
            std::string::npos);
  EXPECT_EQ(
      faults(collection(R"({"type":"Feature","type":"Feature","geometry":null})")).substr(0, 67),
      "g.json:1:138: the key \"type\" twice in one object; each key once; ex");
  EXPECT_NE(faults(std::string(100000, '[')).find("g.json:1:67: values nested more than 64 deep"),
            std::string::npos);
  EXPECT_NE(faults("[]").find("a geometry without a type;"), std::string::npos);
  EXPECT_NE(faults("7").find("a geometry without a type;"), std::string::npos);
  EXPECT_NE(faults(R"({"type":"FeatureCollection","features":{}})")
                .find("a FeatureCollection without an array of features;"),
            std::string::npos);
  EXPECT_NE(faults(collection("7")).find("a feature that is no object;"), std::string::npos);
  EXPECT_NE(faults(collection(R"({"type":"feature","geometry":null})"))
                .find("an object without type Feature;"),
            std::string::npos);
  EXPECT_NE(faults(collection(R"({"type":"Feature"})")).find("without the member geometry;"),
            std::string::npos);
  EXPECT_NE(faults(collection(feature(R"({"type":"GeometryCollection","geometries":[]})")))
                .find("a geometry of type \"GeometryCollection\";"),
            std::string::npos);
  EXPECT_EQ(faults(collection(feature(R"({"type":"LineString","coordinates":[[1,2,3],[4,5,6]]})"))),
            "g.json:2:66: a LineString; points; export them to a file of their own\n");
  EXPECT_EQ(faults(collection("")),
            "g.json:1:1: no points; a file with points; export the points\n");
}

TEST(GeoJsonRead, StringsFromLinesAndRings) {
  const auto file = read_geojson_strings(
      file_of(
          "\xEF\xBB\xBF" +
          collection(
              feature(R"({"type":"LineString","coordinates":[[1,2,3],[4,5,6]]})",
                      R"({"string":"kerb"})") +
              "," +
              feature(R"({"type":"MultiLineString","coordinates":[[[1,2,3],[4,5,6]],)"
                      R"([[7,8,9],[1,1,1]]]})") +
              "," +
              feature(R"({"type":"Polygon","coordinates":[[[0,0,1],[9,0,1],[9,9,1],[0,0,1]]]})"))),
      Heights::Needed);
  ASSERT_EQ(file.strings.size(), 4U);
  EXPECT_EQ(file.strings[0].name, "kerb");
  EXPECT_EQ(file.strings[1].name, "MultiLineString 1");
  EXPECT_EQ(file.strings[2].vertices[0].at, grid_position(7, 8, 9));
  EXPECT_EQ(file.strings[3].vertices.size(), 4U);
  EXPECT_NE(string_faults(
                collection(feature(
                    R"({"type":"Polygon","coordinates":[[[0,0,1],[9,0,1],[9,9,1]],[[1,1,1]]]})")))
                .find("a Polygon; polygons without holes;"),
            std::string::npos);
  EXPECT_NE(string_faults(collection(feature(R"({"type":"LineString","coordinates":[[1,2,3]]})")))
                .find("string \"LineString\" has a single vertex;"),
            std::string::npos);
  EXPECT_NE(
      string_faults(collection(feature(R"({"type":"LineString","coordinates":[[1,2],[2,3]]})")))
          .find("a vertex without height, of string \"LineString\";"),
      std::string::npos);
}

}  // namespace
}  // namespace squaredig::formats
