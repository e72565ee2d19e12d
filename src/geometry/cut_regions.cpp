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

// Whether a linear function with these values at the triangle's corners is above zero all over it,
// so that nothing is cut off.
bool all_above(double a, double b, double c) {
  return a > kLevelSnap && b > kLevelSnap && c > kLevelSnap;
}

void keep_above(LabelledPolygon& polygon, const Corners& c, const Plane& surface,
                const Plane& plane) {
  if (all_above(c[0].z - plane.at(c[0].plan()), c[1].z - plane.at(c[1].plan()),
                c[2].z - plane.at(c[2].plan())))
    return;
  std::vector<double> depth;
  for (const Point2 p : polygon.corners) depth.push_back(surface.at(p) - plane.at(p));
  polygon = part_above(polygon, depth, kZeroLine);
}

LabelledPolygon region_of(const ConvexCut& cut, const Corners& c, const Plane& surface) {
  LabelledPolygon region{{c[0].plan(), c[1].plan(), c[2].plan()}, {0, 1, 2}};
  for (const auto& bound : cut.bounds) {
    if (all_above(bound.inside.at(c[0].plan()), bound.inside.at(c[1].plan()),
                  bound.inside.at(c[2].plan())))
      continue;
    region = part_inside(region, bound.inside, kVertical);
    if (region.empty()) return {};
  }
  keep_above(region, c, surface, cut.floor);
  for (const auto& face : cut.faces) {
    if (region.empty()) return {};
    keep_above(region, c, surface, face.plane);
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

struct Side {
  Point2 from, to;
  double length() const { return std::hypot(to.x - from.x, to.y - from.y); }
};

Side side_of_region(const Region& region, std::size_t i) {
  const auto& c = region.polygon.corners;
  return {c[i], c[(i + 1) % c.size()]};
}

// The length that two sides on one line, seen from opposite sides, have in common.
double shared_length(const Side& a, const Side& b) {
  const double length = a.length();
  if (a.from == b.to && a.to == b.from) return length;
  if (length <= kNoLength || b.length() <= kNoLength) return 0;
  const HalfPlane line = HalfPlane::left_of(a.from, a.to);
  if (std::abs(line.at(b.from)) > kNoLength || std::abs(line.at(b.to)) > kNoLength) return 0;
  const Point2 u = (1 / length) * (a.to - a.from);
  const double from = dot(b.from - a.from, u), to = dot(b.to - a.from, u);
  return std::min(length, std::max(from, to)) - std::max(0.0, std::min(from, to));
}

bool share_border(const Region& a, const Region& b) {
  for (std::size_t i = 0; i < a.polygon.corners.size(); ++i)
    for (std::size_t j = 0; j < b.polygon.corners.size(); ++j)
      if (shared_length(side_of_region(a, i), side_of_region(b, j)) > kNoLength) return true;
  return false;
}

bool overlapping(const Region& a, const Region& b) {
  const auto both = part_inside(a.polygon, b.polygon.corners, kVertical);
  return !both.empty() && area_of(both.corners) > kNoArea;
}

void join_within_triangles(const std::vector<Region>& regions, Groups& groups) {
  for (std::size_t i = 0; i < regions.size(); ++i)
    for (std::size_t j = i + 1; j < regions.size() && regions[j].triangle == regions[i].triangle;
         ++j)
      if (groups.root(i) != groups.root(j) &&
          (overlapping(regions[i], regions[j]) || share_border(regions[i], regions[j])))
        groups.join(i, j);
}

void join_across_edges(const Surface& surface, const std::vector<Region>& regions, Groups& groups) {
  for (std::size_t i = 0; i < regions.size(); ++i) {
    const Region& region = regions[i];
    for (std::size_t e = 0; e < region.polygon.corners.size(); ++e) {
      const int edge = region.polygon.labels[e];
      if (edge > 2) continue;
      const Index other = surface.neighbours[static_cast<std::size_t>(region.triangle)]
                                            [static_cast<std::size_t>(edge)];
      if (other <= region.triangle) continue;
      const Side side = side_of_region(region, e);
      auto found = std::lower_bound(regions.begin(), regions.end(), other,
                                    [](const Region& a, Index t) { return a.triangle < t; });
      for (; found != regions.end() && found->triangle == other; ++found) {
        const auto j = static_cast<std::size_t>(found - regions.begin());
        if (groups.root(i) == groups.root(j)) continue;
        for (std::size_t f = 0; f < found->polygon.corners.size(); ++f)
          if (found->polygon.labels[f] < 3 &&
              shared_length(side, side_of_region(*found, f)) > kNoLength)
            groups.join(i, j);
      }
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
