#include <algorithm>
#include <cmath>
#include <numeric>

#include "geometry/cut_regions_internal.h"

namespace squaredig::geometry {
namespace {

using Corners = std::array<Point3, 3>;

// A cheap no: some plane of the cut is nowhere below the triangle, or a bound shuts it out.
bool surely_empty(const ConvexCut& cut, const Corners& c) {
  const auto above = [&](const Plane& plane) {
    return c[0].z <= plane.at(c[0].plan()) && c[1].z <= plane.at(c[1].plan()) &&
           c[2].z <= plane.at(c[2].plan());
  };
  if (above(cut.floor)) return true;
  for (const auto& face : cut.faces)
    if (above(face.plane)) return true;
  for (const auto& bound : cut.bounds)
    if (bound.inside.at(c[0].plan()) <= 0 && bound.inside.at(c[1].plan()) <= 0 &&
        bound.inside.at(c[2].plan()) <= 0)
      return true;
  return false;
}

LabelledPolygon above_plane(const LabelledPolygon& polygon, const Plane& surface,
                            const Plane& plane) {
  std::vector<double> depth;
  for (const Point2 p : polygon.corners) depth.push_back(surface.at(p) - plane.at(p));
  return part_above(polygon, depth, kZeroLine);
}

LabelledPolygon region_of(const ConvexCut& cut, const Corners& c, const Plane& surface) {
  LabelledPolygon region{{c[0].plan(), c[1].plan(), c[2].plan()}, {0, 1, 2}};
  for (const auto& bound : cut.bounds) {
    region = part_inside(region, bound.inside, kVertical);
    if (region.empty()) return {};
  }
  region = above_plane(region, surface, cut.floor);
  for (const auto& face : cut.faces) {
    if (region.empty()) return {};
    region = above_plane(region, surface, face.plane);
  }
  if (region.empty() || area_of(region.corners) <= kNoArea) return {};
  return region;
}

class Groups {
 public:
  explicit Groups(std::size_t n) : parent_(n) { std::iota(parent_.begin(), parent_.end(), 0U); }
  std::size_t root(std::size_t i) {
    while (parent_[i] != i) i = parent_[i] = parent_[parent_[i]];
    return i;
  }
  void join(std::size_t a, std::size_t b) {
    a = root(a), b = root(b);
    parent_[std::max(a, b)] = std::min(a, b);
  }

 private:
  std::vector<std::size_t> parent_;
};

// The length of a region's border on one edge of its triangle.
double length_on_edge(const Region& region, int edge) {
  double length = 0;
  const auto& p = region.polygon;
  for (std::size_t i = 0; i < p.corners.size(); ++i)
    if (p.labels[i] == edge) {
      const Point2 d = p.corners[(i + 1) % p.corners.size()] - p.corners[i];
      length += std::hypot(d.x, d.y);
    }
  return length;
}

bool overlapping(const Region& a, const Region& b) {
  const auto both = part_inside(a.polygon, b.polygon.corners, kVertical);
  return !both.empty() && area_of(both.corners) > kNoArea;
}

void join_within_triangles(const std::vector<Region>& regions, Groups& groups) {
  for (std::size_t i = 0; i < regions.size(); ++i)
    for (std::size_t j = i + 1; j < regions.size() && regions[j].triangle == regions[i].triangle;
         ++j)
      if (groups.root(i) != groups.root(j) && overlapping(regions[i], regions[j]))
        groups.join(i, j);
}

void join_across_edges(const Surface& surface, const std::vector<Region>& regions, Groups& groups) {
  const auto before = [](const Region& a, std::pair<Index, Index> key) {
    return std::pair(a.triangle, a.cut) < key;
  };
  for (std::size_t i = 0; i < regions.size(); ++i) {
    const Region& region = regions[i];
    for (int edge = 0; edge < 3; ++edge) {
      const Index other = surface.neighbours[static_cast<std::size_t>(region.triangle)]
                                            [static_cast<std::size_t>(edge)];
      if (other <= region.triangle || length_on_edge(region, edge) <= kNoLength) continue;
      const std::pair key(other, region.cut);
      const auto found = std::lower_bound(regions.begin(), regions.end(), key, before);
      if (found != regions.end() && found->triangle == other && found->cut == region.cut)
        groups.join(i, static_cast<std::size_t>(found - regions.begin()));
    }
  }
}

bool touches_toe(const Region& region, const ConvexCut& cut) {
  if (!cut.reaches) return false;
  const auto inside = part_inside(region.polygon, cut.toe, kVertical);
  return !inside.empty() && area_of(inside.corners) > kNoArea;
}

}  // namespace

std::vector<Region> find_regions(const Surface& surface, const std::vector<ConvexCut>& cuts) {
  std::vector<Region> regions;
  for (Index t = 0; t < static_cast<Index>(surface.triangles.size()); ++t) {
    const auto corners = surface.corners(t);
    for (std::size_t k = 0; k < cuts.size(); ++k) {
      if (surely_empty(cuts[k], corners)) continue;
      auto polygon = region_of(cuts[k], corners, surface.plane(t));
      if (!polygon.empty())
        regions.push_back({t, static_cast<Index>(k), std::move(polygon), 0, false});
    }
  }
  Groups groups(regions.size());
  join_within_triangles(regions, groups);
  join_across_edges(surface, regions, groups);
  std::vector<bool> removed(regions.size(), false);
  for (std::size_t i = 0; i < regions.size(); ++i) {
    regions[i].group = groups.root(i);
    if (!removed[regions[i].group] &&
        touches_toe(regions[i], cuts[static_cast<std::size_t>(regions[i].cut)]))
      removed[regions[i].group] = true;
  }
  for (auto& region : regions) region.removed = removed[region.group];
  return regions;
}

}  // namespace squaredig::geometry
