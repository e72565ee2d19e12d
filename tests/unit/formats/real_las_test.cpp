// LAS files of the PDAL test data (BSD-3): counts, classes and extents are those of the list of
// known truths beside them.
#include <gtest/gtest.h>

#include <algorithm>

#include "formats/las_read.h"
#include "refusal_text.h"
#include "shared_data.h"

namespace squaredig::formats {
namespace {

using squaredig::testing::refusal_text;

SourceFile shared(const std::string& file) {
  SourceFile source;
  source.path = squaredig::testing::shared_data("las/" + file).string();
  source.name = file;
  return source;
}

std::size_t count_of(const std::string& file, const std::string& code) {
  SourceFile source = shared(file);
  source.codes = {code};
  return read_las_points(source).points.size();
}

TEST(RealLas, SimpleCountsClassesAndExtent) {
  SQUAREDIG_NEEDS_SHARED_DATA("las/simple.las");
  SourceFile source = shared("simple.las");
  source.unit = LengthUnit::Foot;
  const auto file = read_las_points(source);
  EXPECT_EQ(file.points.size(), 1065U);
  // counted by the specification's layout of format 3, in Python
  EXPECT_EQ(file.cautions.back(),
            "simple.las: of the points that are taken 164 lie above a later return of their pulse");
  EXPECT_EQ(count_of("simple.las", "1"), 789U);
  EXPECT_EQ(count_of("simple.las", "2"), 276U);
  EXPECT_NEAR(file.extent.low().easting.in_metres() / 0.3048, 635619.85, 0.005);
  EXPECT_NEAR(file.extent.high().easting.in_metres() / 0.3048, 638982.55, 0.005);
  EXPECT_NEAR(file.extent.low().northing.in_metres() / 0.3048, 848899.70, 0.005);
  EXPECT_NEAR(file.extent.high().northing.in_metres() / 0.3048, 853535.43, 0.005);
  const auto by_height = [](const SurveyPoint& a, const SurveyPoint& b) {
    return a.at.height < b.at.height;
  };
  const auto& points = file.points.points;
  const auto [low, high] = std::minmax_element(points.begin(), points.end(), by_height);
  EXPECT_NEAR(low->at.height.in_metres() / 0.3048, 406.59, 0.005);
  EXPECT_NEAR(high->at.height.in_metres() / 0.3048, 586.38, 0.005);
}

TEST(RealLas, ExtraBytesAreThePointsOfTheFileWithoutThem) {
  SQUAREDIG_NEEDS_SHARED_DATA("las/extrabytes.las");
  const auto plain = read_las_points(shared("simple.las"));
  const auto extra = read_las_points(shared("extrabytes.las"));
  ASSERT_EQ(extra.points.size(), 1065U);
  for (std::size_t i = 0; i < plain.points.size(); ++i)
    EXPECT_EQ(extra.points.points[i].at, plain.points.points[i].at);
}

TEST(RealLas, OtherCountsOfTheList) {
  SQUAREDIG_NEEDS_SHARED_DATA("las/autzen-thin.las");
  EXPECT_EQ(read_las_points(shared("autzen-thin.las")).points.size(), 10653U);
  EXPECT_EQ(count_of("autzen-thin.las", "2"), 2719U);
  EXPECT_EQ(read_las_points(shared("1.2-empty-geotiff-vlrs.las")).points.size(), 43U);
  for (const char* file : {"1.0_0", "1.0_1", "1.1_0", "1.1_1"}) {
    SourceFile source = shared(std::string("permutations/") + file + ".las");
    source.grid = GridWanted{26915, 0};
    const auto read = read_las_points(source);
    ASSERT_EQ(read.points.size(), 1U);
    EXPECT_NEAR(read.points.points[0].at.at.easting.in_metres(), 470692.44, 1e-6);
    EXPECT_NEAR(read.points.points[0].at.at.northing.in_metres(), 4602888.9, 1e-6);
    EXPECT_EQ(read.points.points[0].at.height.in_metres(), 16.0);
  }
}

TEST(RealLas, ItsCoordinateSystemIsHeldAgainstTheJobs) {
  SQUAREDIG_NEEDS_SHARED_DATA("las/test_utm17.las");
  SourceFile source = shared("test_utm17.las");
  source.grid = GridWanted{32617, 0};
  const auto file = read_las_points(source);
  EXPECT_EQ(file.points.size(), 10U);
  EXPECT_TRUE(file.assumed.empty());
  source.grid = GridWanted{2157, 0};
  EXPECT_EQ(refusal_text([&] { read_las_points(source); }),
            "test_utm17.las:1:1: coordinate system \"EPSG:32617\"; EPSG:2157 as the job states; "
            "convert the file, or correct crs in the job\n");
}

// Its WKT states the US survey foot, EPSG:2903.
TEST(RealLas, FeetByWkt) {
  SQUAREDIG_NEEDS_SHARED_DATA("las/test1_4.las");
  SourceFile source = shared("test1_4.las");
  source.grid = GridWanted{};
  const auto file = read_las_points(source);
  EXPECT_EQ(file.points.size(), 1000U);
  EXPECT_NEAR(file.extent.low().easting.in_metres() * 3937 / 1200, 1694038.4456376971, 1e-5);
  EXPECT_NEAR(file.extent.high().northing.in_metres() * 3937 / 1200, 1816497.9762628325, 1e-5);
}

TEST(RealLas, CompressedPointsAreRefusedInWords) {
  SQUAREDIG_NEEDS_SHARED_DATA("las/simple.laz");
  EXPECT_EQ(refusal_text([&] { read_las_points(shared("simple.laz")); }),
            "simple.laz:1:1: compressed points (LAZ); a LAS file, which is not compressed; "
            "convert it with the program that made it, and name the .las file\n");
}

}  // namespace
}  // namespace squaredig::formats
