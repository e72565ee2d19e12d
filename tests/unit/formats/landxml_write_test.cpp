#include "formats/landxml_write.h"

#include <gtest/gtest.h>

#include <limits>

#include "formats/landxml_read.h"
#include "shared_data.h"
#include "unit/formats/other_program.h"
#include "unit/formats/text_file.h"

namespace squaredig::formats {
namespace {

using squaredig::testing::text_file;

LandXmlOut sample() {
  LandXmlOut document;
  document.job = "Alderbrook school <car park> & \"yard\"";
  document.tool_version = "0.1.0";
  document.date = std::chrono::year(2026) / 3 / 2;
  document.crs = "EPSG:2157";
  document.heights = "EPSG:5731";
  SurfaceMesh mesh;
  mesh.name = "excavated surface";
  mesh.vertices = {
      grid_position(715830.25, 734697.6, 62.35), grid_position(715830.25 + 1.0 / 3, 734697.6, 62.1),
      grid_position(715831, 734698.123456789, 1e-7), grid_position(715832, 734699, -0.1)};
  mesh.faces = {{0, 1, 2}, {0, 2, 3}};
  SurveyString kerb{"kerb", "", {{mesh.vertices[0]}, {mesh.vertices[2]}}};
  SurveyString outline{"edge", "", {{mesh.vertices[0], false}, {mesh.vertices[1], false}}};
  document.surfaces.push_back({mesh, "as dug", {kerb, outline}, Area::square_metres(0.5), {}});
  document.volumes.push_back({"ground", "excavated surface", Volume::cubic_metres(188.1199424),
                              Volume::cubic_metres(0.25), "cut from the ground"});
  document.points_name = "pegs";
  document.points = {
      {"A1", "PEG", "beyond A, \"3.0\" m", grid_point(1.5, 2.5), Elevation::metres(3)},
      {"=1+1", "", "", grid_point(4, 5), std::nullopt},
      {"S\xC3\xBC"
       "d\x01\tx\xFF",
       "", "", grid_point(4, 5), Elevation::metres(1)}};
  return document;
}

TEST(LandXmlWrite, WhatWasWrittenIsReadBack_landxml_1) {
  const LandXmlOut document = sample();
  SourceFile file = text_file(landxml_text(document), "dig.xml");
  file.grid = GridWanted{2157, 0};
  const auto surface = read_landxml_surface(file);
  const SurfaceMesh& mesh = document.surfaces[0].mesh;
  EXPECT_EQ(surface.mesh.name, mesh.name);
  EXPECT_EQ(surface.mesh.vertices, mesh.vertices);
  EXPECT_EQ(surface.mesh.faces, mesh.faces);
  EXPECT_TRUE(surface.assumed.empty());
  const auto strings = read_landxml_breaklines(file, Heights::Optional).strings;
  ASSERT_EQ(strings.size(), 2U);
  EXPECT_EQ(strings[0].vertices[1].at, mesh.vertices[2]);
  EXPECT_FALSE(strings[1].vertices[0].has_height);
  PointsWanted plan;
  plan.heights = Heights::Optional;
  const auto points = read_landxml_points(file, plan).points;
  ASSERT_EQ(points.size(), 3U);
  EXPECT_EQ(points.points[0].at, grid_position(1.5, 2.5, 3));
  EXPECT_EQ(points.label(1), "=1+1");
  EXPECT_FALSE(points.points[1].has_height);
  EXPECT_EQ(points.label(2),
            "S\xC3\xBC"
            "d\xEF\xBF\xBD\tx\xEF\xBF\xBD");
}

TEST(LandXmlWrite, TheSchemaTakesIt_landxml_write_1) {
  SQUAREDIG_NEEDS_SHARED_DATA("landxml/LandXML-1.2.xsd");
  if (!squaredig::testing::has_program("xmllint")) GTEST_SKIP() << "skipped: no xmllint";
  LandXmlOut bare;
  bare.job = "bare";
  LandXmlOut points = sample();
  points.surfaces.clear();
  int number = 0;
  for (const LandXmlOut& document : {sample(), bare, points}) {
    const auto file = text_file(landxml_text(document), std::to_string(++number) + ".xml");
    const std::string command =
        "xmllint --noout --schema '" +
        squaredig::testing::shared_data("landxml/LandXML-1.2.xsd").string() + "' '" + file.path +
        "'";
    EXPECT_EQ(squaredig::testing::output_of(command), file.path + " validates\n")
        << landxml_text(document);
  }
}

// A grid of so many columns and rows, with coordinates of many digits and of few.
SurfaceMesh grid_mesh(std::int32_t columns, std::int32_t rows) {
  SurfaceMesh mesh;
  mesh.name = "grid";
  for (std::int32_t r = 0; r < rows; ++r)
    for (std::int32_t c = 0; c < columns; ++c)
      mesh.vertices.push_back(grid_position(300000 + c, 5800000 + r * 0.001, (c - r) / 3.0));
  for (std::int32_t r = 0; r + 1 < rows; ++r)
    for (std::int32_t c = 0; c + 1 < columns; ++c) {
      const std::int32_t a = r * columns + c;
      mesh.faces.push_back({a, a + 1, a + columns});
      mesh.faces.push_back({a + 1, a + columns + 1, a + columns});
    }
  return mesh;
}

TEST(LandXmlWrite, PiecesMadeBackToFrontAreTheText_landxml_write_2) {
  auto document = std::make_shared<LandXmlOut>(sample());
  document->surfaces.push_back({grid_mesh(300, 200), "large", {}, {}, {}});
  const FilePieces pieces = landxml_pieces(document);
  EXPECT_GT(pieces.size(), 10U);
  std::vector<std::string> made(pieces.size());
  for (std::size_t i = pieces.size(); i-- > 0;) made[i] = pieces[i]();
  std::string text;
  for (const std::string& piece : made) text += piece;
  EXPECT_EQ(text, landxml_text(*document));
  const std::string last = "<P id=\"60000\">5800000.199 300299 33.333333333333336</P>\n</Pnts>";
  EXPECT_NE(text.find(last), std::string::npos);
  EXPECT_NE(text.find("<F>59700 60000 59999</F>"), std::string::npos);
}

TEST(LandXmlWrite, SameBytesOnAnyDay) {
  LandXmlOut document = sample();
  EXPECT_EQ(landxml_text(document), landxml_text(document));
  document.date.reset();
  EXPECT_NE(landxml_text(document).find("date=\"1970-01-01\""), std::string::npos);
  EXPECT_NE(landxml_text(sample()).find("date=\"2026-03-02\""), std::string::npos);
}

TEST(LandXmlWrite, RefusesNan) {
  LandXmlOut document = sample();
  document.surfaces[0].mesh.vertices[0].height =
      Elevation::metres(std::numeric_limits<double>::quiet_NaN());
  EXPECT_THROW(landxml_text(document), Refusal);
}

}  // namespace
}  // namespace squaredig::formats
