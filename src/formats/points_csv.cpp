#include "formats/points_csv.h"

#include <algorithm>

#include "formats/csv_table.h"
#include "formats/repeated_names.h"
#include "quantity/number_text.h"

namespace squaredig::formats {
namespace {

enum GridColumn { kPoint, kEasting, kNorthing, kHeight, kCode, kSigmaPlan, kSigmaHeight };
constexpr float kNotGiven = -1;

Column needed_if(bool needed) { return needed ? Column::Needed : Column::Optional; }

std::vector<ColumnWanted> grid_columns(const SourceFile& source, const PointsWanted& wanted) {
  return {{"point"},
          {"easting", "e"},
          {"northing", "n"},
          {"height", "h", needed_if(wanted.heights == Heights::Needed)},
          {"code", "", needed_if(!source.codes.empty())},
          {"sigma_plan_mm", "", Column::Optional},
          {"sigma_height_mm", "", Column::Optional},
          {"latitude", "", Column::Foreign,
           "convert it to the grid: name it under [field] gnss and run field"}};
}

bool code_wanted(const SourceFile& source, CsvTable& table) {
  const auto& codes = source.codes;
  if (codes.empty() || std::find(codes.begin(), codes.end(), table.text(kCode)) != codes.end())
    return true;
  table.set_aside("code " + quoted(table.text(kCode)) + " is not asked for");
  return false;
}

std::optional<Length> sigma(CsvTable& table, std::size_t column) {
  if (!table.has(column) || table.is_blank(column)) return std::nullopt;
  const auto value = table.number(column);
  if (value && *value < 0)
    table.fault(column, "a standard deviation below zero", "zero or more, in millimetres",
                "correct it or leave it blank");
  return value ? std::optional(Length::millimetres(*value)) : std::nullopt;
}

float in_mm(std::optional<Length> sigma_value) {
  return sigma_value ? static_cast<float>(sigma_value->in_millimetres()) : kNotGiven;
}

void tell_code_column(const SourceFile& source, const CsvTable& table,
                      std::vector<std::string>& cautions) {
  if (!source.codes.empty() && table.rows() == table.rows_set_aside())
    cautions.push_back(source.name + ": no row has a code that is asked for");
}

// The row's point; nothing where a number is missing.
std::optional<SurveyPoint> grid_point_of(CsvTable& table, const PointsWanted& wanted) {
  SurveyPoint point;
  const auto easting = table.metres(kEasting);
  const auto northing = table.metres(kNorthing);
  point.has_height =
      table.has(kHeight) && !(wanted.heights == Heights::Optional && table.is_blank(kHeight));
  const auto height = point.has_height ? table.metres(kHeight) : std::optional(0.0);
  point.sigma_plan_mm = in_mm(sigma(table, kSigmaPlan));
  point.sigma_height_mm = in_mm(sigma(table, kSigmaHeight));
  point.line = static_cast<std::uint32_t>(table.line());
  if (!easting || !northing || !height) return std::nullopt;
  point.at = grid_position(*easting, *northing, *height);
  return point;
}

}  // namespace

PointsFile read_points_csv(const SourceFile& source, const PointsWanted& wanted,
                           PointTable before) {
  CsvTable table(source, grid_columns(source, wanted), "a points file");
  PointsFile file;
  file.points = std::move(before);
  const std::size_t first = file.points.size();
  const std::uint16_t number = file.points.add_file(source.name);
  if (!wanted.keep && source.codes.empty()) file.points.points.reserve(first + table.rows_likely());
  while (table.next()) {
    if (!code_wanted(source, table)) continue;
    if (wanted.names == Names::Unique) table.name(kPoint);
    auto point = grid_point_of(table, wanted);
    if (!point || table.row_has_fault()) continue;
    file.extent.add(point->at.at);
    if (wanted.keep && !wanted.keep(point->at)) continue;
    point->file = number;
    file.points.add(*point, table.text(kPoint), table.text(kCode));
  }
  if (table.rows() == 0 && table.faults().empty())
    table.faults().add({source.name}, "a header without rows", "points", "export the file again");
  file.cautions = table.cautions();
  tell_code_column(source, table, file.cautions);
  const auto repeated = repeated_names(file.points, first);
  if (wanted.names == Names::Told)
    tell_repeated(repeated, source.name, file.cautions);
  else
    refuse_repeated(repeated, source.name, table.faults());
  file.columns = {table.header_place(kEasting), table.header_place(kNorthing)};
  file.record = table.finish();
  return file;
}

}  // namespace squaredig::formats
