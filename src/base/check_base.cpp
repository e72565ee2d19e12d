#include "base/check_base.h"

#include "base/checks_internal.h"
#include "base/decision_internal.h"

namespace squaredig::base {
namespace {

template <class T>
void append(std::vector<T>& to, std::vector<T> more) {
  for (T& x : more) to.push_back(std::move(x));
}

constexpr const char* kOnTheBase = "the as-dug base, with bedding of even thickness";

bool nothing_asked(const std::vector<Check>& checks) {
  for (const Check& c : checks)
    if (c.verdict != Verdict::NotAsked) return false;
  return true;
}

}  // namespace

BaseResult check_base(const BaseInput& input, const PlannedBase& planned) {
  Floor floor = lay_out(input, planned);
  const auto dug = build_surface(floor);
  LevelAnswer levels = judge_levels(input, planned, floor);
  PlaneAnswer plane = judge_plane(input, planned, floor);
  StraightedgeAnswer rule = judge_straightedge(input, planned, floor, dug);
  CoverageAnswer coverage = judge_coverage(input, floor);
  ExtentAnswer extent = judge_extent(input, planned, floor);
  StackAnswer stack = judge_stack(input, planned, floor, dug, kOnTheBase);
  SkinAnswer skin = judge_skin(input, planned, floor, dug);
  CompactionAnswer compaction = judge_compaction(input);

  BaseResult result;
  result.surveyed = input.surveyed;
  result.points = std::move(levels.points);
  result.aside = std::move(floor.aside);
  result.deviation = levels.deviation;
  result.deviation->area_mean = skin.area_mean;
  result.best_plane = plane.best_plane;
  result.flatness = plane.flatness;
  result.skin = skin.skin;
  result.floor_area = Area::square_metres(geometry::signed_area(floor.toe));
  result.measured_area = skin.measured_area;
  result.trim = skin.trim;
  result.make_up = skin.make_up;
  result.largest_hole = coverage.largest_hole;
  result.straightedge = rule.reading;
  result.stack_gap = std::move(stack.gap);
  result.compaction = std::move(compaction.outcomes);
  append(result.checks, std::move(levels.checks));
  append(result.checks, std::move(plane.checks));
  append(result.checks, {rule.check, coverage.check, extent.check, stack.check});
  append(result.checks, std::move(skin.checks));
  result.checks.push_back(compaction.check);
  append(result.head.assumed, std::move(skin.assumed));
  append(result.head.cautions, std::move(extent.cautions));
  append(result.head.cautions, std::move(skin.cautions));
  append(result.head.findings, std::move(plane.findings));
  append(result.head.findings, std::move(stack.findings));
  result.verdict = overall(result.checks);
  if (nothing_asked(result.checks))
    result.head.cautions.push_back("no tolerance was entered: nothing was judged");
  return result;
}

}  // namespace squaredig::base
