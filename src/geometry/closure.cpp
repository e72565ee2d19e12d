#include "geometry/closure.h"

#include <algorithm>

#include "geometry/sum.h"

namespace squaredig::geometry {
namespace {

// Area and first moment in x of a ring clipped to a convex outline. The clip of a ring that is not
// convex may run along the outline and back; such stretches cancel in both integrals.
struct Moments {
  double area = 0;
  double x = 0;
};

std::vector<Point2> clipped(std::vector<Point2> ring, std::span<const Point2> outline) {
  std::vector<Point2> next;
  for (std::size_t i = 0; i < outline.size() && !ring.empty(); ++i) {
    const Point2 a = outline[i], b = outline[(i + 1) % outline.size()];
    if (a == b) continue;
    const HalfPlane side = HalfPlane::left_of(a, b);
    next.clear();
    for (std::size_t k = 0; k < ring.size(); ++k) {
      const Point2 p = ring[k], q = ring[(k + 1) % ring.size()];
      const double at_p = side.at(p), at_q = side.at(q);
      if (at_p >= 0) next.push_back(p);
      if ((at_p > 0 && at_q < 0) || (at_p < 0 && at_q > 0))
        next.push_back(p + (at_p / (at_p - at_q)) * (q - p));
    }
    ring.swap(next);
  }
  return ring;
}

Moments moments_of(std::span<const Point2> p) {
  double twice = 0, moment = 0;
  for (std::size_t i = 2; i < p.size(); ++i) {
    const double w = orient(p[0], p[i - 1], p[i]);
    twice += w;
    moment += w * ((p[i - 1].x - p[0].x) + (p[i].x - p[0].x)) / 3;
  }
  if (p.empty()) return {};
  return {twice / 2, moment / 2 + p[0].x * (twice / 2)};
}

struct Flux {
  Sum volume, open_x, open_y;
  // A sloping face over a plan region, seen from above (outward = up) or below.
  void face(const Moments& m, const Plane& plane, double up) {
    volume.add(-up * plane.slope_x * m.x);
    open_x.add(-up * plane.slope_x * m.area);
    open_y.add(-up * plane.slope_y * m.area);
  }
  // A wall over a stretch of an edge with the outward normal to its right.
  void wall(Point2 a, Point2 b, double height_a, double height_b) {
    const Point2 d = b - a;  // outward normal times length = (d.y, -d.x)
    const double mean = (height_a + height_b) / 2;
    const double moment = (a.x * (2 * height_a + height_b) + b.x * (height_a + 2 * height_b)) / 6;
    volume.add(d.y * moment);
    open_x.add(d.y * mean);
    open_y.add(-d.x * mean);
  }
};

std::vector<std::vector<Point2>> plan_rings(const Removed& removed) {
  std::vector<std::vector<Point2>> rings;
  for (const auto& ring : removed.rings) {
    rings.emplace_back();
    for (const Point3& p : ring.corners) rings.back().push_back(p.plan());
  }
  return rings;
}

struct Stretch {
  double from = 0, to = 1;
  bool empty() const { return to - from <= 0; }
};

// Narrows a stretch to where a linear function with these end values is above zero.
void narrow(Stretch& s, double at_a, double at_b) {
  if (at_a <= 0 && at_b <= 0) s = {0, 0};
  if (at_a < 0 && at_b > 0) s.from = std::max(s.from, at_a / (at_a - at_b));
  if (at_b < 0 && at_a > 0) s.to = std::min(s.to, at_a / (at_a - at_b));
}

// The walls round one facet's column under one triangle: they cancel against the neighbour's
// wherever the envelope is continuous, and stand where a vertical side is.
void walls(const Facet& facet, const std::array<Point3, 3>& c, const Plane& top, Flux& flux) {
  const std::array<Point2, 3> t{c[0].plan(), c[1].plan(), c[2].plan()};
  for (std::size_t i = 0; i < facet.outline.size(); ++i) {
    const Point2 a = facet.outline[i], b = facet.outline[(i + 1) % facet.outline.size()];
    if (a == b) continue;
    // seen from a hair inside the facet, so that an edge along a triangle's edge counts once
    const HalfPlane inward = HalfPlane::left_of(a, b);
    const Point2 hair{1e-9 * inward.a, 1e-9 * inward.b};
    Stretch s;
    for (std::size_t k = 0; k < 3; ++k) {
      const HalfPlane side = HalfPlane::left_of(t[k], t[(k + 1) % 3]);
      narrow(s, side.at(a + hair), side.at(b + hair));
    }
    const double depth_a = top.at(a) - facet.plane.at(a), depth_b = top.at(b) - facet.plane.at(b);
    narrow(s, depth_a, depth_b);
    if (s.empty()) continue;
    flux.wall(a + s.from * (b - a), a + s.to * (b - a), depth_a + s.from * (depth_b - depth_a),
              depth_a + s.to * (depth_b - depth_a));
  }
}

}  // namespace

Closure flux_of(const Surface& surface, const Removed& removed) {
  const auto rings = plan_rings(removed);
  Flux flux;
  for (const auto& facet : removed.facets)
    for (const auto& ring : rings)
      flux.face(moments_of(clipped(ring, facet.outline)), facet.plane, -1);
  // each triangle and cut once, in order
  std::vector<std::pair<Index, Index>> seen;
  for (const auto& piece : removed.pieces) seen.emplace_back(piece.triangle, piece.facet);
  for (std::size_t i = 0; i < seen.size(); ++i) {
    const auto corners = surface.corners(seen[i].first);
    const Plane top = surface.plane(seen[i].first);
    walls(removed.facets[static_cast<std::size_t>(seen[i].second)], corners, top, flux);
    if (i > 0 && seen[i].first == seen[i - 1].first) continue;
    const std::array<Point2, 3> t{corners[0].plan(), corners[1].plan(), corners[2].plan()};
    for (const auto& ring : rings) flux.face(moments_of(clipped(ring, t)), top, 1);
  }
  return {flux.volume.value(), flux.open_x.value(), flux.open_y.value()};
}

}  // namespace squaredig::geometry
