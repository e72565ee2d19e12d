#include <algorithm>

#include "base/checks_internal.h"
#include "base/decision_internal.h"
#include "base/straightedge_internal.h"

namespace squaredig::base {
namespace {

using geometry::Point2;
using Coefficients = std::vector<std::pair<std::size_t, double>>;

// The opening is the height of the worst point less that of the rule over it, either way up.
Coefficients of_opening(const Profiles& profiles, const RulePlace& rule) {
  const Point2 whole = rule.touch_to - rule.touch_from;
  const double length2 = geometry::dot(whole, whole);
  if (length2 <= 0) return {};
  const double t = geometry::dot(rule.worst - rule.touch_from, whole) / length2;
  Coefficients c;
  const auto add = [&](Point2 p, double share) {
    for (const auto& of_point : profiles.shares_at(p)) {
      const auto [point, part] = of_point;
      const auto same = std::find_if(c.begin(), c.end(),
                                     [&](const auto& x) { return x.first == of_point.first; });
      if (same == c.end()) {
        c.emplace_back(point, share * part);
      } else {
        same->second += share * part;
      }
    }
  };
  add(rule.worst, 1);
  add(rule.touch_from, t - 1);
  add(rule.touch_to, -t);
  return c;
}

RuleReading reading_of(const Floor& floor, const RulePlace& rule) {
  const auto grid = [&](Point2 p) { return floor.frame.to_grid(p); };
  return {Length::metres(rule.width), grid(rule.from),     grid(rule.to),
          grid(rule.touch_from),      grid(rule.touch_to), grid(rule.worst)};
}

Check without_value(const std::optional<Amount>& limit, const char* why) {
  Check check = decided("straightedge", Bound::AtMost, std::nullopt, limit, std::nullopt);
  check.words = why;
  return check;
}

}  // namespace

StraightedgeAnswer judge_straightedge(const BaseInput& input, const PlannedBase& planned,
                                      const Floor& floor, const std::optional<DugSurface>& dug) {
  if (!input.straightedge) return {std::nullopt, without_value({}, "no straightedge is given")};
  const Amount limit = input.straightedge->tolerance;
  if (!dug) return {std::nullopt, without_value(limit, "it takes three points not on one line")};
  const auto rule = widest_opening(*dug, floor.toe, input.straightedge->length.in_metres());
  if (!rule) return {std::nullopt, without_value(limit, "no rule fits on the surveyed floor")};
  StraightedgeAnswer answer;
  answer.reading = reading_of(floor, *rule);
  const Profiles profiles(*dug, floor.toe);
  answer.check = decided("straightedge", Bound::AtMost, answer.reading->opening, limit,
                         Length::metres(floor.expanded(of_opening(profiles, *rule))));
  answer.check.at = answer.reading->worst;
  answer.check.words =
      "worst at " + tied(planned.tank, answer.reading->worst) + ", the rule from " +
      tied(planned.tank, answer.reading->from) + " to " + tied(planned.tank, answer.reading->to) +
      to_settle(answer.check, floor, {1, "each point round where it touches and stands open"});
  return answer;
}

}  // namespace squaredig::base
