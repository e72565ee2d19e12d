// Compaction CSV: tests of dry density, each at its place and layer.
//
// What: columns layer, easting (e), northing (n), maximum_dry_density, and either dry_density or
//   both wet_density and water_content_percent (of the dry mass). Where all three are there, the
//   dry density counts and a caution says so.
// Frame and units: the site grid, metres whatever the file's unit; densities in tonnes per cubic
//   metre.
// Requires: nothing; the file may be anything.
// Accuracy: exact as read; one rounding for feet.
// Errors: a Refusal of all faults of the file (csv_table.h); also a density that is not above zero
//   or is above that of any soil, so that kilograms per cubic metre are not taken for tonnes.
// Source: RFC 4180; the columns are the house's own, docs/fill.md.
#pragma once

#include "formats/source_file.h"
#include "quantity/compaction_test.h"
#include "quantity/result_head.h"

namespace squaredig::formats {

struct CompactionFile {
  std::vector<CompactionTest> tests;
  InputRecord record;
  std::vector<std::string> cautions;
};

CompactionFile read_compaction_csv(const SourceFile& source);

}  // namespace squaredig::formats
