#include <algorithm>
#include <cmath>
#include <map>

#include "base/landscape_internal.h"
#include "base/repair_internal.h"
#include "base/work_grid_internal.h"
#include "geometry/sum.h"
#include "quantity/number_text.h"

namespace squaredig::base {
namespace {

using geometry::Polygon;
using Found = std::vector<RegionFound>;

RepairSpot spot_of(const BaseInput& input, const PlannedBase& planned, const Floor& floor,
                   std::size_t point) {
  const FloorPoint& p = floor.points[point];
  const GridPoint at = input.points.points[p.row].at.at;
  return {std::string(input.points.label(p.row)), at, planned.tank.along_ab(at),
          planned.tank.across_ab(at), Length::metres(-p.deviation)};
}

std::pair<Length, Length> widened(std::pair<Length, Length> reach, Length v) {
  return {std::min(reach.first, v), std::max(reach.second, v)};
}

class Repair {
 public:
  Repair(const BaseInput& input, const PlannedBase& planned, const Floor& floor,
         const DugSurface& dug)
      : input_(input),
        planned_(planned),
        floor_(floor),
        dug_(dug),
        locator_(dug.surface),
        least_(input.least_repair.value_or(Area{}).in_square_metres()) {}

  std::vector<RepairPatch> patches(Work work) const {
    const double sign = work == Work::Trim ? 1 : -1;
    const Length limit =
        work == Work::Trim ? input_.level_tolerance->high : input_.level_tolerance->low;
    const Landscape land(floor_, dug_, floor_.toe, sign);
    Found found = regions_beyond(land, limit.in_metres());
    std::vector<RepairPatch> patches;
    if (least_ > 0) {
      Found small = take_small(land, found);
      patches = by_machine(work, found, std::move(small));
    }
    for (const RegionFound& left : found) patches.push_back(of_region(work, left));
    std::stable_sort(patches.begin(), patches.end(), [](const auto& a, const auto& b) {
      return abs(a.deepest.move) > abs(b.deepest.move);
    });
    return patches;
  }

 private:
  // Takes out those that are too small for a machine, as far down as the dig level.
  Found take_small(const Landscape& land, Found& found) const {
    enum class Size : char { Unknown, Small, Large };
    std::vector<Size> size(land.points(), Size::Unknown);
    Found small, rest;
    for (RegionFound& f : found) {
      if (size[f.peak] == Size::Unknown) {
        Region whole = land.region(f.peak, 0);
        const Size known = whole.area < least_ ? Size::Small : Size::Large;
        for (const std::size_t point : whole.points) size[point] = known;
        if (known == Size::Small) small.push_back({std::move(whole), f.peak});
      }
      if (size[f.peak] == Size::Large) rest.push_back(std::move(f));
    }
    found = std::move(rest);
    return small;
  }

  // The places a machine works, and the small ones its squares reach. The others stay in `found`.
  std::vector<RepairPatch> by_machine(Work work, Found& found, Found small) const {
    Found worked = std::move(found);
    WorkGrid grid(floor_, axes_of(planned_, floor_), std::sqrt(least_));
    for (const RegionFound& f : worked) mark(grid, f);
    int count = grid.work();
    for (bool more = true; more;) {
      more = false;
      for (std::size_t i = 0; i < small.size();) {
        if (!reached(grid, small[i])) {
          ++i;
          continue;
        }
        mark(grid, small[i]);
        worked.push_back(std::move(small[i]));
        small.erase(small.begin() + static_cast<std::ptrdiff_t>(i));
        more = true;
      }
      if (more) count = grid.work();
    }
    found = std::move(small);
    std::vector<Found> of_patch(static_cast<std::size_t>(count));
    for (RegionFound& f : worked)
      of_patch[static_cast<std::size_t>(reached(grid, f).value())].push_back(std::move(f));
    std::vector<RepairPatch> patches;
    patches.reserve(of_patch.size());
    for (int i = 0; i < count; ++i)
      patches.push_back(of_squares(work, grid, i, of_patch[static_cast<std::size_t>(i)]));
    return patches;
  }

  Piece spot(const RegionFound& f) const { return {{floor_.points[f.peak].at}, {0}}; }
  void mark(WorkGrid& grid, const RegionFound& f) const {
    grid.mark(spot(f));
    for (const Piece& piece : f.region.pieces) grid.mark(piece);
  }
  // All of a region hangs together, so that one piece of it speaks for all; of a small one any.
  std::optional<int> reached(const WorkGrid& grid, const RegionFound& f) const {
    auto number = grid.reached(spot(f));
    for (const Piece& piece : f.region.pieces)
      if (!number) number = grid.reached(piece);
    return number;
  }

