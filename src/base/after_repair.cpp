#include <algorithm>

#include "base/after_repair_internal.h"
#include "base/decision_internal.h"
#include "geometry/polygon.h"
#include "geometry/site_frame.h"

namespace squaredig::base {
namespace {

bool is_toe(const BaseInput& input, const PointTable& points, std::size_t row) {
  return std::find(input.toe_codes.begin(), input.toe_codes.end(), points.code(row)) !=
         input.toe_codes.end();
}

using Rings = std::vector<geometry::Polygon>;

// Inside an odd number of rings, or on one.
bool holds(const Rings& rings, geometry::Point2 p) {
  constexpr double kGrace = 1e-6;
  bool inside = false;
  for (const geometry::Polygon& ring : rings) {
    const int side = geometry::side_of(ring, p, kGrace);
    if (side == 0) return true;
    if (side > 0) inside = !inside;
  }
  return inside;
}

PatchAfter looked_at_again(RepairPatch patch, const BaseResult& second) {
  PatchAfter after;
  const auto frame = geometry::SiteFrame::around({patch.deepest.at, Elevation{}});
  Rings rings;
  for (const auto& ring : patch.rings) {
    rings.emplace_back();
    for (const GridPoint p : ring) rings.back().push_back(frame.to_site(p));
  }
  for (const JudgedPoint& p : second.points) {
    if (!holds(rings, frame.to_site(p.at.at))) continue;
    after.verdict = after.verdict ? worse(*after.verdict, p.verdict) : p.verdict;
    if (!after.point.empty() && abs(p.deviation) <= abs(after.deviation)) continue;
    after.point = p.point;
    after.deviation = p.deviation;
  }
  after.patch = std::move(patch);
  return after;
}

}  // namespace

BaseInput after_repair(const BaseInput& input) {
  BaseInput after = input;
  after.surveyed = input.after_repair_surveyed;
  after.points = *input.after_repair;
  for (std::size_t row = 0; row < after.points.size(); ++row)
    if (is_toe(input, after.points, row)) return after;
  const auto files = static_cast<std::uint16_t>(after.points.files.size());
  for (const std::string& file : input.points.files) after.points.add_file(file);
  for (std::size_t row = 0; row < input.points.size(); ++row) {
    if (!is_toe(input, input.points, row)) continue;
    SurveyPoint point = input.points.points[row];
    point.file = static_cast<std::uint16_t>(point.file + files);
    after.points.add(point, input.points.label(row), input.points.code(row));
  }
  return after;
}

BeforeRepair compared(BaseResult first, const BaseResult& second) {
  BeforeRepair before;
  for (std::size_t i = 0; i < first.checks.size(); ++i) {
    const Verdict then = first.checks[i].verdict, now = second.checks[i].verdict;
    const bool conforms = now == Verdict::Conforms;
    if (then == Verdict::DoesNotConform || then == Verdict::NotProven)
      (conforms ? before.fixed : before.not_fixed).push_back(first.checks[i].name);
    if (then == Verdict::Conforms && !conforms) before.spoiled.push_back(first.checks[i].name);
  }
  for (RepairPatch& patch : first.repair)
    before.patches.push_back(looked_at_again(std::move(patch), second));
  before.surveyed = std::move(first.surveyed);
  before.verdict = first.verdict;
  before.checks = std::move(first.checks);
  before.points = std::move(first.points);
  before.deviation = first.deviation;
  before.trim = first.trim;
  before.make_up = first.make_up;
  return before;
}

}  // namespace squaredig::base
