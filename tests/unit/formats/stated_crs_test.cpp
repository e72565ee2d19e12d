// Coordinate systems and units that files state, held against the job's.
#include <gtest/gtest.h>

#include "formats/las_read.h"
#include "refusal_text.h"
#include "unit/formats/made_las.h"
#include "unit/formats/text_file.h"

namespace squaredig::formats {
namespace {

using squaredig::testing::geo_keys;
using squaredig::testing::las_bytes;
using squaredig::testing::MadeLas;
using squaredig::testing::refusal_text;
using squaredig::testing::text_file;

constexpr unsigned kGeoKeys = 34735;
constexpr unsigned kWkt = 2112;
using Keys = std::vector<std::pair<unsigned, unsigned>>;

SourceFile with_keys(const Keys& keys, int epsg = 0) {
  MadeLas made;
  made.records = {{kGeoKeys, geo_keys(keys)}};
  SourceFile source = text_file(las_bytes(made), "c.las");
  source.codes = {"1", "2"};
  source.grid = GridWanted{epsg, epsg == 0 ? 0 : 5731};
  return source;
}

// WKT 1 of the register's own texts, shortened to what names and sizes need.
std::string wkt_of(const std::string& unit, const std::string& size, const std::string& code) {
  return "PROJCS[\"a grid\",GEOGCS[\"ETRS89\",DATUM[\"European_Terrestrial_Reference_System_1989\","
         "SPHEROID[\"GRS 1980\",6378137,298.257222101]],PRIMEM[\"Greenwich\",0],"
         "UNIT[\"degree\",0.0174532925199433]],PROJECTION[\"Transverse_Mercator\"],"
         "PARAMETER[\"latitude_of_origin\",0],PARAMETER[\"central_meridian\",9],"
         "PARAMETER[\"scale_factor\",0.9996],PARAMETER[\"false_easting\",500000],"
         "PARAMETER[\"false_northing\",0],UNIT[\"" +
         unit + "\"," + size + "]" + (code.empty() ? "" : ",AUTHORITY[\"EPSG\",\"" + code + "\"]") +
         "]";
}

SourceFile with_wkt(const std::string& wkt, int epsg = 0) {
  MadeLas made;
  made.minor = 4;
  made.format = 6;
  made.wkt_flag = true;
  made.records = {{kWkt, wkt}};
  SourceFile source = text_file(las_bytes(made), "c.las");
  source.codes = {"1", "2"};
  source.grid = GridWanted{epsg, 0};
  return source;
}

std::string faults(const SourceFile& source) {
  return refusal_text([&] { read_las_points(source); });
}

double first_height(const SourceFile& source) {
  return read_las_points(source).points.points[0].at.height.in_metres();
}
double first_easting(const SourceFile& source) {
  return read_las_points(source).points.points[0].at.at.easting.in_metres();
}
const double kEast = 100250 * 0.001 + 715000;
const double kUp = 62000 * 0.001;

TEST(StatedCrs, TheJobsOwnIsTakenAndAnotherRefused) {
  EXPECT_EQ(first_easting(with_keys({{1024, 1}, {3072, 25832}}, 25832)), kEast);
  EXPECT_EQ(faults(with_keys({{1024, 1}, {3072, 32617}}, 25832)),
            "c.las:1:1: coordinate system \"EPSG:32617\"; EPSG:25832 as the job states; convert "
            "the file, or correct crs in the job\n");
}

TEST(StatedCrs, OnALocalGridItIsTold) {
  const auto file = read_las_points(with_keys({{1024, 1}, {3072, 32617}, {4096, 5703}}));
  EXPECT_EQ(file.cautions,
            (std::vector<std::string>{
                "c.las: the file states the coordinate system \"EPSG:32617\"; on a local grid it "
                "is taken as it stands",
                "c.las: the file states the height system EPSG:5703; in local heights it is taken "
                "as it stands"}));
}

TEST(StatedCrs, NothingStatedIsAssumedToBeTheJobs) {
  SourceFile source = text_file(las_bytes({}), "c.las");
  source.grid = GridWanted{2157, 5731};
  EXPECT_EQ(read_las_points(source).assumed,
            (std::vector<std::string>{
                "c.las: the file has no units; its lengths are taken in m",
                "c.las: the file states no coordinate system; it is taken in EPSG:2157"}));
}

TEST(StatedCrs, DegreesAreNeverMetres_stated_crs_1) {
  for (const int epsg : {0, 2157})
    EXPECT_EQ(faults(with_keys({{1024, 2}, {2048, 4326}}, epsg)).substr(0, 54),
              "c.las:1:1: coordinates in degrees, \"EPSG:4326\"; " +
                  std::string(epsg == 0 ? "metres o" : "EPSG:215").substr(0, 6));
  EXPECT_NE(faults(with_wkt("GEOGCS[\"x\",DATUM[\"D\",SPHEROID[\"S\",6378137,298.2]],"
                            "PRIMEM[\"Greenwich\",0],UNIT[\"degree\",0.0174532925199433]]"))
                .find("coordinates in degrees, \"x\"; metres on the job's grid;"),
            std::string::npos);
}

TEST(StatedCrs, AUnitAgainstItsSystemOrTheJobIsRefused_stated_crs_2) {
  EXPECT_EQ(faults(with_keys({{1024, 1}, {3072, 25832}, {3076, 9002}}, 25832)),
            "c.las:1:1: lengths in ft; m of EPSG:25832; export the file again, in one unit\n");
  EXPECT_EQ(faults(with_keys({{1024, 1}, {3072, 2903}, {3076, 9001}})),
            "c.las:1:1: lengths in m; us-ft of EPSG:2903; export the file again, in one unit\n");
  EXPECT_EQ(faults(with_wkt(wkt_of("metre", "1", "2903"))),
            "c.las:1:1: lengths in m; us-ft of EPSG:2903; export the file again, in one unit\n");
  SourceFile asked = with_keys({{1024, 1}, {3072, 25832}}, 25832);
  asked.unit = LengthUnit::Foot;
  EXPECT_EQ(faults(asked),
            "c.las:1:1: lengths in m of EPSG:25832; ft as the job states; correct "
            "units in the job, or the file\n");
}

TEST(StatedCrs, FeetAreExactHoweverTheyAreSpelled_stated_crs_3) {
  const double foot = 1200.0 / 3937.0;
  EXPECT_EQ(first_height(with_keys({{3076, 9003}})), kUp * foot);
  EXPECT_EQ(first_height(with_keys({{3076, 9002}})), kUp * 0.3048);
  EXPECT_EQ(first_height(with_keys({{3076, 9003}, {4099, 9001}})), kUp);
  EXPECT_EQ(first_easting(with_keys({{3076, 9003}, {4099, 9001}})), kEast * foot);
  EXPECT_EQ(first_easting(with_wkt(wkt_of("US survey foot", "0.3048006096012192", ""))),
            kEast * foot);
  EXPECT_EQ(first_easting(with_wkt(wkt_of("Foot_US", "0.304800609601219", ""))), kEast * foot);
  EXPECT_EQ(first_easting(with_wkt(wkt_of("foot", "0.3048", ""))), kEast * 0.3048);
  SourceFile source = text_file(las_bytes({}), "c.las");
  source.unit = LengthUnit::UsSurveyFoot;
  EXPECT_EQ(first_easting(source), kEast * foot);
}

TEST(StatedCrs, HeightsOfAnotherSystemAreRefused) {
  EXPECT_EQ(faults(with_keys({{1024, 1}, {3072, 25832}, {4096, 5703}}, 25832)),
            "c.las:1:1: heights in EPSG:5703; EPSG:5731 as the job states; convert the file, or "
            "correct heights in the job\n");
}

TEST(StatedCrs, ADescriptionWithoutACodeIsComparedWithTheJobs) {
  EXPECT_EQ(faults(with_wkt(wkt_of("metre", "1", ""), 25832)), "");
  EXPECT_EQ(faults(with_wkt(wkt_of("metre", "1", ""), 25833)),
            "c.las:1:1: coordinate system \"a grid\"; EPSG:25833 as the job states; convert the "
            "file, or correct crs in the job\n");
}

TEST(StatedCrs, AnExactWayIsTakenAndTold) {
  SourceFile source = with_keys({{1024, 1}, {3072, 25833}}, 25832);
  source.grid->way_from = [](int epsg, const Place&) {
    return CrsWay{[](double e, double n) { return grid_point(n + 1, e + 2); },
                  "taken over from EPSG:" + std::to_string(epsg)};
  };
  const auto file = read_las_points(source);
  EXPECT_EQ(file.points.points[0].at.at, grid_point(200500 * 0.001 + 734000 + 1, kEast + 2));
  EXPECT_EQ(file.assumed.back(), "c.las: taken over from EPSG:25833");
  EXPECT_EQ(file.extent.low().northing, Northing::metres(kEast + 2));
}

TEST(StatedCrs, RecordsBehindThePointsAndTheFlagThatChooses) {
  MadeLas made;
  made.minor = 4;
  made.format = 6;
  made.wkt_flag = true;
  made.late_records = {{7, std::string(500, 'x')}, {kWkt, wkt_of("foot", "0.3048", "")}};
  EXPECT_EQ(first_height(text_file(las_bytes(made), "c.las")), kUp * 0.3048);
  made.records = {{kGeoKeys, geo_keys({{3076, 9003}})}};
  EXPECT_EQ(first_height(text_file(las_bytes(made), "c.las")), kUp * 0.3048);
  made.wkt_flag = false;
  EXPECT_EQ(first_height(text_file(las_bytes(made), "c.las")), kUp * (1200.0 / 3937.0));
}

TEST(StatedCrs, BrokenRecordsAreRefused) {
  EXPECT_EQ(faults(with_wkt("PROJCS[\"cut off")),
            "c.las:1:1: a coordinate system in WKT that cannot be read: \"PROJCS[\"cut off\"; WKT "
            "as OGC 01-009 or ISO 19162 describe it; export the file again\n");
  EXPECT_EQ(faults(with_keys({{3072, 1}})),
            "c.las:1:1: the coordinate system EPSG:1; a code that the register has; correct it in "
            "the file, or export the file again\n");
  EXPECT_EQ(faults(with_keys({{3076, 9005}})),
            "c.las:1:1: the unit of code 9005; 9001 metre, 9002 foot or 9003 US survey foot; "
            "export the file in metres\n");
  EXPECT_EQ(faults(with_keys({{1024, 3}})),
            "c.las:1:1: geocentric coordinates; easting, northing and height; export the file in "
            "the job's coordinate system\n");
  MadeLas made;
  made.records = {{kGeoKeys, geo_keys({{1024, 1}}).substr(0, 8)}};
  std::string bytes = las_bytes(made);
  EXPECT_EQ(faults(text_file(bytes, "c.las")),
            "c.las:1:1: GeoTIFF keys that are cut off; as many keys as their directory counts; "
            "export the file again\n");
  squaredig::testing::put(bytes, 227 + 20, std::uint16_t{60000});
  EXPECT_EQ(faults(text_file(bytes, "c.las")),
            "c.las:1:1: variable length record 1 of 1 reaches into the points; records that end "
            "where the points begin; export the file again\n");
}

}  // namespace
}  // namespace squaredig::formats
