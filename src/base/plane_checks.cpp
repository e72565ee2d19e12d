#include <algorithm>
#include <cmath>

#include "base/checks_internal.h"
#include "base/decision_internal.h"
#include "geometry/fit_plane.h"
#include "quantity/number_text.h"

namespace squaredig::base {
namespace {

using geometry::FittedPlane;
using geometry::Point2;
using Coefficients = std::vector<std::pair<std::size_t, double>>;

std::vector<geometry::Point3> deviations(const Floor& floor) {
  std::vector<geometry::Point3> points;
  for (const FloorPoint& p : floor.points) points.push_back({p.at.x, p.at.y, p.deviation});
  return points;
}

// What a unit of height at point j moves the fitted plane under point i.
double hat(const FittedPlane& fit, Point2 i, Point2 j) {
  const Point2 a = i - fit.plane.about, b = j - fit.plane.about;
  return fit.var_height + a.x * (fit.var_xx * b.x + fit.var_xy * b.y) +
         a.y * (fit.var_xy * b.x + fit.var_yy * b.y);
}

// The range of residuals is (z_high - z_low) less the same of the plane fitted through all.
Coefficients of_range(const Floor& floor, const FittedPlane& fit) {
  const auto [low, high] = std::minmax_element(fit.residuals.begin(), fit.residuals.end());
  const auto lowest = static_cast<std::size_t>(low - fit.residuals.begin());
  const auto highest = static_cast<std::size_t>(high - fit.residuals.begin());
  Coefficients c;
  for (std::size_t j = 0; j < floor.points.size(); ++j) {
    const Point2 at = floor.points[j].at;
    double own = 0;
    if (j == highest) own += 1;
    if (j == lowest) own -= 1;
    c.emplace_back(
        j, own - hat(fit, floor.points[highest].at, at) + hat(fit, floor.points[lowest].at, at));
  }
  return c;
}

Check judge_flatness(const BaseInput& input, const PlannedBase& planned, const Floor& floor,
                     const std::optional<FittedPlane>& fit) {
  const auto limit =
      input.flatness_tolerance ? std::optional<Amount>(*input.flatness_tolerance) : std::nullopt;
  if (!fit || floor.points.size() < 4) {
    Check check = decided("flatness", Bound::AtMost, std::nullopt, limit, std::nullopt);
    check.words = "it takes four points that are not on one line";
    return check;
  }
  Check check = decided("flatness", Bound::AtMost, Length::metres(fit->range), limit,
                        Length::metres(floor.expanded(of_range(floor, *fit))));
  const auto high = std::max_element(fit->residuals.begin(), fit->residuals.end());
  const auto low = std::min_element(fit->residuals.begin(), fit->residuals.end());
  const auto label = [&](auto it) {
    const std::size_t row = floor.points[static_cast<std::size_t>(it - fit->residuals.begin())].row;
    return quoted(input.points.label(row)) + ", " +
           tied(planned.tank, input.points.points[row].at.at);
  };
  check.words = "between point " + label(high) + " and point " + label(low) +
                to_settle(check, floor, {1, "each point"});
  return check;
}

// The direction in which the fall is least well known, for a difference that has no direction.
Point2 weakest_direction(const FittedPlane& fit) {
  const double turn = std::atan2(2 * fit.var_xy, fit.var_xx - fit.var_yy) / 2;
  return {std::cos(turn), std::sin(turn)};
}

Coefficients of_slope(const Floor& floor, const FittedPlane& fit, Point2 direction) {
  Coefficients c;
  for (std::size_t j = 0; j < floor.points.size(); ++j) {
    const Point2 d = floor.points[j].at - fit.plane.about;
    c.emplace_back(j, direction.x * (fit.var_xx * d.x + fit.var_xy * d.y) +
                          direction.y * (fit.var_xy * d.x + fit.var_yy * d.y));
  }
  return c;
}

BestPlane measured_plane(const PlannedBase& planned, const Floor& floor, const FittedPlane& fit) {
  const GridPoint a = planned.tank.corners.front();
  const Point2 at_a = floor.frame.to_site(a);
  const double level = floor.dig_level.at(at_a) + fit.plane.at(at_a);
  const Point2 up{floor.dig_level.slope_x + fit.plane.slope_x,
                  floor.dig_level.slope_y + fit.plane.slope_y};
  const double fall = std::hypot(up.x, up.y);
  const double downhill = fall > 0 ? Angle::radians(std::atan2(-up.x, -up.y)).in_degrees() : 0;
  return {floor.frame.to_grid_height(level), Fall::drop_per_run(fall), Bearing::degrees(downhill)};
}

std::string fall_words(Fall fall, Bearing downhill) {
  return fixed(fall.in_percent(), 3) + " % toward " + fixed(downhill.in_degrees(), 1) + " degrees";
}

Check judge_fall(const BaseInput& input, const PlannedBase& planned, const Floor& floor,
                 const std::optional<FittedPlane>& fit) {
  const auto limit =
      input.fall_tolerance ? std::optional<Amount>(*input.fall_tolerance) : std::nullopt;
  if (!fit) {
    Check check = decided("fall", Bound::AtMost, std::nullopt, limit, std::nullopt);
    check.words = "it takes three points that are not on one line";
    return check;
  }
  const Point2 off{fit->plane.slope_x, fit->plane.slope_y};
  const double length = std::hypot(off.x, off.y);
  const Point2 direction = length > 1e-12 ? (1 / length) * off : weakest_direction(*fit);
  Check check = decided("fall", Bound::AtMost, Fall::drop_per_run(length), limit,
                        Fall::drop_per_run(floor.expanded(of_slope(floor, *fit, direction))));
  const BestPlane best = measured_plane(planned, floor, *fit);
  const design::LevelPlane& level = planned.tank.dig_level;
  check.words = "measured " + fall_words(best.fall, best.downhill) + ", planned " +
                fall_words(level.fall, level.downhill) +
                to_settle(check, floor, {floor.points.size(), "points spread alike"});
  return check;
}

// The tank's corners from the lowest of a plane's up, heights beside them.
std::size_t lowest_corner(const geometry::Plane& plane, const std::vector<Point2>& corners) {
  std::size_t low = 0;
  for (std::size_t i = 1; i < corners.size(); ++i)
    if (plane.at(corners[i]) < plane.at(corners[low]) - 1e-9) low = i;
  return low;
}

// A fall that runs the wrong way is told by its low corner: that is what a person sees.
std::optional<Finding> wrong_way(const PlannedBase& planned, const Floor& floor,
                                 const FittedPlane& fit) {
  if (planned.tank.dig_level.fall <= Fall{}) return std::nullopt;
  std::vector<Point2> corners;
  for (const GridPoint& c : planned.tank.corners) corners.push_back(floor.frame.to_site(c));
  geometry::Plane measured = floor.dig_level;
  measured.slope_x += fit.plane.slope_x;
  measured.slope_y += fit.plane.slope_y;
  const std::size_t wanted = lowest_corner(floor.dig_level, corners);
  const std::size_t found = lowest_corner(measured, corners);
  const double drop = measured.at(corners[wanted]) - measured.at(corners[found]);
  if (floor.dig_level.at(corners[found]) - floor.dig_level.at(corners[wanted]) < 1e-6)
    return std::nullopt;  // the plan has both equally low
  const Point2 way = corners[wanted] - corners[found];
  if (drop <= floor.expanded(of_slope(floor, fit, way))) return std::nullopt;
  const bool reversed =
      measured.slope_x * floor.dig_level.slope_x + measured.slope_y * floor.dig_level.slope_y < 0;
  return Finding{
      reversed ? "fall_reversed" : "fall_turned",
      std::string(reversed ? "the cross-fall runs the wrong way" : "the cross-fall is turned") +
          ": low corner is " + design::Tank::corner_name(found) + ", plan says " +
          design::Tank::corner_name(wanted)};
}

}  // namespace

PlaneAnswer judge_plane(const BaseInput& input, const PlannedBase& planned, const Floor& floor) {
  const auto points = deviations(floor);
  const auto fit = geometry::fit_least_squares(points);
  PlaneAnswer answer;
  if (fit) {
    answer.best_plane = measured_plane(planned, floor, *fit);
    if (auto finding = wrong_way(planned, floor, *fit)) answer.findings.push_back(*finding);
  }
  const auto zone = geometry::fit_minimum_zone(points);
  if (fit && zone && points.size() > 3)
    answer.flatness = {Length::metres(fit->range), Length::metres(zone->width)};
  answer.checks.push_back(judge_flatness(input, planned, floor, fit));
  answer.checks.push_back(judge_fall(input, planned, floor, fit));
  return answer;
}

}  // namespace squaredig::base
