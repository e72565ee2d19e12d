#include "formats/lift_log_csv.h"

#include "formats/csv_table.h"
#include "quantity/day_text.h"

namespace squaredig::formats {
namespace {

enum LiftColumn { kLift, kSide, kDate, kHeight };

}  // namespace

LiftLogFile read_lift_log_csv(const SourceFile& source) {
  CsvTable table(source, {{"lift"}, {"side"}, {"date"}, {"height_above_underside"}}, "a lift log");
  LiftLogFile file;
  while (table.next()) {
    fill::LiftRecord record;
    record.lift = table.name(kLift);
    record.side = table.name(kSide);
    const auto date = parse_day(table.text(kDate));
    if (!date)
      table.fault(kDate, "the date " + quoted(table.text(kDate)), "a day such as 2026-04-02",
                  "write year, month and day with hyphens");
    const auto height = table.metres(kHeight);
    record.place = table.place(kLift);
    if (!date || !height || table.row_has_fault()) continue;
    if (!file.lifts.empty() && *date < file.lifts.back().date)
      table.fault(kDate, "a date before that of the row above", "rows in the order of the work",
                  "put the log in order, or correct the date");
    record.date = *date;
    record.above_underside = Length::metres(*height);
    file.lifts.push_back(std::move(record));
  }
  file.cautions = table.cautions();
  file.record = table.finish();
  return file;
}

}  // namespace squaredig::formats
