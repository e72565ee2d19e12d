#include "formats/swapped.h"

#include <algorithm>

#include "quantity/angle.h"
#include "quantity/number_text.h"

namespace squaredig::formats {
namespace {

std::string kilometres(Length length) { return fixed(length.in_metres() / 1000, 1) + " km"; }

std::string line_and_column(const Place& place) {
  return std::to_string(place.line) + ":" + std::to_string(place.column);
}

}  // namespace

void Extent::add(GridPoint at) {
  const double e = at.easting.in_metres();
  const double n = at.northing.in_metres();
  low_e_ = std::min(low_e_, e);
  high_e_ = std::max(high_e_, e);
  low_n_ = std::min(low_n_, n);
  high_n_ = std::max(high_n_, n);
}

void Extent::add(const Extent& other) {
  if (other.empty()) return;
  add(other.low());
  add(other.high());
}

GridPoint Extent::middle() const {
  return grid_point(low_e_ / 2 + high_e_ / 2, low_n_ / 2 + high_n_ / 2);
}

Length Extent::diagonal() const {
  return distance(grid_point(low_e_, low_n_), grid_point(high_e_, high_n_));
}

std::optional<Problem> swapped(const Extent& points, const Extent& control,
                               const PlanColumns& columns) {
  if (points.empty() || control.empty()) return std::nullopt;
  const Length near = points.diagonal() + control.diagonal() + Length::metres(1000);
  const GridPoint at = points.middle();
  const GridPoint over = grid_point(at.northing.in_metres(), at.easting.in_metres());
  const Length as_it_stands = distance(at, control.middle());
  const Length changed_over = distance(over, control.middle());
  if (as_it_stands <= near || changed_over > near) return std::nullopt;
  Problem problem{ProblemKind::Input, columns.easting,
                  "easting and northing are changed over: the points lie " +
                      kilometres(as_it_stands) + " from the control, changed over " +
                      kilometres(changed_over),
                  "what the columns easting (" + line_and_column(columns.easting) +
                      ") and northing (" + line_and_column(columns.northing) + ") are called",
                  "change the two names over in the header, or correct the control"};
  if (columns.easting == columns.northing) {  // no table: the format has the order
    problem.needed = "easting and northing in the order that the file's format has";
    problem.remedy = "export the file again, or correct the control";
  }
  return problem;
}

void check_swapped(const Extent& points, const PointTable& control, const PlanColumns& columns) {
  Extent known;
  for (const SurveyPoint& point : control.points) known.add(point.at.at);
  if (auto problem = swapped(points, known, columns)) throw Refusal(std::move(*problem));
}

}  // namespace squaredig::formats
