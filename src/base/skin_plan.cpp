// Where on the footprint the bedding would be thinner than the least or thicker than the most:
// where the as-dug surface stands above the underside lowered by the least, or below it lowered by
// the most.
#include <algorithm>
#include <cmath>

#include "base/checks_internal.h"
#include "base/landscape_internal.h"
#include "geometry/sum.h"
#include "quantity/number_text.h"

namespace squaredig::base {
namespace {

// The highest corner of a region, and its height.
std::pair<geometry::Point2, double> top_of(const Region& region) {
  std::pair<geometry::Point2, double> top{{}, -HUGE_VAL};
  for (const Piece& piece : region.pieces)
    for (std::size_t i = 0; i < piece.corners.size(); ++i)
      if (piece.height[i] > top.second) top = {piece.corners[i], piece.height[i]};
  return top;
}

SkinPatch patch_of(const PlannedBase& planned, const Floor& floor, const Region& region,
                   geometry::Point2 at, Length worst) {
  SkinPatch patch;
  patch.area = Area::square_metres(region.area);
  patch.worst = worst;
  patch.at = floor.frame.to_grid(at);
  patch.along_ab = planned.tank.along_ab(patch.at);
  patch.across_ab = planned.tank.across_ab(patch.at);
  for (const geometry::Polygon& ring : outlines(region.pieces)) {
    patch.rings.emplace_back();
    for (const geometry::Point2 p : ring) patch.rings.back().push_back(floor.frame.to_grid(p));
  }
  return patch;
}

// Sign +1: the bedding below `limit`, under humps; -1: above it, over hollows.
std::vector<SkinPatch> patches(const PlannedBase& planned, const Floor& floor,
                               const DugSurface& dug, Length limit, double sign) {
  constexpr double kSlack = 1e-9;  // on the limit is inside
  const double contour = sign * (planned.thickness - limit).in_metres();
  const Landscape land(floor, dug, floor.footprint, sign);
  std::vector<SkinPatch> found;
  for (const RegionFound& f : regions_beyond(land, contour)) {
    const auto [at, height] = top_of(f.region);
    // a hump beside the tank may not reach under it
    if (height <= contour + kSlack || f.region.area <= 0) continue;
    const Length worst = planned.thickness - Length::metres(sign * height);
    found.push_back(patch_of(planned, floor, f.region, at, worst));
  }
  std::stable_sort(found.begin(), found.end(),
                   [](const auto& a, const auto& b) { return a.area > b.area; });
  return found;
}

std::string sentence(const PlannedBase& planned, const std::vector<SkinPatch>& patches,
                     const SkinPatch& worst, const std::string& beyond, const char* extreme) {
  geometry::Sum area;
  for (const SkinPatch& patch : patches) area.add(patch.area.in_square_metres());
  const std::string places =
      patches.size() == 1 ? "one place" : std::to_string(patches.size()) + " places";
  return "the bedding would be " + beyond + " in " + places + ", " + fixed(area.value(), 2) +
         " m2 of the footprint; " + extreme + " " + in_mm(worst.worst) + ", " +
         tied(planned.tank, worst.at);
}

}  // namespace

SkinPlan plan_skin(const PlannedBase& planned, const Floor& floor, const DugSurface& dug) {
  SkinPlan plan;
  if (planned.least) plan.too_thin = patches(planned, floor, dug, *planned.least, 1);
  if (planned.most) plan.too_thick = patches(planned, floor, dug, *planned.most, -1);
  return plan;
}

std::vector<Finding> skin_findings(const PlannedBase& planned, const Skin& skin) {
  const auto thinner = [](const auto& a, const auto& b) { return a.worst < b.worst; };
  std::vector<Finding> findings;
  if (skin.too_thin && !skin.too_thin->empty())
    findings.push_back(
        {"bedding_too_thin",
         sentence(planned, *skin.too_thin,
                  *std::min_element(skin.too_thin->begin(), skin.too_thin->end(), thinner),
                  "thinner than the least, " + in_mm(*planned.least) + ",", "thinnest")});
  if (skin.too_thick && !skin.too_thick->empty())
    findings.push_back(
        {"bedding_too_thick",
         sentence(planned, *skin.too_thick,
                  *std::max_element(skin.too_thick->begin(), skin.too_thick->end(), thinner),
                  "thicker than the most, " + in_mm(*planned.most) + ",", "thickest")});
  if (!findings.empty()) findings.push_back({"tank_shift", skin.shift_words});
  return findings;
}

}  // namespace squaredig::base
