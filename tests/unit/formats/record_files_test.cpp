// record.gpkg read back by another program.
#include "formats/record_files.h"

#include <gtest/gtest.h>

#include "made_dig.h"
#include "other_program.h"
#include "text_file.h"

namespace squaredig::formats {
namespace {

using testing::count_of;
using testing::made_dig;
using testing::made_reference;
using testing::output_of;
using testing::text_file;

struct Made {
  record::RecordResult record;
  pegs::PegsResult pegs;
  dig::DigResult dig = made_dig();
  base::BaseResult base;
  fill::FillResult fill;

  Made() {
    record.tank_designed = dig.toe;
    record.tank_built = dig.toe;
    record.tank_built->front().height = Elevation::metres(61.475);
    pegs.reference = made_reference();
    pegs.as_set.emplace();
    pegs.as_set->points = {
        {"A1", grid_point(715829.5, 734697), {}, {}, Length::millimetres(30), {}}};
    base::JudgedPoint point;
    point.point = "B \"7\"";
    point.at = grid_position(715831, 734698, 61.515);
    point.deviation = Length::millimetres(18.25);
    point.place = {"as-dug.csv", 45, 1};
    point.verdict = Verdict::DoesNotConform;
    base.points = {point};
    base.compaction = {{"base",
                        grid_point(715831, 734698),
                        {"tests.csv", 2, 1},
                        Ratio::percent(96.5),
                        Verdict::Conforms}};
    fill::LayerBuilt layer;
    layer.name = "cap 1";
    layer.verdict = Verdict::Conforms;
    layer.points = {{"L1", grid_position(715831, 734698, 63.0), Length::millimetres(152.5)}};
    fill.layers = {layer};
  }
  std::string bytes(const std::string& crs) const {
    GpkgOut out;
    out.crs = crs;
    return record_gpkg({record, &pegs, &dig, &base, &fill}, out);
  }
};

TEST(RecordFiles, SameBytes_record_files_1) {
  EXPECT_EQ(Made().bytes("EPSG:2157"), Made().bytes("EPSG:2157"));
}

TEST(RecordFiles, AnotherProgramReadsTheLayers_record_files_2) {
  if (!testing::has_program("ogrinfo")) GTEST_SKIP() << "skipped: no ogrinfo";
  const auto file = text_file(Made().bytes("EPSG:2157"), "record.gpkg");
  const std::string told = output_of("ogrinfo -ro -al '" + file.path + "'");
  for (const char* layer :
       {"tank", "toe", "crest", "faces", "pegs", "pegs_as_set", "base_points", "layers", "tests"})
    EXPECT_NE(told.find("Layer name: " + std::string(layer) + "\n"), std::string::npos) << layer;
  EXPECT_EQ(count_of(told, "ID[\"EPSG\",2157]"), 9U);
  EXPECT_NE(told.find("state (String) = as built"), std::string::npos);
  EXPECT_NE(told.find("61.475"), std::string::npos);
  EXPECT_NE(told.find("point (String) = B \"7\""), std::string::npos);
  EXPECT_NE(told.find("deviation_mm (Real) = 18.25"), std::string::npos);
  EXPECT_NE(told.find("verdict (String) = does not conform"), std::string::npos);
  EXPECT_NE(told.find("thickness_mm (Real) = 152.5"), std::string::npos);
  EXPECT_NE(told.find("planned_mm (Real) = (null)"), std::string::npos);
  EXPECT_NE(told.find("percent (Real) = 96.5"), std::string::npos);
  EXPECT_NE(told.find("along_mm (Real) = 30"), std::string::npos);
  EXPECT_NE(told.find("POINT (715829.5 734697.0)"), std::string::npos);  // no height was measured
}

TEST(RecordFiles, AStageTheJobHasNotHasNoLayer) {
  if (!testing::has_program("ogrinfo")) GTEST_SKIP() << "skipped: no ogrinfo";
  const Made made;
  const auto file = text_file(record_gpkg({made.record}, {"local", {}, {}}), "record.gpkg");
  const std::string told = output_of("ogrinfo -ro -so -al '" + file.path + "'");
  EXPECT_EQ(count_of(told, "Layer name: "), 1U);
  EXPECT_NE(told.find("Layer name: tank\n"), std::string::npos);
}

}  // namespace
}  // namespace squaredig::formats
