#include <algorithm>
#include <cmath>

#include "base/decision_internal.h"
#include "base/floor_internal.h"
#include "quantity/number_text.h"

namespace squaredig::base {
namespace {

constexpr double kGrace = 0.001;  // a point this far outside the toe is still judged

geometry::Polygon anticlockwise(const geometry::SiteFrame& frame,
                                const std::vector<GridPoint>& corners) {
  geometry::Polygon polygon;
  for (const GridPoint& p : corners) polygon.push_back(frame.to_site(p));
  if (geometry::signed_area(polygon) < 0) std::reverse(polygon.begin(), polygon.end());
  return polygon;
}

geometry::Plane in_site(const geometry::SiteFrame& frame, const design::LevelPlane& plane) {
  const Angle downhill = plane.downhill.from_north();
  const double fall = plane.fall.drop_per_run();
  return {frame.to_site(plane.about), frame.to_site(plane.level), -fall * sine(downhill),
          -fall * cosine(downhill)};
}

bool contains(const std::vector<std::string>& codes, std::string_view code) {
  return std::find(codes.begin(), codes.end(), code) != codes.end();
}

enum class Use { Judge, Toe, Aside };

Use use_of(const BaseInput& input, std::string_view code) {
  if (contains(input.codes, code)) return Use::Judge;
  if (contains(input.toe_codes, code)) return Use::Toe;
  return input.codes.empty() ? Use::Judge : Use::Aside;
}

// The point's own sigma: its height, and its plan position on the slope it stands on.
double own_sigma(const BaseInput& input, const SurveyPoint& p, const geometry::Plane& plane) {
  const double height = p.sigma_height().value_or(input.sigma_height).in_metres();
  const double plan = p.sigma_plan().value_or(input.sigma_plan).in_metres();
  return std::hypot(height, plan * std::hypot(plane.slope_x, plane.slope_y));
}

PointAside put_aside(const PointTable& points, std::size_t row, std::string why) {
  return {std::string(points.label(row)), points.place(row), points.points[row].at, std::move(why)};
}

void sort_in(Floor& floor, const BaseInput& input, std::size_t row) {
  const SurveyPoint& point = input.points.points[row];
  const Use use = use_of(input, input.points.code(row));
  const geometry::Point2 at = floor.frame.to_site(point.at.at);
  if (use == Use::Aside) {
    floor.aside.push_back(put_aside(
        input.points, row, "code " + quoted(input.points.code(row)) + " is not asked for"));
  } else if (use == Use::Toe) {
    const double sigma = point.sigma_plan().value_or(input.sigma_plan).in_metres();
    floor.surveyed_toe.push_back({at, sigma, row});
  } else if (!point.has_height) {
    floor.aside.push_back(put_aside(input.points, row, "it has no height"));
  } else if (geometry::side_of(floor.toe, at, kGrace) < 0) {
    const double out = geometry::distance_to_edge(floor.toe, at);
    floor.aside.push_back(put_aside(input.points, row, fixed(out, 3) + " m outside the toe"));
  } else {
    const double deviation = floor.frame.to_site(point.at.height) - floor.dig_level.at(at);
    const double sigma_plan = point.sigma_plan().value_or(input.sigma_plan).in_metres();
    floor.points.push_back(
        {at, deviation, own_sigma(input, point, floor.dig_level), row, sigma_plan});
  }
}

double variance(const Floor& floor, std::span<const std::pair<std::size_t, double>> coefficients) {
  double sum = 0;
  for (const auto& [i, c] : coefficients) {
    const double term = c * floor.points[i].sigma;
    sum += term * term;
  }
  return sum;
}

}  // namespace

double Floor::expanded(std::span<const std::pair<std::size_t, double>> coefficients) const {
  return coverage_factor * std::sqrt(variance(*this, coefficients));
}

double Floor::expanded_with_common(
    std::span<const std::pair<std::size_t, double>> coefficients) const {
  double weight = 0;
  for (const auto& [i, c] : coefficients) weight += c;
  const double shared = weight * sigma_common;
  return coverage_factor * std::sqrt(variance(*this, coefficients) + shared * shared);
}

namespace {

Floor empty_floor(const BaseInput& input, const PlannedBase& planned,
                  const design::LevelPlane& level) {
  Floor floor;
  floor.frame = geometry::SiteFrame::around({planned.tank.corners.front(), level.level});
  floor.toe = anticlockwise(floor.frame, planned.toe);
  floor.footprint = anticlockwise(floor.frame, planned.tank.corners);
  floor.dig_level = in_site(floor.frame, level);
  floor.coverage_factor = normal_quantile(input.confidence);
  floor.sigma_common = input.sigma_common.in_metres();
  return floor;
}

}  // namespace

TankAxes axes_of(const PlannedBase& planned, const Floor& floor) {
  const Angle turn = planned.tank.ab.from_north();
  return {floor.frame.to_site(planned.tank.corners.front()),
          {sine(turn), cosine(turn)},
          {cosine(turn), -sine(turn)}};
}

Floor lay_out(const BaseInput& input, const PlannedBase& planned) {
  Floor floor = empty_floor(input, planned, planned.tank.dig_level);
  for (std::size_t row = 0; row < input.points.size(); ++row) sort_in(floor, input, row);
  if (floor.points.empty()) {
    const std::string file = input.points.files.empty() ? input.place.file : input.points.files[0];
    refuse(
        {file, 1, 1},
        "none of " + std::to_string(input.points.size()) + " points is a base point inside the toe",
        "at least one point of the dug base", "check the codes in [base] and the coordinates");
  }
  return floor;
}

std::optional<Floor> lay_out_bedding(const BaseInput& input, const PlannedBase& planned) {
  if (!input.bedding_points) return std::nullopt;
  BaseInput bedding = input;
  bedding.points = *input.bedding_points;
  bedding.codes.clear();
  bedding.toe_codes.clear();
  Floor floor = empty_floor(bedding, planned, planned.tank.underside);
  for (std::size_t row = 0; row < bedding.points.size(); ++row) sort_in(floor, bedding, row);
  if (floor.points.empty()) return std::nullopt;
  return floor;
}

}  // namespace squaredig::base
