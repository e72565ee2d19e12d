// What of the floor the survey reached: its corners, its sides, and the parts no point is near.
#include <algorithm>
#include <cmath>

#include "base/coverage_internal.h"
#include "geometry/far_parts.h"
#include "quantity/number_text.h"

namespace squaredig::base {
namespace {

using geometry::Point2;

// The floor's corners clockwise from the one by A, named after the tank's, where they are as many.
std::string corner_name(const PlannedBase& planned, std::size_t i) {
  const bool alike = planned.toe.size() == planned.tank.corners.size();
  return alike ? design::Tank::corner_name(i) : std::to_string(i + 1);
}
std::string side_name(const PlannedBase& planned, std::size_t i) {
  const bool alike = planned.toe.size() == planned.tank.corners.size();
  const std::string next = corner_name(planned, (i + 1) % planned.toe.size());
  return corner_name(planned, i) + (alike ? "" : "-") + next;
}

CornerSeen corner_seen(const PlannedBase& planned, const Floor& floor, std::size_t i,
                       Length limit) {
  const Point2 corner = floor.frame.to_site(planned.toe[i]);
  double nearest = HUGE_VAL;
  for (const FloorPoint& p : floor.points) {
    const Point2 d = p.at - corner;
    nearest = std::min(nearest, std::hypot(d.x, d.y));
  }
  const Length distance = Length::metres(nearest);
  return {corner_name(planned, i), planned.toe[i], distance, distance <= limit};
}

// The stretches of a line from `a` that circles of that radius round the points cover.
std::vector<std::pair<double, double>> covered(const Floor& floor, Point2 a, Point2 along,
                                               double radius) {
  std::vector<std::pair<double, double>> stretches;
  for (const FloorPoint& p : floor.points) {
    const Point2 d = p.at - a;
    const double off = geometry::cross(along, d);
    if (std::abs(off) > radius) continue;
    const double half = std::sqrt(radius * radius - off * off), foot = geometry::dot(d, along);
    stretches.emplace_back(foot - half, foot + half);
  }
  std::sort(stretches.begin(), stretches.end());
  return stretches;
}

SideSeen side_seen(const PlannedBase& planned, const Floor& floor, std::size_t i, Length limit) {
  constexpr double kSlack = 1e-9;
  const Point2 a = floor.frame.to_site(planned.toe[i]);
  const Point2 way = floor.frame.to_site(planned.toe[(i + 1) % planned.toe.size()]) - a;
  const double whole = std::hypot(way.x, way.y);
  SideSeen side;
  side.name = side_name(planned, i);
  side.length = Length::metres(whole);
  double reached = 0;
  const auto unseen = [&](double to) {
    if (to <= reached + kSlack) return;
    const Length from = Length::metres(reached), end = Length::metres(to);
    side.unseen = side.unseen + (end - from);
    if (end - from > side.to - side.from) side.from = from, side.to = end;
  };
  for (const auto& [from, to] : covered(floor, a, (1 / whole) * way, limit.in_metres())) {
    unseen(std::min(from, whole));
    reached = std::max(reached, to);
  }
  unseen(whole);
  return side;
}

std::vector<FarPart> parts_beyond(const PlannedBase& planned, const Floor& floor, Length spacing) {
  std::vector<geometry::Polygon> pieces;
  for (const geometry::PlaneFacet& part : parts_of(floor.toe)) pieces.push_back(part.outline);
  std::vector<Point2> points;
  for (const FloorPoint& p : floor.points) points.push_back(p.at);
  std::vector<FarPart> parts;
  for (const geometry::FarPart& far : geometry::far_parts(pieces, points, spacing.in_metres())) {
    const GridPoint at = floor.frame.to_grid(far.farthest);
    parts.push_back({Area::square_metres(far.area), at, planned.tank.along_ab(at),
                     planned.tank.across_ab(at), Length::metres(far.distance)});
  }
  return parts;
}

std::string metres(Length v) { return fixed(v.in_metres(), 2) + " m"; }

std::string corner_words(const SurveyReach& reach) {
  std::string missed;
  for (const CornerSeen& corner : reach.corners)
    if (!corner.seen) missed += (missed.empty() ? "" : ", ") + corner.name;
  return missed.empty() ? "all corners of the floor were seen"
                        : "corners of the floor not seen: " + missed;
}

std::string side_words(const SurveyReach& reach) {
  std::string missed;
  for (const SideSeen& side : reach.sides)
    if (side.unseen > Length{})
      missed += (missed.empty() ? "" : ", ") + side.name + " " + metres(side.unseen) + " of " +
                metres(side.length);
  return missed.empty() ? "all sides were seen" : "sides not seen: " + missed;
}

std::string part_words(const SurveyReach& reach, Length spacing) {
  if (reach.far_parts.empty())
    return "no part of it lies farther than " + metres(spacing) + " from a point";
  Area area;
  for (const FarPart& part : reach.far_parts) area = area + part.area;
  const std::size_t n = reach.far_parts.size();
  return fixed(area.in_square_metres(), 2) + " m2 of it, in " + std::to_string(n) +
         (n == 1 ? " part, lie" : " parts, lie") + " farther than " + metres(spacing) +
         " from every point";
}

}  // namespace

SurveyReach reach_of(const PlannedBase& planned, const Floor& floor, Length spacing, Length limit) {
  SurveyReach reach;
  reach.limit = limit;
  for (std::size_t i = 0; i < planned.toe.size(); ++i) {
    reach.corners.push_back(corner_seen(planned, floor, i, limit));
    reach.sides.push_back(side_seen(planned, floor, i, limit));
  }
  reach.far_parts = parts_beyond(planned, floor, spacing);
  return reach;
}

std::string reach_words(const SurveyReach& reach, Length spacing) {
  return corner_words(reach) + "; " + side_words(reach) + "; " + part_words(reach, spacing);
}

}  // namespace squaredig::base
