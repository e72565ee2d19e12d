#include "geometry/overlay_internal.h"

namespace squaredig::geometry {

void overlay(const Surface& surface, const Locator& locator, std::span<const PlaneFacet> facets,
             const std::function<void(const Overlap&)>& visit) {
  std::vector<double> differences;
  std::vector<Index> near;
  ConvexWindow window;
  CutSpace space;
  for (std::size_t f = 0; f < facets.size(); ++f) {
    const auto& facet = facets[f];
    window.become(facet.outline);
    locator.find_triangles(window.box(), near);
    for (const Index t : near) {
      const auto [a, b, c] = surface.corners(t);
      const std::array triangle{a.plan(), b.plan(), c.plan()};
      const auto shared = window.part_of(triangle, space);
      if (shared.empty() || area_of(shared) <= 0) continue;
      const Plane upper = surface.plane(t);
      differences.clear();
      for (const Point2 p : shared) differences.push_back(upper.at(p) - facet.plane.at(p));
      visit({shared, differences, t, f});
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
  BetweenSums sums;
  overlay(surface, locator, facets, [&](const Overlap& overlap) {
    sums.add(overlap.corners, overlap.differences, area_of(overlap.corners));
  });
  return sums.value();
}

}  // namespace squaredig::geometry
