#include <numbers>

#include "base/checks_internal.h"

namespace squaredig::base {

std::vector<HoleInSurvey> holes_in(const BaseInput& input, const PlannedBase& planned,
                                   const Floor& floor) {
  constexpr std::size_t kMost = 100;
  std::vector<HoleInSurvey> holes;
  if (!input.spacing) return holes;
  const double limit = (*input.spacing / std::numbers::sqrt2).in_metres() + 0.001;
  std::vector<geometry::Point2> points;
  for (const FloorPoint& p : floor.points) points.push_back(p.at);
  while (holes.size() < kMost) {
    const geometry::Circle hole = geometry::largest_empty_circle(floor.toe, points);
    if (hole.radius <= limit) break;
    const GridPoint at = floor.frame.to_grid(hole.centre);
    holes.push_back(
        {at, planned.tank.along_ab(at), planned.tank.across_ab(at), Length::metres(hole.radius)});
    points.push_back(hole.centre);
  }
  return holes;
}

}  // namespace squaredig::base
