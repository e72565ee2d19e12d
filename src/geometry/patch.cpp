#include "geometry/patch.h"

#include <algorithm>
#include <cmath>
#include <unordered_set>

namespace squaredig::geometry {
namespace {

std::size_t at(Index i) { return static_cast<std::size_t>(i); }

bool holds(const Surface& surface, Index t, Point2 p) {
  const auto c = surface.corners(t);
  return orient(c[0].plan(), c[1].plan(), p) >= 0 && orient(c[1].plan(), c[2].plan(), p) >= 0 &&
         orient(c[2].plan(), c[0].plan(), p) >= 0;
}

// Of a few triangles spread over the list the one that begins nearest.
Index near(const Surface& surface, Point2 p) {
  const std::size_t n = surface.triangles.size();
  const std::size_t step = std::max<std::size_t>(1, n / 200);
  Index best = 0;
  double least = HUGE_VAL;
  for (std::size_t t = 0; t < n; t += step) {
    const Point2 d = surface.corners(static_cast<Index>(t))[0].plan() - p;
    if (dot(d, d) < least) least = dot(d, d), best = static_cast<Index>(t);
  }
  return best;
}

// kNone where the rim or an endless turn stops the walk.
Index walked(const Surface& surface, Point2 p) {
  Index t = near(surface, p);
  for (std::size_t step = 0; step < surface.triangles.size(); ++step) {
    const auto c = surface.corners(t);
    Index next = t;
    for (std::size_t k = 0; k < 3; ++k) {
      const std::size_t i = (step + k) % 3;  // another side first each time: no endless turn
      if (orient(c[i].plan(), c[(i + 1) % 3].plan(), p) >= 0) continue;
      next = surface.neighbours[at(t)][i];
      break;
    }
    if (next == t || next == kNone) return next;
    t = next;
  }
  return kNone;
}

Index triangle_of(const Surface& surface, Point2 p) {
  if (surface.triangles.empty()) return kNone;
  if (const Index t = walked(surface, p); t != kNone) return t;
  for (Index t = 0; t < static_cast<Index>(surface.triangles.size()); ++t)
    if (holds(surface, t, p)) return t;
  return kNone;
}

bool meets(const Surface& surface, Index t, const Box2& box) {
  const auto [a, b, c] = surface.corners(t);
  return std::max({a.x, b.x, c.x}) >= box.low.x && std::min({a.x, b.x, c.x}) <= box.high.x &&
         std::max({a.y, b.y, c.y}) >= box.low.y && std::min({a.y, b.y, c.y}) <= box.high.y;
}

std::vector<Index> spread(const Surface& surface, std::span<const Point2> seeds, const Box2& box) {
  std::vector<Index> found;
  std::unordered_set<Index> seen;
  const auto take = [&](Index t) {
    if (t != kNone && meets(surface, t, box) && seen.insert(t).second) found.push_back(t);
  };
  for (const Point2 p : seeds) {
    take(triangle_of(surface, p));
    for (std::size_t next = 0; next < found.size(); ++next)
      for (const Index t : surface.neighbours[at(found[next])]) take(t);
  }
  std::sort(found.begin(), found.end());
  return found;
}

}  // namespace

Patch patch_of(const Surface& surface, std::span<const Point2> seeds, const Box2& box) {
  Patch patch;
  patch.triangles = spread(surface, seeds, box);
  for (const Index t : patch.triangles)
    for (const Index v : surface.triangles[at(t)]) patch.vertices.push_back(v);
  std::sort(patch.vertices.begin(), patch.vertices.end());
  patch.vertices.erase(std::unique(patch.vertices.begin(), patch.vertices.end()),
                       patch.vertices.end());
  const auto number = [](const std::vector<Index>& list, Index value) {
    const auto found = std::lower_bound(list.begin(), list.end(), value);
    return found != list.end() && *found == value ? static_cast<Index>(found - list.begin())
                                                  : kNone;
  };
  for (const Index v : patch.vertices) patch.surface.vertices.push_back(surface.vertices[at(v)]);
  for (const Index t : patch.triangles) {
    auto corners = surface.triangles[at(t)];
    auto beyond = surface.neighbours[at(t)];
    for (Index& v : corners) v = number(patch.vertices, v);
    for (Index& n : beyond) n = n == kNone ? kNone : number(patch.triangles, n);
    patch.surface.triangles.push_back(corners);
    patch.surface.neighbours.push_back(beyond);
  }
  return patch;
}

}  // namespace squaredig::geometry
