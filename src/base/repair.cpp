#include <algorithm>

#include "base/landscape_internal.h"
#include "base/repair_internal.h"

namespace squaredig::base {
namespace {

RepairSpot spot_of(const BaseInput& input, const PlannedBase& planned, const Floor& floor,
                   std::size_t point) {
  const FloorPoint& p = floor.points[point];
  const GridPoint at = input.points.points[p.row].at.at;
  return {std::string(input.points.label(p.row)), at, planned.tank.along_ab(at),
          planned.tank.across_ab(at), Length::metres(-p.deviation)};
}

RepairPatch patch_of(const BaseInput& input, const PlannedBase& planned, const Floor& floor,
                     const RegionFound& found, Work work, Length limit) {
  RepairPatch patch;
  patch.work = work;
  patch.area = Area::square_metres(found.region.area);
  patch.volume = Volume::cubic_metres(found.region.volume);
  patch.deepest = spot_of(input, planned, floor, found.peak);
  for (const std::size_t point : found.region.points) {
    const RepairSpot spot = spot_of(input, planned, floor, point);
    if (abs(spot.move) > limit + Length::metres(1e-9)) patch.spots.push_back(spot);
  }
  std::stable_sort(patch.spots.begin(), patch.spots.end(),
                   [](const auto& a, const auto& b) { return abs(a.move) > abs(b.move); });
  for (const geometry::Polygon& ring : outlines(found.region.pieces)) {
    patch.rings.emplace_back();
    for (const geometry::Point2 p : ring) patch.rings.back().push_back(floor.frame.to_grid(p));
  }
  if (work == Work::MakeUp)
    patch.note = "over-dug: make up as the specification says; ask the engineer";
  if (found.too_small)
    patch.note += std::string(patch.note.empty() ? "" : "; ") +
                  "smaller than the least repair area down to the dig level: by hand";
  return patch;
}

}  // namespace

std::vector<RepairPatch> plan_repair(const BaseInput& input, const PlannedBase& planned,
                                     const Floor& floor, const DugSurface& dug) {
  std::vector<RepairPatch> patches;
  if (!input.level_tolerance) return patches;
  const double least = input.least_repair.value_or(Area{}).in_square_metres();
  for (const Work work : {Work::Trim, Work::MakeUp}) {
    const bool trim = work == Work::Trim;
    const Length limit = trim ? input.level_tolerance->high : input.level_tolerance->low;
    const Landscape land(floor, dug, floor.toe, trim ? 1 : -1);
    for (const RegionFound& found : regions_beyond(land, limit.in_metres(), least))
      patches.push_back(patch_of(input, planned, floor, found, work, limit));
  }
  for (std::size_t i = 0; i < patches.size(); ++i) patches[i].number = static_cast<int>(i) + 1;
  return patches;
}

}  // namespace squaredig::base
