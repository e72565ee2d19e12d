#include "formats/pegs_drawing.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "formats/landxml_read.h"
#include "shared_data.h"
#include "unit/formats/made_pegs.h"
#include "unit/formats/other_program.h"
#include "unit/formats/text_file.h"

namespace squaredig::formats {
namespace {

using testing::ogr_values;
using testing::text_file;

LandXmlOut document() {
  LandXmlOut d;
  d.job = "Alderbrook school, car park tank";
  d.tool_version = "1";
  d.crs = "EPSG:2157";
  d.heights = "EPSG:5731";
  return d;
}

bool holds(const std::vector<std::string>& values, const std::string& wanted) {
  return std::find(values.begin(), values.end(), wanted) != values.end();
}

std::string listing(const std::string& bytes, const std::string& name) {
  const auto file = text_file(bytes, name);
  return testing::output_of("ogrinfo -ro -al '" + file.path + "'");
}

TEST(PegsDrawing, EveryLabelSurvivesInEveryFile_pegs_drawing_1) {
  if (!testing::has_program("ogrinfo")) GTEST_SKIP() << "skipped: no ogrinfo";
  const auto result = made_pegs();
  auto drawn = ogr_values(listing(pegs_dxf(result), "pegs.dxf"), "Text");
  for (std::string& label : drawn) label = testing::without_escapes(label);
  const auto mapped =
      ogr_values(listing(*pegs_geojson(result, "EPSG:2157"), "pegs.geojson"), "name");
  std::vector<std::string> exchanged;
  PointsWanted plan;
  plan.heights = Heights::Optional;
  const auto points =
      read_landxml_points(text_file(pegs_xml(result, document()), "pegs.xml"), plan).points;
  for (std::size_t i = 0; i < points.size(); ++i) exchanged.emplace_back(points.label(i));
  for (const std::string& label : hard_labels()) {
    EXPECT_TRUE(holds(drawn, label)) << label;
    EXPECT_TRUE(holds(mapped, label)) << label;
    EXPECT_TRUE(holds(exchanged, label)) << label;
  }
  for (const auto& peg : result.reference) {
    EXPECT_TRUE(holds(drawn, peg.name));
    EXPECT_TRUE(holds(mapped, peg.name));
    EXPECT_TRUE(holds(exchanged, peg.name));
  }
}

TEST(PegsDrawing, TheDrawingHasLayersForEverything) {
  if (!testing::has_program("ogrinfo")) GTEST_SKIP() << "skipped: no ogrinfo";
  const std::string text = listing(pegs_dxf(made_pegs()), "pegs.dxf");
  const auto on = [&](const std::string& layer) {
    return testing::count_of(text, "Layer (String) = " + layer + "\n");
  };
  EXPECT_EQ(on("PEGS"), 8U);
  EXPECT_EQ(on("STRING-LINES"), 4U);
  EXPECT_EQ(on("TANK"), 1U);
  EXPECT_EQ(on("PIT-TOE"), 4U);
  EXPECT_EQ(on("PIT-CREST"), 1U);
  EXPECT_EQ(on("PIPES"), hard_labels().size());
  EXPECT_NE(text.find("POINT Z (715854.25 734700.6 65.3)"), std::string::npos) << text;
}

TEST(PegsDrawing, RingsAreClosedAndRunAnticlockwise_pegs_drawing_2) {
  const auto j = nlohmann::json::parse(*pegs_geojson(made_pegs(), "EPSG:2157"));
  EXPECT_EQ(j["type"], "FeatureCollection");
  EXPECT_FALSE(j.contains("crs"));  // RFC 7946, section 4: no other reference system
  const auto& tank = j["features"].back();
  ASSERT_EQ(tank["geometry"]["type"], "Polygon");
  const auto& ring = tank["geometry"]["coordinates"][0];
  ASSERT_EQ(ring.size(), 5U);
  EXPECT_EQ(ring.front(), ring.back());
  double twice_area = 0;
  for (std::size_t i = 0; i + 1 < ring.size(); ++i)
    twice_area += (ring[i][0].get<double>() + 6.25) * (ring[i + 1][1].get<double>() - 53.35) -
                  (ring[i + 1][0].get<double>() + 6.25) * (ring[i][1].get<double>() - 53.35);
  EXPECT_GT(twice_area, 1e-9);
  const auto& peg = j["features"][3];
  EXPECT_EQ(peg["geometry"]["type"], "Point");
  EXPECT_EQ(peg["geometry"]["coordinates"].size(), 2U);
  EXPECT_EQ(peg["properties"]["easting"], 715854.25);
  EXPECT_EQ(peg["properties"]["height"], 65.3);
  EXPECT_TRUE(j["features"][7]["properties"]["height"].is_null());
}

TEST(PegsDrawing, WithoutLongitudesThereIsNoGeoJson) {
  auto result = made_pegs();
  result.geographic_way.reset();
  EXPECT_FALSE(pegs_geojson(result, "local"));
}

TEST(PegsDrawing, TheSchemaTakesThePoints_pegs_drawing_3) {
  SQUAREDIG_NEEDS_SHARED_DATA("landxml/LandXML-1.2.xsd");
  if (!testing::has_program("xmllint")) GTEST_SKIP() << "skipped: no xmllint";
  const auto file = text_file(pegs_xml(made_pegs(), document()), "pegs.xml");
  const std::string said = testing::output_of(
      "xmllint --noout --schema '" + testing::shared_data("landxml/LandXML-1.2.xsd").string() +
      "' '" + file.path + "'");
  EXPECT_NE(said.find("validates"), std::string::npos) << said;
}

}  // namespace
}  // namespace squaredig::formats
