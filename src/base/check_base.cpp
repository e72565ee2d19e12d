#include "base/check_base.h"

#include <algorithm>

#include "base/after_repair_internal.h"
#include "base/checks_internal.h"
#include "base/decision_internal.h"
#include "base/repair_internal.h"

namespace squaredig::base {
namespace {

template <class T>
void append(std::vector<T>& to, std::vector<T> more) {
  for (T& x : more) to.push_back(std::move(x));
}

constexpr const char* kOnTheBase = "the as-dug base, with bedding of even thickness";
constexpr const char* kOnTheBedding = "the top of bedding as laid";

bool nothing_asked(const std::vector<Check>& checks) {
  return std::all_of(checks.begin(), checks.end(),
                     [](const Check& c) { return c.verdict == Verdict::NotAsked; });
}

// The units stand on the bedding as laid, where that was surveyed.
StackAnswer stack_of(const BaseInput& input, const PlannedBase& planned, const Floor& floor,
                     const std::optional<DugSurface>& dug) {
  const auto bedding = lay_out_bedding(input, planned);
  if (!bedding) return judge_stack(input, planned, floor, dug, kOnTheBase);
  StackAnswer answer =
      judge_stack(input, planned, *bedding, build_surface(*bedding), kOnTheBedding);
  answer.bedding_top = deviations_of(*bedding);
  return answer;
}

std::vector<Outlier> outliers_of(const BaseInput& input, const Floor& floor, const DugSurface& dug,
                                 const std::vector<JudgedPoint>& points) {
  std::vector<Outlier> outliers;
  for (const OutlierRow& row : find_outliers(floor, dug)) {
    if (points[row.point].verdict == Verdict::Conforms) continue;
    const std::size_t at = floor.points[row.point].row;
    const auto twin = row.contradicted_by;
    outliers.push_back({std::string(input.points.label(at)), input.points.place(at), row.by,
                        twin ? points[*twin].point : ""});
  }
  return outliers;
}

// The result with what the surface tells, once its points are judged.
BaseResult with_surface(BaseResult result, const BaseInput& input, const PlannedBase& planned,
                        const Floor& floor, const std::optional<DugSurface>& dug) {
  SkinAnswer skin = judge_skin(input, planned, floor, dug);
  result.deviation->area_mean = skin.area_mean;
  result.skin = std::move(skin.skin);
  result.measured_area = skin.measured_area;
  result.trim = skin.trim;
  result.make_up = skin.make_up;
  append(result.checks, std::move(skin.checks));
  append(result.head.assumed, std::move(skin.assumed));
  append(result.head.cautions, std::move(skin.cautions));
  append(result.head.findings, std::move(skin.findings));
  if (!dug) return result;
  RepairAnswer repair = plan_repair(input, planned, floor, *dug);
  result.repair = std::move(repair.patches);
  append(result.head.assumed, std::move(repair.assumed));
  result.outliers = outliers_of(input, floor, *dug, result.points);
  for (const Outlier& outlier : result.outliers) {
    result.head.findings.push_back({"outlier", outlier_words(outlier)});
    for (JudgedPoint& p : result.points)
      if (p.place == outlier.place)
        p.finding += std::string(p.finding.empty() ? "" : ", ") + "stands alone";
  }
  return result;
}

void add_levels(const BaseInput& input, const PlannedBase& planned, const Floor& floor,
                BaseResult& result) {
  LevelAnswer levels = judge_levels(input, planned, floor);
  result.points = std::move(levels.points);
  result.deviation = levels.deviation;
  append(result.checks, std::move(levels.checks));
  PlaneAnswer plane = judge_plane(input, planned, floor);
  result.best_plane = plane.best_plane;
  result.flatness = plane.flatness;
  append(result.checks, std::move(plane.checks));
  append(result.head.findings, std::move(plane.findings));
}

void add_reach(const BaseInput& input, const PlannedBase& planned, const Floor& floor,
               BaseResult& result) {
  CoverageAnswer coverage = judge_coverage(input, planned, floor);
  result.largest_hole = coverage.largest_hole;
  result.holes = std::move(coverage.holes);
  result.widest_hole = coverage.widest_hole;
  result.reach = std::move(coverage.reach);
  ExtentAnswer extent = judge_extent(input, planned, floor);
  append(result.head.cautions, std::move(extent.cautions));
  append(result.checks, {coverage.check, extent.check});
}

// One survey by itself.
BaseResult judge(const BaseInput& input, const PlannedBase& planned) {
  Floor floor = lay_out(input, planned);
  const auto dug = build_surface(floor);
  BaseResult result;
  result.surveyed = input.surveyed;
  result.ab = planned.tank.ab;
  result.tank = planned.tank.corners;
  result.toe = planned.toe;
  result.floor_area = Area::square_metres(geometry::signed_area(floor.toe));
  add_levels(input, planned, floor, result);
  StraightedgeAnswer rule = judge_straightedge(input, planned, floor, dug);
  result.straightedge = rule.reading;
  result.checks.push_back(rule.check);
  add_reach(input, planned, floor, result);
  StackAnswer stack = stack_of(input, planned, floor, dug);
  result.bedding_top = stack.bedding_top;
  result.stack_gap = std::move(stack.gap);
  append(result.head.findings, std::move(stack.findings));
  result.checks.push_back(stack.check);
  result = with_surface(std::move(result), input, planned, floor, dug);
  CompactionAnswer compaction = judge_compaction(input);
  result.compaction = std::move(compaction.outcomes);
  result.checks.push_back(compaction.check);
  result.aside = std::move(floor.aside);
  result.verdict = overall(result.checks);
  return result;
}

// The verdict had the outliers not been measured.
std::optional<Verdict> verdict_without(const BaseInput& input, const PlannedBase& planned,
                                       const std::vector<Outlier>& outliers) {
  if (outliers.empty()) return std::nullopt;
  BaseInput rest = input;
  std::size_t row = 0;
  std::erase_if(rest.points.points, [&](const SurveyPoint&) {
    const Place place = input.points.place(row++);
    return std::any_of(outliers.begin(), outliers.end(),
                       [&](const Outlier& o) { return o.place == place; });
  });
  return judge(rest, planned).verdict;
}

}  // namespace

BaseResult check_base(const BaseInput& input, const PlannedBase& planned) {
  const BaseInput last = input.after_repair ? after_repair(input) : input;
  BaseResult result = judge(last, planned);
  result.verdict_without_outliers = verdict_without(last, planned, result.outliers);
  if (input.after_repair) {
    BaseResult first = judge(input, planned);
    for (const PointAside& aside : first.aside) result.aside.push_back(aside);
    result.before = compared(std::move(first), result);
  }
  if (nothing_asked(result.checks))
    result.head.cautions.push_back("no tolerance was entered: nothing was judged");
  return result;
}

}  // namespace squaredig::base
