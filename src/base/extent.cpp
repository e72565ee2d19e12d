#include <cmath>

#include "base/checks_internal.h"
#include "base/decision_internal.h"

namespace squaredig::base {
namespace {

using geometry::Point2;

// Where a toe point stands against the tank: distance out from the face, negative inside it.
struct Reach {
  double distance = HUGE_VAL;
  std::vector<std::size_t> sides;  // one, or the two that meet at the corner it stands off
};

std::vector<Point2> corners_of(const PlannedBase& planned, const Floor& floor) {
  std::vector<Point2> corners;
  for (const GridPoint& c : planned.tank.corners) corners.push_back(floor.frame.to_site(c));
  return corners;
}

Reach reach_of(const std::vector<Point2>& corners, const Floor& floor, Point2 p) {
  constexpr double kSame = 1e-9;
  Reach reach;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const double d =
        geometry::distance_to_segment(p, corners[i], corners[(i + 1) % corners.size()]);
    if (d > reach.distance + kSame) continue;
    if (d < reach.distance - kSame) reach.sides.clear();
    reach.distance = std::min(reach.distance, d);
    reach.sides.push_back(i);
  }
  if (geometry::side_of(floor.footprint, p, 0) > 0) reach.distance = -reach.distance;
  return reach;
}

Length limit_at(const BaseInput& input, const PlannedBase& planned, const Reach& reach) {
  Length gap = planned.gap.at(reach.sides.front());
  for (const std::size_t side : reach.sides) gap = std::min(gap, planned.gap.at(side));
  return gap - input.extent_tolerance.value_or(Length{});
}

std::vector<std::string> sides_without(const PlannedBase& planned, const std::vector<bool>& seen) {
  std::vector<std::string> cautions;
  for (std::size_t i = 0; i < seen.size(); ++i)
    if (!seen[i])
      cautions.push_back("no toe point was surveyed along side " + planned.tank.side_name(i));
  return cautions;
}

Check without_toe(const BaseInput& input) {
  Check check;
  check.name = "extent";
  const bool asked = !input.toe_codes.empty() && input.extent_tolerance;
  check.verdict = asked ? Verdict::NotProven : Verdict::NotAsked;
  check.words = input.toe_codes.empty() ? "no toe codes are given" : "no toe point was surveyed";
  return check;
}

}  // namespace

ExtentAnswer judge_extent(const BaseInput& input, const PlannedBase& planned, const Floor& floor) {
  ExtentAnswer answer;
  answer.check = without_toe(input);
  if (floor.surveyed_toe.empty()) return answer;
  const auto corners = corners_of(planned, floor);
  std::vector<bool> seen(corners.size(), false);
  Length least_room = Length::metres(HUGE_VAL);
  for (const ToePoint& p : floor.surveyed_toe) {
    const Reach reach = reach_of(corners, floor, p.at);
    for (const std::size_t side : reach.sides) seen[side] = true;
    const Length value = Length::metres(reach.distance);
    const Length limit = limit_at(input, planned, reach);
    if (value - limit >= least_room) continue;
    least_room = value - limit;
    const auto asked = input.extent_tolerance ? std::optional<Amount>(limit) : std::nullopt;
    answer.check = decided("extent", Bound::AtLeast, value, asked,
                           Length::metres(floor.coverage_factor * p.sigma_plan));
    answer.check.at = floor.frame.to_grid(p.at);
    answer.check.words = "toe point " + quoted(input.points.label(p.row)) + ", off side " +
                         planned.tank.side_name(reach.sides.front()) +
                         to_settle(answer.check, floor, {1, "that toe point"});
  }
  answer.cautions = sides_without(planned, seen);
  return answer;
}

}  // namespace squaredig::base
