#include "geometry/cut.h"

#include <algorithm>
#include <utility>

#include "geometry/polygon.h"
#include "geometry/rings_internal.h"
#include "geometry/sum.h"

namespace squaredig::geometry {
namespace {

Box2 box_around(const std::vector<Region>& regions, const std::vector<ConvexCut>& cuts) {
  Box2 box{{0, 0}, {0, 0}};
  bool first = true;
  const auto take = [&](Point2 p) {
    if (std::exchange(first, false)) box = {p, p};
    box.low = {std::min(box.low.x, p.x), std::min(box.low.y, p.y)};
    box.high = {std::max(box.high.x, p.x), std::max(box.high.y, p.y)};
  };
  for (const auto& region : regions)
    for (const Point2 p : region.polygon.corners) take(p);
  for (const auto& cut : cuts)
    for (const Point2 p : cut.toe) take(p);
  return {box.low - Point2{1, 1}, box.high + Point2{1, 1}};
}

// Where each cut's facets start in the list, which is ordered by cut.
std::vector<std::size_t> facet_starts(const std::vector<Facet>& facets, std::size_t cuts) {
  std::vector<std::size_t> start(cuts + 1, 0);
  for (const auto& facet : facets) ++start[static_cast<std::size_t>(facet.cut) + 1];
  for (std::size_t k = 0; k < cuts; ++k) start[k + 1] += start[k];
  return start;
}

class Cutter {
 public:
  Cutter(const Surface& surface, Removed& removed) : surface_(surface), removed_(removed) {
    windows_.reserve(removed.facets.size());
    for (const auto& facet : removed.facets) windows_.emplace_back(facet.outline);
  }

  void add(const Region& region, const Box2& box, std::size_t facet) {
    if (windows_[facet].misses(box)) return;
    const Facet& f = removed_.facets[facet];
    const auto piece = windows_[facet].part_of(region.polygon.corners, space_);
    if (piece.empty()) return;
    const double area = area_of(piece);
    if (area <= 0) return;
    const Plane top = surface_.plane(region.triangle);
    depths_.clear();
    for (const Point2 p : piece) {
      depths_.push_back(top.at(p) - f.plane.at(p));
      if (depths_.back() > removed_.deepest)
        removed_.deepest = depths_.back(), removed_.deepest_at = p;
    }
    const double volume = integral_over(piece, depths_);
    removed_.pieces.push_back({region.triangle, static_cast<Index>(facet),
                               static_cast<std::uint32_t>(removed_.corners.size()),
                               static_cast<std::uint32_t>(piece.size()), area, volume,
                               centroid(piece)});
    removed_.corners.insert(removed_.corners.end(), piece.begin(), piece.end());
    area_.add(area);
    volume_.add(volume);
  }

  void finish() {
    removed_.area = area_.value();
    removed_.volume = volume_.value();
  }

 private:
  const Surface& surface_;
  Removed& removed_;
  std::vector<ConvexWindow> windows_;
  CutSpace space_;
  std::vector<double> depths_;
  Sum area_, volume_;
};

void cut_pieces(const Surface& surface, std::span<const Region> regions, Removed& removed) {
  const auto start = facet_starts(removed.facets, removed.cuts.size());
  Cutter cutter(surface, removed);
  for (const auto& region : regions) {
    const auto k = static_cast<std::size_t>(region.cut);
    const Box2 box = box_of(region.polygon.corners);
    for (std::size_t f = start[k]; f < start[k + 1]; ++f) cutter.add(region, box, f);
  }
  cutter.finish();
}

// Each group that touches no toe, told with its deepest point.
std::vector<Detached> detached_parts(const Surface& surface, const std::vector<ConvexCut>& cuts,
                                     std::vector<Region> regions) {
  std::erase_if(regions, [](const Region& r) { return r.removed; });
  std::stable_sort(regions.begin(), regions.end(),
                   [](const Region& a, const Region& b) { return a.group < b.group; });
  std::vector<Detached> told;
  for (auto first = regions.begin(); first != regions.end();) {
    const auto last = std::find_if(first, regions.end(),
                                   [&](const Region& r) { return r.group != first->group; });
    const std::vector<Region> group(first, last);
    Removed part;
    part.cuts = cuts;
    part.facets = lower_envelope(cuts, box_around(group, cuts));
    cut_pieces(surface, group, part);
    told.push_back({part.deepest_at, part.area, part.volume});
    first = last;
  }
  return told;
}

std::vector<Region> take_removed(std::vector<Region>&& regions) {
  std::erase_if(regions, [](const Region& r) { return !r.removed; });
  return std::move(regions);
}

}  // namespace

Removed cut(const Surface& surface, const std::vector<ConvexCut>& cuts) {
  auto regions = find_regions(surface, cuts);
  Removed removed;
  removed.cuts = cuts;
  removed.detached = detached_parts(surface, cuts, regions);
  regions = take_removed(std::move(regions));
  removed.facets = lower_envelope(cuts, box_around(regions, cuts));
  cut_pieces(surface, regions, removed);
  Boundary boundary = boundary_of(surface, cuts, regions);
  removed.leaving = std::move(boundary.leaving);
  removed.rings = chain(boundary.segments);
  return removed;
}

bool holds(const Removed& removed, Point2 p) {
  bool inside = false;
  for (const Ring& ring : removed.rings)
    for (std::size_t i = 0; i < ring.corners.size(); ++i)
      if (ray_crosses(p, ring.corners[i].plan(),
                      ring.corners[(i + 1) % ring.corners.size()].plan()))
        inside = !inside;
  return inside;
}

double removed_volume(const Surface& surface, const std::vector<ConvexCut>& cuts) {
  const auto regions = take_removed(find_regions(surface, cuts));
  Removed removed;
  removed.cuts = cuts;
  removed.facets = lower_envelope(cuts, box_around(regions, cuts));
  cut_pieces(surface, regions, removed);
  return removed.volume;
}

}  // namespace squaredig::geometry
