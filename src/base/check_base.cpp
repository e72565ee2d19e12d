#include "base/check_base.h"

#include "base/checks_internal.h"
#include "base/decision_internal.h"

namespace squaredig::base {
namespace {

template <class T>
void append(std::vector<T>& to, std::vector<T> more) {
  for (T& x : more) to.push_back(std::move(x));
}

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
  CoverageAnswer coverage = judge_coverage(input, floor);
  SkinAnswer skin = judge_skin(input, planned, floor, dug);

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
  append(result.checks, std::move(levels.checks));
  append(result.checks, std::move(plane.checks));
  result.checks.push_back(std::move(coverage.check));
  append(result.checks, std::move(skin.checks));
  append(result.head.assumed, std::move(skin.assumed));
  append(result.head.cautions, std::move(skin.cautions));
  append(result.head.findings, std::move(plane.findings));
  result.verdict = overall(result.checks);
  if (nothing_asked(result.checks))
    result.head.cautions.push_back("no tolerance was entered: nothing was judged");
  return result;
}

}  // namespace squaredig::base
