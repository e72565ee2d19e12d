#include "formats/field_points_csv.h"

#include <algorithm>
#include <cmath>
#include <cstdint>

#include "formats/csv_text.h"

namespace squaredig::formats {
namespace {

// The greater of both coordinates: a plan sigma must not promise more than either holds.
std::optional<double> plan_mm(const field::ReducedPoint& p) {
  if (!p.covariance) return std::nullopt;
  return std::sqrt(std::max(p.covariance->ee, p.covariance->nn)) * 1000;
}

std::optional<double> height_mm(const field::ReducedPoint& p) {
  if (!p.covariance || !p.height) return std::nullopt;
  return std::sqrt(p.covariance->hh) * 1000;
}

}  // namespace

std::string field_points_csv(const field::FieldResult& result) {
  CsvText csv({"point", "easting", "northing", "height", "code", "sigma_plan_mm", "sigma_height_mm",
               "sights", "from"});
  for (const field::ReducedPoint& p : result.points) {
    csv.label(p.point).place(p.at).metres(p.height).label(p.code);
    csv.number(plan_mm(p)).number(height_mm(p));
    csv.count(static_cast<std::int64_t>(p.sights)).label(p.from);
    csv.end_row();
  }
  return csv.take();
}

}  // namespace squaredig::formats
