#include "formats/levels_csv.h"

#include "formats/csv_table.h"

namespace squaredig::formats {
namespace {

enum LevelColumn {
  kPoint,
  kBacksight,
  kIntermediate,
  kForesight,
  kDistance,
  kRise,
  kFall,
  kCollimation,
  kReducedLevel
};

std::vector<ColumnWanted> level_columns() {
  const auto may = Column::Optional;
  return {{"point"},
          {"backsight"},
          {"intermediate", "", may},
          {"foresight"},
          {"distance", "", may},
          {"rise", "", may},
          {"fall", "", may},
          {"height_of_collimation", "", may},
          {"reduced_level", "", may}};
}

std::optional<Length> length_of(CsvTable& table, std::size_t column) {
  if (!table.has(column) || table.is_blank(column)) return std::nullopt;
  const auto value = table.metres(column);
  return value ? std::optional(Length::metres(*value)) : std::nullopt;
}

std::optional<Length> not_negative(CsvTable& table, std::size_t column) {
  const auto value = length_of(table, column);
  if (value && *value < Length{})
    table.fault(column, level_columns()[column].name + " " + quoted(table.text(column)),
                "zero or more", "correct the cell");
  return value;
}

std::optional<Elevation> level_of(CsvTable& table, std::size_t column) {
  const auto value = length_of(table, column);
  return value ? std::optional(Elevation::metres(value->in_metres())) : std::nullopt;
}

field::LevelLine read_row(CsvTable& table) {
  field::LevelLine line;
  line.point = table.name(kPoint);
  line.place = table.place(kPoint);
  line.backsight = length_of(table, kBacksight);
  line.intermediate = length_of(table, kIntermediate);
  line.foresight = length_of(table, kForesight);
  line.distance = not_negative(table, kDistance);
  line.booked = {not_negative(table, kRise), not_negative(table, kFall),
                 level_of(table, kCollimation), level_of(table, kReducedLevel)};
  if (table.row_has_fault()) return line;
  if (!line.backsight && !line.intermediate && !line.foresight)
    table.fault(kBacksight, "no reading on point " + quoted(line.point),
                "a backsight, an intermediate sight or a foresight",
                "fill it in or take out the row");
  if (line.intermediate && (line.backsight || line.foresight))
    table.fault(kIntermediate, "an intermediate sight beside another reading",
                "one reading in a row, or foresight and backsight of a change point",
                "give the readings rows of their own");
  return line;
}

}  // namespace

LevelsFile read_levels_csv(const SourceFile& source) {
  CsvTable table(source, level_columns(), "a level book");
  LevelsFile file;
  while (table.next()) {
    field::LevelLine line = read_row(table);
    if (!table.row_has_fault()) file.lines.push_back(std::move(line));
  }
  if (table.rows() == 0 && table.faults().empty())
    table.faults().add({source.name}, "a header without rows", "readings", "export the book again");
  file.cautions = table.cautions();
  file.record = table.finish();
  return file;
}

TwoPegFile read_two_peg_csv(const SourceFile& source) {
  enum PegColumn { kSetup, kStaff, kSightLength, kReading };
  CsvTable table(source, {{"setup"}, {"staff"}, {"distance"}, {"reading"}}, "a two-peg test");
  TwoPegFile file;
  while (table.next()) {
    field::TwoPegReading reading;
    reading.setup = table.name(kSetup);
    reading.staff = table.name(kStaff);
    reading.place = table.place(kReading);
    const auto distance = not_negative(table, kSightLength);
    const auto value = table.metres(kReading);
    if (!distance || !value || table.row_has_fault()) continue;
    reading.distance = *distance;
    reading.reading = Length::metres(*value);
    file.readings.push_back(std::move(reading));
  }
  file.cautions = table.cautions();
  file.record = table.finish();
  return file;
}

}  // namespace squaredig::formats
