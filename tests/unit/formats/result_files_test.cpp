// Results of dig, fill and record as their files: numbers to the last bit, null for what was not
// asked.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <sstream>

#include "formats/cells_csv.h"
#include "formats/dig_json.h"
#include "formats/fill_json.h"
#include "formats/record_json.h"
#include "made_dig.h"

namespace squaredig::formats {
namespace {

using nlohmann::json;

std::vector<std::string> lines_of(const std::string& text) {
  std::istringstream in(text);
  std::vector<std::string> lines;
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

TEST(DigJson, NumbersReadBackAndWhatWasNotAskedIsNull_dig_json_1) {
  const auto result = testing::made_dig();
  const json read = json::parse(dig_json(result, "9.9.9"));
  EXPECT_EQ(read["version"], "9.9.9");
  EXPECT_EQ(read["cut_bank_m3"].get<double>(), 123.456789012345);
  EXPECT_EQ(read["crest"][0][1][2].get<double>(), 63.6);
  EXPECT_EQ(read["cells"]["count"], 2);
  for (const char* name : {"cut_bank_sigma_m3", "cut_loose_m3", "truckloads"})
    EXPECT_TRUE(read[name].is_null()) << name;
  for (const char* name :
       {"levels", "floor_area_m2", "crest_area_m2", "crest_length_m", "deepest_cut_m", "mean_cut_m",
        "by_part", "closure", "comparison", "clashes", "toe", "progress", "fill_to_floor_m3"})
    EXPECT_TRUE(read.contains(name)) << name;
}

TEST(CellsCsv, UndugCentresAreBlank_cells_csv_1) {
  const auto lines = lines_of(cells_csv(testing::made_dig().grid));
  ASSERT_EQ(lines.size(), 3U);
  EXPECT_EQ(lines[0].substr(0, 60), "cell,column,row,easting,northing,ground,dig_level,cut_at_cen");
  EXPECT_EQ(lines[1].substr(0, 41), "c0r0,0,0,715831,734696,63.5,61.37,2.13,2,");
  EXPECT_EQ(lines[2].substr(0, 34), "c1r0,1,0,715833,734696,63.5,,,2,8,");
}

TEST(FillJson, NumbersReadBackAndWhatWasNotAskedIsNull_fill_json_1) {
  fill::FillResult result;
  result.head.job = "Alderbrook school";
  result.bedding = CompactedVolume::cubic_metres(100.0 / 3);
  result.side_fill = {{1,
                       Elevation::metres(62.35),
                       Elevation::metres(62.65),
                       CompactedVolume::cubic_metres(0.1 + 0.2),
                       BankVolume{},
                       {},
                       true}};
  result.special = result.side_fill[0].placed;
  result.uplift = {{"tank placed", Force::kilonewtons(0), Force::kilonewtons(3), std::nullopt}};
  const json read = json::parse(fill_json(result, "1"));
  EXPECT_EQ(read["bedding_m3"].get<double>(), 100.0 / 3);
  EXPECT_EQ(read["side_fill"][0]["compacted_m3"].get<double>(), 0.1 + 0.2);
  EXPECT_EQ(read["side_fill"][0]["from_level"].get<double>(), 62.35);
  EXPECT_TRUE(read["uplift"][0]["ratio"].is_null());
  EXPECT_TRUE(read["geotextile"]["rolls"].is_null());
  EXPECT_EQ(read["tests"]["verdict"], "not asked");
  EXPECT_EQ(lines_of(quantities_csv(result)).size(), 4U);  // header and three sheet materials
}

TEST(RecordJson, NumbersReadBack_record_json_1) {
  record::RecordResult result;
  result.storage.gross = Volume::cubic_metres(304.128);
  result.storage.net = Volume::cubic_metres(304.128 * 0.95);
  result.storage.table = {{Elevation::metres(62.35), Volume{}, Volume{}},
                          {Elevation::metres(63.67), result.storage.gross, result.storage.net}};
  result.stages = {
      {"base", "verified", "does not conform", "2026-03-20 14:10", "survey", 1, {}, {}}};
  result.stages[0].figures = {{"level high", 0.1 + 0.2, "mm", 1, 5.0, "conforms"}};
  result.stages[0].inputs = {{"as-dug.csv", "00ff"}};
  const json read = json::parse(record_json(result, "1"));
  EXPECT_EQ(read["storage"]["net_m3"].get<double>(), 304.128 * 0.95);
  EXPECT_EQ(read["storage"]["table"][1][0].get<double>(), 63.67);
  EXPECT_EQ(read["storage"]["table"][1][1].get<double>(), 304.128 * 0.95);
  EXPECT_EQ(read["stages"][0]["verdict"], "does not conform");
  EXPECT_EQ(read["stages"][0]["figures"][0]["value"].get<double>(), 0.1 + 0.2);
  EXPECT_EQ(read["stages"][0]["inputs"][0]["sha256"], "00ff");
  EXPECT_EQ(lines_of(storage_csv(result.storage))[0], "level,gross_m3,net_m3");
}

}  // namespace
}  // namespace squaredig::formats
