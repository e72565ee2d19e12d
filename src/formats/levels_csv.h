// The level book, and the two-peg test's own small book.
//
// What: columns point, backsight, intermediate, foresight, distance, and where the book was worked
//   out by hand also rise, fall, height_of_collimation, reduced_level. A reading on an inverted
//   staff is written with a minus sign. A row holds one reading, or foresight and backsight of a
//   change point. The two-peg book has setup, staff, distance, reading.
// Frame and units: lengths in the file's unit.
// Laws: levels_csv.1 a row without a reading, or with an intermediate reading beside another, is a
//   fault.
// Errors: a Refusal of all faults of the file with line and column.
// Source: RFC 4180; the level book: common practice, no source.
#pragma once

#include <string>
#include <vector>

#include "field/field_input.h"
#include "formats/source_file.h"
#include "quantity/result_head.h"

namespace squaredig::formats {

struct LevelsFile {
  std::vector<field::LevelLine> lines;
  InputRecord record;
  std::vector<std::string> cautions;
};
LevelsFile read_levels_csv(const SourceFile& source);

struct TwoPegFile {
  std::vector<field::TwoPegReading> readings;
  InputRecord record;
  std::vector<std::string> cautions;
};
TwoPegFile read_two_peg_csv(const SourceFile& source);

}  // namespace squaredig::formats
