#include "formats/pairs_csv.h"

#include <map>

#include "formats/csv_table.h"

namespace squaredig::formats {
namespace {

enum PairColumn {
  kPoint,
  kEasting,
  kNorthing,
  kHeight,
  kMeasuredEasting,
  kMeasuredNorthing,
  kMeasuredHeight,
  kSigma
};

std::vector<ColumnWanted> pair_columns() {
  const auto may = Column::Optional;
  return {{"point"},
          {"easting", "site_easting"},
          {"northing", "site_northing"},
          {"height", "site_height", may},
          {"measured_easting", "", may},
          {"measured_northing", "", may},
          {"measured_height", "", may},
          {"sigma_plan_mm", "", may}};
}

std::optional<double> given(CsvTable& table, std::size_t column) {
  if (!table.has(column) || table.is_blank(column)) return std::nullopt;
  return table.metres(column);
}

std::optional<Elevation> level(std::optional<double> metres) {
  return metres ? std::optional(Elevation::metres(*metres)) : std::nullopt;
}

field::PointPair read_row(CsvTable& table) {
  field::PointPair pair;
  pair.point = table.name(kPoint);
  pair.place = table.place(kPoint);
  const auto easting = table.metres(kEasting);
  const auto northing = table.metres(kNorthing);
  if (easting && northing) pair.site = grid_point(*easting, *northing);
  pair.site_height = level(given(table, kHeight));
  const auto east = given(table, kMeasuredEasting);
  const auto north = given(table, kMeasuredNorthing);
  if (east.has_value() != north.has_value() && !table.row_has_fault())
    table.fault(east ? kMeasuredNorthing : kMeasuredEasting,
                "one measured coordinate of point " + quoted(pair.point),
                "measured easting and northing, or neither", "fill in the other");
  if (east && north) pair.measured = grid_point(*east, *north);
  pair.measured_height = level(given(table, kMeasuredHeight));
  if (table.has(kSigma) && !table.is_blank(kSigma)) {
    const auto mm = table.number(kSigma);
    if (mm && *mm <= 0)
      table.fault(kSigma, "a standard deviation of " + quoted(table.text(kSigma)),
                  "above zero, in millimetres", "correct it or leave it blank");
    if (mm) pair.sigma = Length::millimetres(*mm);
  }
  return pair;
}

}  // namespace

PairsFile read_pairs_csv(const SourceFile& source) {
  CsvTable table(source, pair_columns(), "a file of point pairs");
  PairsFile file;
  std::map<std::string, int> seen;
  while (table.next()) {
    field::PointPair pair = read_row(table);
    const auto [first, fresh] = seen.try_emplace(pair.point, table.line());
    if (!fresh && !pair.point.empty())
      table.fault(
          kPoint,
          "point " + quoted(pair.point) + " again, first in line " + std::to_string(first->second),
          "one pair for a point", "take out or rename one of the two");
    if (!table.row_has_fault()) file.pairs.push_back(std::move(pair));
  }
  if (table.rows() == 0 && table.faults().empty())
    table.faults().add({source.name}, "a header without rows", "pairs", "export the file again");
  file.cautions = table.cautions();
  file.record = table.finish();
  return file;
}

}  // namespace squaredig::formats
