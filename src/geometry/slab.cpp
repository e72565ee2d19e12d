#include "geometry/slab.h"

#include <algorithm>
#include <cmath>

namespace squaredig::geometry {
namespace {

constexpr double kSliver = 1e-13;  // m2

LabelledPolygon plain(std::span<const Point2> corners) {
  return {{corners.begin(), corners.end()}, std::vector<int>(corners.size(), 0)};
}

std::vector<double> differences(const LabelledPolygon& p, const Plane& a, const Plane& b) {
  std::vector<double> values;
  for (const Point2 c : p.corners) values.push_back(a.at(c) - b.at(c));
  return values;
}

bool level(const std::vector<double>& values) {
  return std::all_of(values.begin(), values.end(),
                     [](double v) { return std::abs(v) < kLevelSnap; });
}

enum class Pick { Highest, Lowest };

// Where one of the planes is the highest (or lowest) of all; of equal ones the first counts.
LabelledPolygon where_picked(LabelledPolygon region, std::span<const Plane> planes, std::size_t own,
                             Pick pick) {
  for (std::size_t k = 0; k < planes.size() && !region.empty(); ++k) {
    if (k == own) continue;
    const auto values = pick == Pick::Highest ? differences(region, planes[own], planes[k])
                                              : differences(region, planes[k], planes[own]);
    if (level(values)) {
      if (k < own) return {};
      continue;
    }
    region = part_above(region, values, 0);
  }
  return region;
}

Polygon worth(LabelledPolygon&& p) {
  if (p.empty() || area_of(p.corners) <= kSliver) return {};
  return std::move(p.corners);
}

}  // namespace

Slab slab_between(std::span<const Point2> convex, std::span<const Plane> lowers,
                  std::span<const Plane> uppers) {
  Slab slab;
  for (std::size_t j = 0; j < lowers.size(); ++j) {
    const auto on_lower = where_picked(plain(convex), lowers, j, Pick::Highest);
    for (std::size_t i = 0; i < uppers.size() && !on_lower.empty(); ++i) {
      auto region = where_picked(on_lower, uppers, i, Pick::Lowest);
      if (region.empty()) continue;
      region = part_above(region, differences(region, uppers[i], lowers[j]), 0);
      if (region.empty()) continue;
      slab.volume += integral_over(region.corners, differences(region, uppers[i], lowers[j]));
      slab.area += area_of(region.corners);
    }
  }
  return slab;
}

SplitAtRing split_at(std::span<const Point2> convex, std::span<const Point2> ring) {
  SplitAtRing split;
  LabelledPolygon rest = plain(convex);
  // apart: left whole rather than cut along lines that only pass by
  if (worth(part_inside(rest, ring, 0)).empty()) return {{}, {rest.corners}};
  for (std::size_t i = 0; i < ring.size() && !rest.empty(); ++i) {
    const Point2 a = ring[i], b = ring[(i + 1) % ring.size()];
    if (a == b) continue;
    const HalfPlane in = HalfPlane::left_of(a, b);
    auto out = worth(part_inside(rest, {-in.a, -in.b, -in.c}, 0));
    if (!out.empty()) split.outside.push_back(std::move(out));
    rest = part_inside(rest, in, 0);
  }
  split.inside = worth(std::move(rest));
  return split;
}

SplitAtPlanes split_where_above(std::span<const Point2> convex, const Plane& a, const Plane& b) {
  const auto whole = plain(convex);
  const auto above = differences(whole, a, b);
  if (level(above)) return {{}, {convex.begin(), convex.end()}};
  return {worth(part_above(whole, above, 0)),
          worth(part_above(whole, differences(whole, b, a), 0))};
}

}  // namespace squaredig::geometry
