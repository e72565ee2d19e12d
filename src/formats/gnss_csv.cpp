#include "formats/gnss_csv.h"

#include <cmath>

#include "formats/csv_table.h"
#include "quantity/number_text.h"

namespace squaredig::formats {
namespace {

enum GnssColumn {
  kPoint,
  kLatitude,
  kLongitude,
  kEllipsoidHeight,
  kCode,
  kSigmaPlan,
  kSigmaHeight,
  kFix,
  kAntennaHeight
};

std::vector<ColumnWanted> gnss_columns() {
  const auto may = Column::Optional;
  return {{"point"},
          {"latitude"},
          {"longitude"},
          {"ellipsoid_height"},
          {"code", "", may},
          {"sigma_plan_mm", "", may},
          {"sigma_height_mm", "", may},
          {"fix", "fix_quality", may},
          {"antenna_height", "", may}};
}

std::optional<Angle> degrees_of(CsvTable& table, std::size_t column, double most) {
  auto angle = parse_angle(table.text(column), AngleNotation::DegreesMinutesSeconds);
  if (!angle) {
    const auto number = table.number(column);
    if (!number) return std::nullopt;
    angle = Angle::degrees(*number);
  }
  if (std::abs(angle->in_degrees()) <= most) return angle;
  table.fault(column, gnss_columns()[column].name + " " + quoted(table.text(column)),
              "degrees from -" + fixed(most, 0) + " to " + fixed(most, 0), "correct the cell");
  return std::nullopt;
}

std::optional<Length> sigma_of(CsvTable& table, std::size_t column) {
  if (!table.has(column) || table.is_blank(column)) return std::nullopt;
  const auto mm = table.number(column);
  if (mm && *mm < 0)
    table.fault(column, "a standard deviation below zero", "zero or more, in millimetres",
                "correct it or leave it blank");
  return mm ? std::optional(Length::millimetres(*mm)) : std::nullopt;
}

std::optional<field::GeodeticPoint> read_row(CsvTable& table) {
  field::GeodeticPoint point;
  point.point = table.name(kPoint);
  point.code = table.text(kCode);
  point.fix = table.text(kFix);
  point.place = table.place(kLatitude);
  const auto latitude = degrees_of(table, kLatitude, 90);
  const auto longitude = degrees_of(table, kLongitude, 360);
  const auto height = table.metres(kEllipsoidHeight);
  point.sigma_plan = sigma_of(table, kSigmaPlan);
  point.sigma_height = sigma_of(table, kSigmaHeight);
  if (table.has(kAntennaHeight) && !table.is_blank(kAntennaHeight))
    if (const auto antenna = table.metres(kAntennaHeight))
      point.antenna_height = Length::metres(*antenna);
  if (!latitude || !longitude || !height || table.row_has_fault()) return std::nullopt;
  point.latitude = *latitude;
  point.longitude = *longitude;
  point.ellipsoid_height = Elevation::metres(*height);
  return point;
}

}  // namespace

GnssFile read_gnss_csv(const SourceFile& source) {
  CsvTable table(source, gnss_columns(), "a file of GNSS positions");
  GnssFile file;
  while (table.next())
    if (auto point = read_row(table)) file.points.push_back(std::move(*point));
  if (table.rows() == 0 && table.faults().empty())
    table.faults().add({source.name}, "a header without rows", "positions",
                       "export the file again");
  file.cautions = table.cautions();
  file.record = table.finish();
  return file;
}

}  // namespace squaredig::formats
