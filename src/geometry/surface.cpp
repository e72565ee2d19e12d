#include "geometry/surface.h"

#include <algorithm>
#include <cmath>

#include "geometry/sum.h"

namespace squaredig::geometry {
namespace {

// One side of one triangle, filed under its smaller vertex.
struct Side {
  Index larger;
  Index triangle;
  std::int32_t position;  // 0..2, and its direction: rising when it runs from smaller to larger
  bool rising;
};

// Sides gathered by their smaller vertex: those of vertex v are [start[v], start[v + 1]).
struct SidesByVertex {
  std::vector<std::size_t> start;
  std::vector<Side> sides;
};

SidesByVertex gather_sides(const Surface& surface) {
  SidesByVertex out;
  out.start.assign(surface.vertices.size() + 1, 0);
  const auto smaller = [](const std::array<Index, 3>& t, std::size_t i) {
    return static_cast<std::size_t>(std::min(t[i], t[(i + 1) % 3]));
  };
  for (const auto& t : surface.triangles)
    for (std::size_t i = 0; i < 3; ++i) ++out.start[smaller(t, i) + 1];
  for (std::size_t v = 1; v < out.start.size(); ++v) out.start[v] += out.start[v - 1];
  out.sides.resize(3 * surface.triangles.size());
  std::vector<std::size_t> next(out.start.begin(), out.start.end() - 1);
  for (std::size_t n = 0; n < surface.triangles.size(); ++n)
    for (std::size_t i = 0; i < 3; ++i) {
      const auto& t = surface.triangles[n];
      const Index a = t[i], b = t[(i + 1) % 3];
      out.sides[next[smaller(t, i)]++] = {std::max(a, b), static_cast<Index>(n),
                                          static_cast<std::int32_t>(i), a < b};
    }
  return out;
}

}  // namespace

Plane Surface::plane(Index t) const {
  const auto [a, b, c] = corners(t);
  return plane_through(a, b, c);
}

bool link_neighbours(Surface& surface) {
  surface.neighbours.assign(surface.triangles.size(), {kNone, kNone, kNone});
  SidesByVertex by_vertex = gather_sides(surface);
  bool manifold = true;
  const auto slot = [&](const Side& s) -> Index& {
    return surface
        .neighbours[static_cast<std::size_t>(s.triangle)][static_cast<std::size_t>(s.position)];
  };
  for (std::size_t v = 0; v + 1 < by_vertex.start.size(); ++v) {
    const auto first = by_vertex.sides.begin() + static_cast<std::ptrdiff_t>(by_vertex.start[v]);
    const auto last = by_vertex.sides.begin() + static_cast<std::ptrdiff_t>(by_vertex.start[v + 1]);
    std::sort(first, last, [](const Side& a, const Side& b) {
      return a.larger != b.larger ? a.larger < b.larger : a.triangle < b.triangle;
    });
    for (auto s = first; s != last;) {
      const auto end = std::find_if(s, last, [&](const Side& o) { return o.larger != s->larger; });
      // Two sides of one direction lie on the same hand of the edge: their triangles overlap and
      // are not neighbours.
      if (end - s == 2 && s->rising != (s + 1)->rising) {
        slot(*s) = (s + 1)->triangle;
        slot(*(s + 1)) = s->triangle;
      }
      if (end - s > 2) manifold = false;
      s = end;
    }
  }
  return manifold;
}

double plan_area(const Surface& surface) {
  Sum twice;
  for (std::size_t t = 0; t < surface.triangles.size(); ++t) {
    const auto [a, b, c] = surface.corners(static_cast<Index>(t));
    twice.add(orient(a.plan(), b.plan(), c.plan()));
  }
  return twice.value() / 2;
}

double surface_area(const Surface& surface) {
  Sum twice;
  for (std::size_t t = 0; t < surface.triangles.size(); ++t) {
    const auto [a, b, c] = surface.corners(static_cast<Index>(t));
    const Point2 u = b.plan() - a.plan(), v = c.plan() - a.plan();
    const double du = b.z - a.z, dv = c.z - a.z;
    twice.add(std::hypot(cross(u, v), u.y * dv - v.y * du, u.x * dv - v.x * du));
  }
  return twice.value() / 2;
}

}  // namespace squaredig::geometry
