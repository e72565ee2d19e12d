// Lift log CSV: which lift was placed on which side, when and how high.
//
// What: columns lift, side, date (2026-04-02), height_above_underside.
// Frame and units: heights in metres above the tank underside, whatever the file's unit.
// Requires: nothing; the file may be anything.
// Accuracy: exact as read; one rounding for feet.
// Errors: a Refusal of all faults of the file (csv_table.h); also a day that is none, and dates
// that
//   run backwards.
// Source: RFC 4180; ISO 8601 calendar dates.
#pragma once

#include "fill/fill_input.h"
#include "formats/source_file.h"
#include "quantity/result_head.h"

namespace squaredig::formats {

struct LiftLogFile {
  std::vector<fill::LiftRecord> lifts;
  InputRecord record;
  std::vector<std::string> cautions;
};

LiftLogFile read_lift_log_csv(const SourceFile& source);

}  // namespace squaredig::formats
