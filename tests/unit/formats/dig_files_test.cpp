// dig.xml, dig.dxf and dig.gpkg, each read back by another program.
#include "formats/dig_files.h"

#include <gtest/gtest.h>

#include "made_dig.h"
#include "other_program.h"
#include "shared_data.h"
#include "text_file.h"

namespace squaredig::formats {
namespace {

using testing::count_of;
using testing::made_dig;
using testing::made_reference;
using testing::output_of;
using testing::text_file;

LandXmlOut document() {
  LandXmlOut document;
  document.job = "pit & sons";
  document.tool_version = "0";
  document.crs = "EPSG:2157";
  document.heights = "local";
  return document;
}

std::string gpkg(const std::string& crs) {
  GpkgOut out;
  out.crs = crs;
  return dig_gpkg(made_dig(), made_reference(), out);
}

TEST(DigFiles, TheSchemaTakesIt_dig_files_1) {
  SQUAREDIG_NEEDS_SHARED_DATA("landxml/LandXML-1.2.xsd");
  if (!testing::has_program("xmllint")) GTEST_SKIP() << "skipped: no xmllint";
  const auto file = text_file(dig_xml(made_dig(), document()), "dig.xml");
  const std::string schema = testing::shared_data("landxml/LandXML-1.2.xsd").string();
  EXPECT_NE(
      output_of("xmllint --noout --schema '" + schema + "' '" + file.path + "'").find(" validates"),
      std::string::npos);
}

TEST(DigFiles, VolumesAndBreaklinesStandInTheDocument) {
  const std::string xml = dig_xml(made_dig(), document());
  EXPECT_NE(xml.find("surfBase=\"existing ground\" surfCompare=\"excavated surface\" "
                     "volCut=\"123.456789012345\" volFill=\"0.5\""),
            std::string::npos)
      << xml;
  EXPECT_EQ(count_of(xml, "<Breakline "), 2U);
  EXPECT_EQ(count_of(xml, "<F>"), 4U);
  EXPECT_NE(xml.find("1 mm further out"), std::string::npos);
}

TEST(DigFiles, SameBytes_dig_files_2) {
  EXPECT_EQ(dig_xml(made_dig(), document()), dig_xml(made_dig(), document()));
  EXPECT_EQ(dig_dxf(made_dig()), dig_dxf(made_dig()));
  EXPECT_EQ(gpkg("EPSG:2157"), gpkg("EPSG:2157"));
}

TEST(DigFiles, AnotherProgramReadsTheDrawing_dig_files_3) {
  if (!testing::has_program("ogrinfo")) GTEST_SKIP() << "skipped: no ogrinfo";
  const auto file = text_file(dig_dxf(made_dig()), "dig.dxf");
  const std::string listing = output_of("ogrinfo -al '" + file.path + "'");
  EXPECT_EQ(count_of(listing, "Layer (String) = FACES"), 4U) << listing;
  EXPECT_EQ(count_of(listing, "Layer (String) = PIT-TOE"), 1U);
  EXPECT_EQ(count_of(listing, "Layer (String) = PIT-CREST"), 1U);
  EXPECT_EQ(count_of(listing, "Layer (String) = CELLS"), 8U);
  EXPECT_EQ(count_of(listing, "Layer (String) = CELL-CUTS"), 1U);
  EXPECT_NE(listing.find("Text (String) = 2.13"), std::string::npos) << listing;
  EXPECT_NE(listing.find("715832 734699 61.45"), std::string::npos) << listing;
}

TEST(DigFiles, AnotherProgramReadsTheGeoPackage) {
  if (!testing::has_program("ogrinfo")) GTEST_SKIP() << "skipped: no ogrinfo";
  const auto file = text_file(gpkg("EPSG:2157"), "dig.gpkg");
  const std::string listing = output_of("ogrinfo -al '" + file.path + "'");
  for (const char* layer : {"toe", "crest", "cells", "faces", "pegs"})
    EXPECT_NE(listing.find(std::string("Layer name: ") + layer + "\n"), std::string::npos)
        << listing;
  EXPECT_EQ(count_of(listing, "ID[\"EPSG\",2157]"), 5U);
  EXPECT_EQ(count_of(listing, "OGRFeature(cells)"), 2U);
  EXPECT_EQ(count_of(listing, "OGRFeature(faces)"), 4U);
  EXPECT_NE(listing.find("name (String) = A1\n"), std::string::npos);
  EXPECT_NE(listing.find("POINT Z (715820.25 734690.5 63.875)"), std::string::npos) << listing;
  EXPECT_NE(listing.find("cut_at_centre (Real) = 2.13\n"), std::string::npos);
  EXPECT_NE(listing.find("kind (String) = vertical face\n"), std::string::npos);
  EXPECT_EQ(listing.find("ERROR"), std::string::npos) << listing;
  EXPECT_EQ(listing.find("Warning"), std::string::npos) << listing;
}

}  // namespace
}  // namespace squaredig::formats
