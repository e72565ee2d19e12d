#include "formats/compaction_csv.h"

#include "formats/csv_table.h"

namespace squaredig::formats {
namespace {

enum CompactionColumn { kLayer, kEasting, kNorthing, kMaximumDry, kDry, kWet, kWater };

// Solid rock lies below 3.5 t/m3; more than this is another unit.
constexpr double kHeaviest = 4.0;

std::optional<Density> density(CsvTable& table, std::size_t column) {
  const auto value = table.number(column);
  if (!value) return std::nullopt;
  if (*value <= 0 || *value > kHeaviest) {
    table.fault(column, "a density of " + std::string(table.text(column)),
                "tonnes per cubic metre, above 0 and at most 4",
                "correct it, or change the unit to t/m3");
    return std::nullopt;
  }
  return Density::tonnes_per_cubic_metre(*value);
}

// Soft clays hold about their own mass of water; more than this is another measure.
constexpr double kWettest = 300;

std::optional<Density> dry_of_wet(CsvTable& table) {
  const auto wet = density(table, kWet);
  const auto water = table.number(kWater);
  if (water && (*water < 0 || *water > kWettest)) {
    table.fault(kWater, "a water content of " + std::string(table.text(kWater)),
                "percent of the dry mass, from 0 to 300", "correct it");
    return std::nullopt;
  }
  if (!wet || !water) return std::nullopt;
  return dry_density(*wet, Ratio::percent(*water));
}

void need_a_density(CsvTable& table) {
  if (table.has(kDry) || (table.has(kWet) && table.has(kWater))) return;
  const bool half = table.has(kWet) || table.has(kWater);
  table.faults().add(
      table.header_place(kLayer),
      half ? "wet_density and water_content_percent not both there" : "no density of the tests",
      "a column dry_density, or both wet_density and water_content_percent", "add what is missing");
  table.faults().throw_if_any();
}

}  // namespace

CompactionFile read_compaction_csv(const SourceFile& source) {
  CsvTable table(source,
                 {{"layer"},
                  {"easting", "e"},
                  {"northing", "n"},
                  {"maximum_dry_density"},
                  {"dry_density", "", Column::Optional},
                  {"wet_density", "", Column::Optional},
                  {"water_content_percent", "", Column::Optional}},
                 "a compaction file");
  need_a_density(table);
  CompactionFile file;
  while (table.next()) {
    CompactionTest test;
    test.layer = table.name(kLayer);
    const auto easting = table.metres(kEasting);
    const auto northing = table.metres(kNorthing);
    const auto dry = table.has(kDry) ? density(table, kDry) : dry_of_wet(table);
    const auto maximum = density(table, kMaximumDry);
    test.place = table.place(kLayer);
    if (!easting || !northing || !dry || !maximum || table.row_has_fault()) continue;
    test.at = grid_point(*easting, *northing);
    test.dry = *dry;
    test.maximum_dry = *maximum;
    file.tests.push_back(std::move(test));
  }
  file.cautions = table.cautions();
  if (table.has(kDry) && (table.has(kWet) || table.has(kWater)))
    file.cautions.push_back(source.name +
                            ": wet density and water content are not used beside the dry density");
  file.record = table.finish();
  return file;
}

}  // namespace squaredig::formats
