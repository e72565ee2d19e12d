#include <algorithm>
#include <cmath>
#include <set>

#include "base/outline_internal.h"
#include "base/repair_internal.h"
#include "geometry/sum.h"

namespace squaredig::base {
namespace {

using geometry::Point2;

// A convex part of the floor with the deviation at its corners, up positive for the work in hand.
struct Part {
  std::vector<Point2> corners;
  std::vector<double> height;
};

// The part at or above a contour.
Part above(const Part& part, double contour) {
  Part out;
  const std::size_t n = part.corners.size();
  for (std::size_t i = 0; i < n; ++i) {
    const std::size_t j = (i + 1) % n;
    const double at = part.height[i] - contour, next = part.height[j] - contour;
    if (at >= 0) {
      out.corners.push_back(part.corners[i]);
      out.height.push_back(part.height[i]);
    }
    if ((at > 0 && next < 0) || (at < 0 && next > 0)) {
      const double t = at / (at - next);
      out.corners.push_back(part.corners[i] + t * (part.corners[j] - part.corners[i]));
      out.height.push_back(contour);
    }
  }
  return out;
}

// One connected part of the floor beyond a contour.
struct Region {
  std::set<std::size_t> points;  // judged points in it
  std::vector<geometry::Polygon> pieces;
  double area = 0;
  double volume = 0;
};

class Landscape {
 public:
  Landscape(const Floor& floor, const DugSurface& dug, double sign)
      : floor_(floor), sign_(sign), parts_(dug.surface.triangles.size()) {
    const geometry::Locator locator(dug.surface);
    geometry::overlay(dug.surface, locator, parts_of(floor.toe), [&](const geometry::Overlap& o) {
      Part part{{o.corners.begin(), o.corners.end()}, {}};
      for (const double d : o.differences) part.height.push_back(sign * d);
      parts_[static_cast<std::size_t>(o.triangle)].push_back(std::move(part));
    });
    triangles_of_.resize(floor.points.size());
    corners_of_.resize(dug.surface.triangles.size());
    for (std::size_t t = 0; t < dug.surface.triangles.size(); ++t)
      for (const geometry::Index v : dug.surface.triangles[t]) {
        const std::size_t point = dug.source[static_cast<std::size_t>(v)];
        corners_of_[t].push_back(point);
        if (triangles_of_[point].empty() || triangles_of_[point].back() != t)
          triangles_of_[point].push_back(t);
      }
  }

  double height(std::size_t point) const { return sign_ * floor_.points[point].deviation; }

  // The region round a point: two triangles belong together where they share a corner beyond the
  // contour, since along a common edge the deviation is greatest at one of its ends.
  Region region(std::size_t peak, double contour) const {
    Region region;
    std::set<std::size_t> triangles;
    std::vector<std::size_t> open{peak};
    region.points.insert(peak);
    while (!open.empty()) {
      const std::size_t point = open.back();
      open.pop_back();
      for (const std::size_t t : triangles_of_[point]) {
        if (!triangles.insert(t).second) continue;
        for (const std::size_t other : corners_of_[t])
          if (height(other) > contour && region.points.insert(other).second) open.push_back(other);
      }
    }
    geometry::Sum area, volume;
    for (const std::size_t t : triangles)
      for (const Part& part : parts_[t]) {
        Part beyond = above(part, contour);
        if (beyond.corners.size() < 3) continue;
        add(beyond, area, volume);
        region.pieces.push_back(std::move(beyond.corners));
      }
    region.area = area.value();
    region.volume = volume.value();
    return region;
  }

 private:
  static void add(const Part& part, geometry::Sum& area, geometry::Sum& volume) {
    for (std::size_t i = 2; i < part.corners.size(); ++i) {
      const double a = geometry::orient(part.corners[0], part.corners[i - 1], part.corners[i]) / 2;
      area.add(a);
      volume.add(a * (part.height[0] + part.height[i - 1] + part.height[i]) / 3);
    }
  }

  const Floor& floor_;
  double sign_;
  std::vector<std::vector<Part>> parts_;                // by triangle
  std::vector<std::vector<std::size_t>> triangles_of_;  // by judged point
  std::vector<std::vector<std::size_t>> corners_of_;    // by triangle
};

// The region of at least the least area, by the contour that just gives it.
Region grown(const Landscape& land, std::size_t peak, double limit, double least, bool& too_small) {
  Region region = land.region(peak, limit);
  too_small = false;
  if (region.area >= least) return region;
  double low = 0, high = limit;
  Region widest = land.region(peak, low);
  too_small = widest.area < least;
  if (too_small) return widest;
  while (high - low > 1e-6) {
    const double middle = (low + high) / 2;
    Region next = land.region(peak, middle);
    if (next.area >= least) {
      low = middle;
      widest = std::move(next);
    } else {
      high = middle;
    }
  }
  return widest;
}

struct Found {
  Region region;
  std::size_t peak = 0;
  bool too_small = false;
};

// From the worst point down; a region that reaches an earlier one takes it in.
std::vector<Found> regions_beyond(const Landscape& land, const Floor& floor, double limit,
                                  double least) {
  constexpr double kSlack = 1e-9;
  std::vector<std::size_t> peaks;
  for (std::size_t i = 0; i < floor.points.size(); ++i)
    if (land.height(i) > limit + kSlack) peaks.push_back(i);
  std::stable_sort(peaks.begin(), peaks.end(),
                   [&](std::size_t a, std::size_t b) { return land.height(a) > land.height(b); });
  std::vector<Found> found;
  for (const std::size_t peak : peaks) {
    const auto holds = [&](const Found& f) { return f.region.points.count(peak) > 0; };
    if (std::any_of(found.begin(), found.end(), holds)) continue;
    Found next;
    next.peak = peak;
    next.region = grown(land, peak, limit, least, next.too_small);
    const auto reached = [&](const Found& f) { return next.region.points.count(f.peak) > 0; };
    for (const Found& f : found)
      if (reached(f) && land.height(f.peak) > land.height(next.peak)) next.peak = f.peak;
    std::erase_if(found, reached);
    found.push_back(std::move(next));
  }
  return found;
}

RepairSpot spot_of(const BaseInput& input, const PlannedBase& planned, const Floor& floor,
                   std::size_t point) {
  const FloorPoint& p = floor.points[point];
  const GridPoint at = input.points.points[p.row].at.at;
  return {std::string(input.points.label(p.row)), at, planned.tank.along_ab(at),
          planned.tank.across_ab(at), Length::metres(-p.deviation)};
}

RepairPatch patch_of(const BaseInput& input, const PlannedBase& planned, const Floor& floor,
                     const Found& found, Work work, Length limit) {
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
  for (const geometry::Polygon& ring : outline_of(found.region.pieces)) {
    patch.rings.emplace_back();
    for (const Point2 p : ring) patch.rings.back().push_back(floor.frame.to_grid(p));
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
    const Landscape land(floor, dug, trim ? 1 : -1);
    for (const Found& found : regions_beyond(land, floor, limit.in_metres(), least))
      patches.push_back(patch_of(input, planned, floor, found, work, limit));
  }
  for (std::size_t i = 0; i < patches.size(); ++i) patches[i].number = static_cast<int>(i) + 1;
  return patches;
}

}  // namespace squaredig::base