  RepairPatch of_squares(Work work, const WorkGrid& grid, int number, const Found& found) const {
    RepairPatch patch = begun(work, found);
    std::vector<geometry::PlaneFacet> parts;
    geometry::Sum area;
    for (Polygon& part : grid.parts(number)) {
      area.add(geometry::signed_area(part));
      parts.push_back({std::move(part), {}});
    }
    const geometry::Between held = geometry::between(dug_.surface, locator_, parts);
    patch.area = Area::square_metres(area.value());
    patch.volume = Volume::cubic_metres(work == Work::Trim ? held.above : held.below);
    if (area.value() < least_ * (1 - 1e-9))
      note(patch, "the toe leaves less than the least repair area");
    return finished(std::move(patch), grid.outline(number));
  }

  // Left as the ground has it.
  RepairPatch of_region(Work work, const RegionFound& found) const {
    RepairPatch patch = begun(work, {found});
    patch.area = Area::square_metres(found.region.area);
    patch.volume = Volume::cubic_metres(found.region.volume);
    patch.by_hand = least_ > 0;
    if (patch.by_hand)
      note(patch, "smaller than the least repair area down to the dig level: by hand");
    return finished(std::move(patch), outlines(found.region.pieces));
  }

  // What the places of a patch say of it.
  RepairPatch begun(Work work, const Found& found) const {
    RepairPatch patch;
    patch.work = work;
    patch.places = static_cast<int>(found.size());
    const Length limit =
        work == Work::Trim ? input_.level_tolerance->high : input_.level_tolerance->low;
    for (const RegionFound& f : found)
      for (const std::size_t point : f.region.points) {
        const RepairSpot spot = spot_of(input_, planned_, floor_, point);
        if (abs(spot.move) > limit + Length::metres(1e-9)) patch.spots.push_back(spot);
      }
    std::stable_sort(patch.spots.begin(), patch.spots.end(),
                     [](const auto& a, const auto& b) { return abs(a.move) > abs(b.move); });
    patch.deepest = patch.spots.front();
    patch.beyond = beyond(limit, found);
    if (work == Work::MakeUp)
      note(patch, "over-dug: make up as the specification says; ask the engineer");
    if (found.size() > 1) note(patch, std::to_string(found.size()) + " places worked as one");
    return patch;
  }

  // The regions may reach down to the dig level: only what stands beyond the tolerance counts.
  static Area beyond(Length limit, const Found& found) {
    geometry::Sum area;
    for (const RegionFound& f : found) area.add(area_above(f.region, limit.in_metres()));
    return Area::square_metres(area.value());
  }

  static void note(RepairPatch& patch, const std::string& words) {
    patch.note += (patch.note.empty() ? "" : "; ") + words;
  }

  RepairPatch finished(RepairPatch patch, const std::vector<Polygon>& rings) const {
    patch.along_ab = {patch.deepest.along_ab, patch.deepest.along_ab};
    patch.across_ab = {patch.deepest.across_ab, patch.deepest.across_ab};
    for (const Polygon& ring : rings) {
      patch.rings.emplace_back();
      for (const geometry::Point2 p : ring) {
        const GridPoint at = floor_.frame.to_grid(p);
        patch.rings.back().push_back(at);
        patch.along_ab = widened(patch.along_ab, planned_.tank.along_ab(at));
        patch.across_ab = widened(patch.across_ab, planned_.tank.across_ab(at));
      }
    }
    return patch;
  }

  const BaseInput& input_;
  const PlannedBase& planned_;
  const Floor& floor_;
  const DugSurface& dug_;
  geometry::Locator locator_;
  double least_;
};

std::string machine_words(Area least) {
  return "a repair is worked in squares of " + fixed(std::sqrt(least.in_square_metres()), 2) +
         " m along and square to A-B: the side of a square of least_repair_m2";
}

}  // namespace

RepairAnswer plan_repair(const BaseInput& input, const PlannedBase& planned, const Floor& floor,
                         const DugSurface& dug) {
  RepairAnswer answer;
  if (!input.level_tolerance) return answer;
  const Repair repair(input, planned, floor, dug);
  for (const Work work : {Work::Trim, Work::MakeUp})
    for (RepairPatch& patch : repair.patches(work)) answer.patches.push_back(std::move(patch));
  for (std::size_t i = 0; i < answer.patches.size(); ++i)
    answer.patches[i].number = static_cast<int>(i) + 1;
  const bool machine = std::any_of(answer.patches.begin(), answer.patches.end(),
                                   [](const RepairPatch& p) { return !p.by_hand; });
  if (machine && input.least_repair && *input.least_repair > Area{})
    answer.assumed.push_back(machine_words(*input.least_repair));
  return answer;
}

}  // namespace squaredig::base
