// Tape CSV: lengths taped between pegs, for the check of sides and diagonals.
//
// What: columns from, to, length, optionally height_difference (the second peg above the first):
//   the length is then along the slope, else it is horizontal.
// Frame and units: metres whatever the file's unit.
// Requires: nothing; the file may be anything.
// Accuracy: exact as read; one rounding for feet.
// Errors: a Refusal of all faults of the file (csv_table.h); also a length that is not above zero,
//   a height difference that is longer than its tape, a peg taped to itself.
// Source: RFC 4180; the columns are the house's own, docs/pegs.md.
#pragma once

#include "formats/source_file.h"
#include "pegs/pegs_input.h"
#include "quantity/result_head.h"

namespace squaredig::formats {

struct TapeFile {
  std::vector<pegs::TapedLength> lengths;
  InputRecord record;
  std::vector<std::string> cautions;
};

TapeFile read_tape_csv(const SourceFile& source);

}  // namespace squaredig::formats
