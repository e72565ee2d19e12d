// Strings CSV: breaklines, outline, keep-out lines and services.
//
// What: columns string, easting (e), northing (n), height (h), optionally code; the rows of
//   one string in order, also where rows of other strings stand between. Strings come in the order
//   in which they begin.
// Frame and units: the site grid, metres whatever the file's unit.
// Requires: nothing; the file may be anything.
// Accuracy: exact as read; one rounding for feet.
// Errors: a Refusal of all faults of the file (csv_table.h); also a row without a string's name and
//   a string of a single vertex. Rows whose code is not asked for are set aside.
// Source: RFC 4180; the columns are the house's own, docs/formats.md.
#pragma once

#include <string>
#include <vector>

#include "formats/points_csv.h"

namespace squaredig::formats {

struct StringsFile {
  std::vector<SurveyString> strings;
  InputRecord record;
  std::vector<std::string> cautions;
  Extent extent;
  PlanColumns columns;
  std::vector<std::string> assumed = {};
};

StringsFile read_strings_csv(const SourceFile& source, Heights heights);

}  // namespace squaredig::formats
