#include <cmath>
#include <numbers>

#include "base/checks_internal.h"
#include "base/coverage_internal.h"
#include "base/decision_internal.h"

namespace squaredig::base {
namespace {

constexpr std::size_t kMostHoles = 100;

HoleInSurvey hole_at(const PlannedBase& planned, const Floor& floor,
                     const geometry::Circle& circle) {
  const GridPoint at = floor.frame.to_grid(circle.centre);
  return {at, planned.tank.along_ab(at), planned.tank.across_ab(at), Length::metres(circle.radius)};
}

// The largest hole takes a point, then the next largest, until the rest are small enough.
std::vector<HoleInSurvey> holes_in(const PlannedBase& planned, const Floor& floor,
                                   std::vector<geometry::Point2> points, geometry::Circle hole,
                                   Length limit) {
  std::vector<HoleInSurvey> holes;
  while (Length::metres(hole.radius) > limit && holes.size() < kMostHoles) {
    holes.push_back(hole_at(planned, floor, hole));
    points.push_back(hole.centre);
    hole = geometry::largest_empty_circle(floor.toe, points);
  }
  return holes;
}

std::string words_of(const BaseInput& input, const PlannedBase& planned,
                     const CoverageAnswer& answer) {
  std::string words = "the largest hole is round " + tied(planned.tank, *answer.check.at);
  const std::size_t n = answer.holes.size();
  if (n > 0)
    words += "; " + std::to_string(n) + (n == kMostHoles ? " or more" : "") +
             (n == 1 ? " further point would close it" : " further points would close all");
  if (answer.reach) words += "; " + reach_words(*answer.reach, *input.spacing);
  return words;
}

}  // namespace

CoverageAnswer judge_coverage(const BaseInput& input, const PlannedBase& planned,
                              const Floor& floor) {
  std::vector<geometry::Point2> points;
  for (const FloorPoint& p : floor.points) points.push_back(p.at);
  const geometry::Circle hole = geometry::largest_empty_circle(floor.toe, points);
  CoverageAnswer answer;
  answer.largest_hole = Length::metres(hole.radius);
  std::optional<Amount> limit;
  if (input.spacing) {
    const Length most = *input.spacing / std::numbers::sqrt2 + Length::millimetres(1);
    limit = most;
    answer.holes = holes_in(planned, floor, points, hole, most);
    answer.reach = reach_of(planned, floor, *input.spacing, most);
  }
  answer.widest_hole = hole_at(planned, floor, hole);
  answer.check = decided("coverage", Bound::AtMost, *answer.largest_hole, limit, std::nullopt);
  answer.check.at = floor.frame.to_grid(hole.centre);
  answer.check.words = words_of(input, planned, answer);
  return answer;
}

}  // namespace squaredig::base
