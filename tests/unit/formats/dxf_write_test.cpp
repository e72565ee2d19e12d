#include "formats/dxf_write.h"

#include <gtest/gtest.h>

#include <limits>

#include "quantity/problem.h"
#include "unit/formats/made_pegs.h"
#include "unit/formats/other_program.h"
#include "unit/formats/text_file.h"

namespace squaredig::formats {
namespace {

using testing::ogr_values;

// The listing of another reader; empty where it is not installed.
std::string listing(const std::string& drawing) {
  const auto file = testing::text_file(drawing, "drawing.dxf");
  return testing::output_of("ogrinfo -ro -al '" + file.path + "'");
}

DxfText sheet() {
  DxfText dxf;
  dxf.layer("PEGS", DxfColour::Red).layer("PIT-CREST", DxfColour::Blue);
  return dxf;
}

TEST(DxfWrite, EveryLabelIsReadBack_dxf_write_1) {
  if (!testing::has_program("ogrinfo")) GTEST_SKIP() << "skipped: no ogrinfo";
  DxfText dxf = sheet();
  auto labels = hard_labels();
  labels.push_back("50^J caret ^");
  labels.push_back("\\P \\M+nXXXX {x} 100%%");
  labels.push_back("\xF0\x9F\x98\x80 beyond sixteen bits");
  for (const std::string& label : labels)
    dxf.text("PEGS", grid_point(715830, 734697), label, Length::metres(0.5));
  const auto read = ogr_values(listing(dxf.take()), "Text");
  ASSERT_EQ(read.size(), labels.size());
  for (std::size_t i = 0; i < labels.size(); ++i)
    EXPECT_EQ(testing::without_escapes(read[i]), labels[i]);
}

TEST(DxfWrite, ALabelTooLongForAStringGoesOnBelow) {
  if (!testing::has_program("ogrinfo")) GTEST_SKIP() << "skipped: no ogrinfo";
  std::string label;
  for (int i = 0; i < 64; ++i) label += i % 2 == 0 ? "\xE5\x85\xA5" : "\xE5\x8F\xA3";
  DxfText dxf = sheet();
  dxf.text("PEGS", grid_point(0, 0), label, Length::metres(0.5));
  std::string read;
  for (const std::string& piece : ogr_values(listing(dxf.take()), "Text")) {
    EXPECT_LT(piece.size(), 256U);
    read += testing::without_escapes(piece);
  }
  EXPECT_EQ(read, label);
}

TEST(DxfWrite, TheSameContentGivesTheSameBytes_dxf_write_2) {
  const auto drawn = [] {
    return sheet().point("PEGS", grid_point(715830.25, 734697.6), Elevation::metres(65.1)).take();
  };
  EXPECT_EQ(drawn(), drawn());
  EXPECT_NE(drawn().find("AC1009"), std::string::npos);
  EXPECT_NE(drawn().find("\n 10\n715830.25\n 20\n734697.6\n 30\n65.1\n"), std::string::npos);
}

TEST(DxfWrite, ATriangleKeepsItsHeights_dxf_write_3) {
  if (!testing::has_program("ogrinfo")) GTEST_SKIP() << "skipped: no ogrinfo";
  DxfText dxf = sheet();
  dxf.triangle("PIT-CREST",
               {grid_position(0, 0, 1), grid_position(1, 0, 1.5), grid_position(1, 1, 2)});
  dxf.polyline("PIT-CREST",
               {grid_position(0, 0, 1), grid_position(1, 0, 1.25), grid_position(1, 1, 2)},
               DxfRing::Closed);
  dxf.polyline("PIT-CREST", {grid_position(0, 0, 1), grid_position(1, 0, 1.25)}, DxfRing::Open);
  dxf.line("PEGS", grid_point(5, 6), grid_point(7, 8));
  dxf.point("PEGS", grid_point(1, 2), std::nullopt);
  const std::string text = listing(dxf.take());
  EXPECT_NE(text.find("POLYGON Z ((0 0 1,1 0 1.5,1 1 2,0 0 1))"), std::string::npos) << text;
  EXPECT_NE(text.find("LINESTRING Z (0 0 1,1 0 1.25,1 1 2,0 0 1)"), std::string::npos) << text;
  EXPECT_NE(text.find("LINESTRING Z (0 0 1,1 0 1.25)"), std::string::npos) << text;
  EXPECT_NE(text.find("LINESTRING Z (5 6 0,7 8 0)"), std::string::npos) << text;
  EXPECT_NE(text.find("POINT (1 2)"), std::string::npos) << text;
  EXPECT_EQ(testing::count_of(text, "Layer (String) = PIT-CREST"), 3U);
}

TEST(DxfWrite, RefusesWhatItCannotDraw) {
  DxfText dxf = sheet();
  EXPECT_THROW(dxf.point("LOST", grid_point(0, 0), std::nullopt), Refusal);
  EXPECT_THROW(
      dxf.point("PEGS", grid_point(std::numeric_limits<double>::quiet_NaN(), 0), std::nullopt),
      Refusal);
}

}  // namespace
}  // namespace squaredig::formats
