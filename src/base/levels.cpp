#include <cmath>

#include "base/checks_internal.h"
#include "base/decision_internal.h"
#include "geometry/sum.h"

namespace squaredig::base {
namespace {

using Coefficients = std::vector<std::pair<std::size_t, double>>;

// The check of one side over every point: the point with the worst verdict speaks for all, of
// those the one farthest out.
struct Side {
  const char* name = "";
  Bound bound = Bound::AtMost;
  std::optional<Length> limit;
  double sign = 1;  // +1 where more is worse
};

Verdict one_point(const Side& side, Length deviation, Length uncertainty) {
  if (!side.limit) return Verdict::NotAsked;
  return side.bound == Bound::AtMost ? at_most(deviation, *side.limit, uncertainty)
                                     : at_least(deviation, *side.limit, uncertainty);
}

Check judge_side(const Side& side, const PlannedBase& planned, const Floor& floor,
                 const std::vector<JudgedPoint>& points) {
  std::size_t worst = 0;
  Verdict verdict = one_point(side, points[0].deviation, points[0].uncertainty);
  for (std::size_t i = 1; i < points.size(); ++i) {
    const Verdict v = one_point(side, points[i].deviation, points[i].uncertainty);
    const bool farther =
        side.sign * (points[i].deviation - points[worst].deviation).in_metres() > 0;
    if (v == verdict ? !farther : worse(v, verdict) == verdict) continue;
    worst = i;
    verdict = v;
  }
  const JudgedPoint& p = points[worst];
  Check check =
      decided(side.name, side.bound, p.deviation,
              side.limit ? std::optional<Amount>(*side.limit) : std::nullopt, p.uncertainty);
  check.at = p.at.at;
  check.words = "point " + quoted(p.point) + ", " + tied(planned.tank, p.at.at) +
                to_settle(check, floor, {1, "that point", true});
  return check;
}

std::string finding_of(const JudgedPoint& p, Verdict high, Verdict low) {
  if (high == Verdict::DoesNotConform) return "too high";
  if (low == Verdict::DoesNotConform) return "too low";
  if (high == Verdict::NotProven || low == Verdict::NotProven)
    return p.deviation > Length{} ? "high, not proven" : "low, not proven";
  return {};
}

JudgedPoint judged(const BaseInput& input, const PlannedBase& planned, const Floor& floor,
                   std::size_t i) {
  const FloorPoint& point = floor.points[i];
  JudgedPoint out;
  out.point = std::string(input.points.label(point.row));
  out.code = std::string(input.points.code(point.row));
  out.place = input.points.place(point.row);
  out.at = input.points.points[point.row].at;
  out.dig_level = floor.frame.to_grid_height(floor.dig_level.at(point.at));
  out.deviation = Length::metres(point.deviation);
  out.bedding = planned.thickness - out.deviation;
  out.uncertainty = Length::metres(floor.expanded_with_common(Coefficients{{i, 1}}));
  out.along_ab = planned.tank.along_ab(out.at.at);
  out.across_ab = planned.tank.across_ab(out.at.at);
  return out;
}

Check judge_mean(const BaseInput& input, const Floor& floor, Length mean) {
  Coefficients all;
  for (std::size_t i = 0; i < floor.points.size(); ++i)
    all.emplace_back(i, 1 / static_cast<double>(floor.points.size()));
  Check check =
      decided("level mean", Bound::BothSides, mean,
              input.mean_tolerance ? std::optional<Amount>(*input.mean_tolerance) : std::nullopt,
              Length::metres(floor.expanded_with_common(all)));
  check.words = "plain mean of " + std::to_string(floor.points.size()) + " points" +
                to_settle(check, floor, {floor.points.size(), "points spread alike", true});
  return check;
}

}  // namespace

Deviations deviations_of(const Floor& floor) {
  geometry::Sum sum, squares;
  double high = -HUGE_VAL, low = HUGE_VAL;
  for (const FloorPoint& p : floor.points) {
    sum.add(p.deviation);
    squares.add(p.deviation * p.deviation);
    high = std::max(high, p.deviation);
    low = std::min(low, p.deviation);
  }
  const auto n = static_cast<double>(floor.points.size());
  return {Length::metres(sum.value() / n), std::nullopt,
          Length::metres(std::sqrt(squares.value() / n)), Length::metres(high),
          Length::metres(low)};
}

LevelAnswer judge_levels(const BaseInput& input, const PlannedBase& planned, const Floor& floor) {
  const auto& tolerance = input.level_tolerance;
  const Side high{"level high", Bound::AtMost,
                  tolerance ? std::optional(tolerance->high) : std::nullopt, 1};
  const Side low{"level low", Bound::AtLeast,
                 tolerance ? std::optional(-tolerance->low) : std::nullopt, -1};
  LevelAnswer answer;
  for (std::size_t i = 0; i < floor.points.size(); ++i) {
    JudgedPoint p = judged(input, planned, floor, i);
    const Verdict at_top = one_point(high, p.deviation, p.uncertainty);
    const Verdict at_bottom = one_point(low, p.deviation, p.uncertainty);
    p.verdict = worse(at_top, at_bottom);
    p.finding = finding_of(p, at_top, at_bottom);
    answer.points.push_back(std::move(p));
  }
  answer.deviation = deviations_of(floor);
  answer.checks.push_back(judge_side(high, planned, floor, answer.points));
  answer.checks.push_back(judge_side(low, planned, floor, answer.points));
  answer.checks.push_back(judge_mean(input, floor, answer.deviation.mean));
  return answer;
}

}  // namespace squaredig::base
