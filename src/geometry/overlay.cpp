#include "geometry/overlay.h"

#include <algorithm>

#include "geometry/sum.h"

namespace squaredig::geometry {
namespace {

LabelledPolygon plain(std::span<const Point2> corners) {
  return {{corners.begin(), corners.end()}, std::vector<int>(corners.size(), 0)};
}

// The part of an overlap where the difference has the given sign, with its volume.
struct Signed {
  double volume = 0;
  double area = 0;
};
Signed part_of(const Overlap& overlap, double sign) {
  std::vector<double> values;
  for (const double d : overlap.differences) values.push_back(sign * d);
  const auto part = part_above(plain(overlap.corners), values, 0);
  if (part.empty()) return {};
  // the difference is linear: interpolate it at the new corners from a fan of the old ones
  const Point2 o = overlap.corners[0];
  double best = 0;
  std::size_t fan = 2;
  for (std::size_t i = 2; i < overlap.corners.size(); ++i) {
    const double twice = orient(o, overlap.corners[i - 1], overlap.corners[i]);
    if (twice > best) best = twice, fan = i;
  }
  if (best <= 0) return {};
  const Point2 a = overlap.corners[fan - 1], b = overlap.corners[fan];
  std::vector<double> heights;
  for (const Point2 p : part.corners) {
    const double wa = orient(o, p, b) / best;
    const double wb = orient(o, a, p) / best;
    heights.push_back(values[0] + wa * (values[fan - 1] - values[0]) +
                      wb * (values[fan] - values[0]));
  }
  return {integral_over(part.corners, heights), area_of(part.corners)};
}

}  // namespace

void overlay(const Surface& surface, const Locator& locator, std::span<const PlaneFacet> facets,
             const std::function<void(const Overlap&)>& visit) {
  std::vector<double> differences;
  for (std::size_t f = 0; f < facets.size(); ++f) {
    const auto& facet = facets[f];
    const Box2 box = box_of(facet.outline);
    for (const Index t : locator.triangles_in(box.low, box.high)) {
      const auto c = surface.corners(t);
      LabelledPolygon shared{{c[0].plan(), c[1].plan(), c[2].plan()}, {0, 1, 2}};
      shared = part_inside(std::move(shared), facet.outline, 3);
      if (shared.empty() || area_of(shared.corners) <= 0) continue;
      const Plane upper = surface.plane(t);
      differences.clear();
      for (const Point2 p : shared.corners) differences.push_back(upper.at(p) - facet.plane.at(p));
      visit({shared.corners, differences, t, f});
    }
  }
}

std::vector<PlaneFacet> facets_of(const Surface& surface) {
  std::vector<PlaneFacet> facets;
  facets.reserve(surface.triangles.size());
  for (Index t = 0; t < static_cast<Index>(surface.triangles.size()); ++t) {
    const auto c = surface.corners(t);
    facets.push_back({{c[0].plan(), c[1].plan(), c[2].plan()}, surface.plane(t)});
  }
  return facets;
}

Between between(const Surface& surface, const Locator& locator,
                std::span<const PlaneFacet> facets) {
  Sum area, above, below, area_above, area_below;
  Between result;
  overlay(surface, locator, facets, [&](const Overlap& overlap) {
    area.add(area_of(overlap.corners));
    const Signed up = part_of(overlap, 1);
    const Signed down = part_of(overlap, -1);
    above.add(up.volume);
    below.add(down.volume);
    area_above.add(up.area);
    area_below.add(down.area);
    for (const double d : overlap.differences) {
      result.greatest_above = std::max(result.greatest_above, d);
      result.greatest_below = std::max(result.greatest_below, -d);
    }
  });
  result.common_area = area.value();
  result.above = above.value();
  result.below = below.value();
  result.area_above = area_above.value();
  result.area_below = area_below.value();
  return result;
}

}  // namespace squaredig::geometry
