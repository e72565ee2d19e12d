#include "formats/tape_csv.h"

#include "formats/csv_table.h"

namespace squaredig::formats {
namespace {

enum TapeColumn { kFrom, kTo, kLength, kHeightDifference };

void check(CsvTable& table, const pegs::TapedLength& taped) {
  if (taped.from == taped.to)
    table.fault(kTo, "a length from " + quoted(taped.from) + " to itself", "two different pegs",
                "correct one of the names");
  if (taped.length <= Length{})
    table.fault(kLength, "a length that is not above zero", "the length as taped",
                "correct it or take out the row");
  else if (taped.height_difference && abs(*taped.height_difference) >= taped.length)
    table.fault(kHeightDifference, "a height difference as long as the tape",
                "the height of the second peg above the first", "correct it or leave it blank");
}

}  // namespace

TapeFile read_tape_csv(const SourceFile& source) {
  CsvTable table(source,
                 {{"from"}, {"to"}, {"length"}, {"height_difference", "", Column::Optional}},
                 "a tape file");
  TapeFile file;
  while (table.next()) {
    pegs::TapedLength taped;
    taped.from = table.name(kFrom);
    taped.to = table.name(kTo);
    const auto length = table.metres(kLength);
    if (table.has(kHeightDifference) && !table.is_blank(kHeightDifference))
      if (const auto difference = table.metres(kHeightDifference))
        taped.height_difference = Length::metres(*difference);
    taped.place = table.place(kFrom);
    if (!length || table.row_has_fault()) continue;
    taped.length = Length::metres(*length);
    check(table, taped);
    file.lengths.push_back(std::move(taped));
  }
  file.cautions = table.cautions();
  file.record = table.finish();
  return file;
}

}  // namespace squaredig::formats
