#include "formats/compaction_csv.h"

#include "formats/csv_table.h"

namespace squaredig::formats {
namespace {

enum CompactionColumn { kLayer, kEasting, kNorthing, kDry, kMaximumDry };

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

}  // namespace

CompactionFile read_compaction_csv(const SourceFile& source) {
  CsvTable table(
      source,
      {{"layer"}, {"easting", "e"}, {"northing", "n"}, {"dry_density"}, {"maximum_dry_density"}},
      "a compaction file");
  CompactionFile file;
  while (table.next()) {
    CompactionTest test;
    test.layer = table.name(kLayer);
    const auto easting = table.metres(kEasting);
    const auto northing = table.metres(kNorthing);
    const auto dry = density(table, kDry);
    const auto maximum = density(table, kMaximumDry);
    test.place = table.place(kLayer);
    if (!easting || !northing || !dry || !maximum || table.row_has_fault()) continue;
    test.at = grid_point(*easting, *northing);
    test.dry = *dry;
    test.maximum_dry = *maximum;
    file.tests.push_back(std::move(test));
  }
  file.cautions = table.cautions();
  file.record = table.finish();
  return file;
}

}  // namespace squaredig::formats
