#include <cmath>
#include <numbers>

#include "base/checks_internal.h"
#include "base/decision_internal.h"

namespace squaredig::base {

CoverageAnswer judge_coverage(const BaseInput& input, const Floor& floor) {
  std::vector<geometry::Point2> points;
  for (const FloorPoint& p : floor.points) points.push_back(p.at);
  const geometry::Circle hole = geometry::largest_empty_circle(floor.toe, points);
  const Length radius = Length::metres(hole.radius);
  std::optional<Amount> limit;
  if (input.spacing) limit = *input.spacing / std::numbers::sqrt2 + Length::millimetres(1);
  CoverageAnswer answer;
  answer.largest_hole = radius;
  answer.check = decided("coverage", Bound::AtMost, radius, limit, std::nullopt);
  answer.check.at = floor.frame.to_grid(hole.centre);
  return answer;
}

}  // namespace squaredig::base
