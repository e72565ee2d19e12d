#include "geometry/patch.h"

#include <algorithm>
#include <cmath>
#include <cstdint>

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

// Ascending, as they stand in the marks.
std::vector<Index> marked(const std::vector<std::uint8_t>& marks, Index first, Index last) {
  std::vector<Index> found;
  for (Index i = first; i <= last; ++i)
    if (marks[at(i)] != 0) found.push_back(i);
  return found;
}

std::vector<Index> spread(const Surface& surface, std::span<const Point2> seeds, const Box2& box) {
  std::vector<Index> waiting;
  std::vector<std::uint8_t> seen(surface.triangles.size(), 0);
  Index first = static_cast<Index>(surface.triangles.size()), last = kNone;
  const auto take = [&](Index t) {
    if (t == kNone || seen[at(t)] != 0 || !meets(surface, t, box)) return;
    seen[at(t)] = 1;
    waiting.push_back(t);
    first = std::min(first, t);
    last = std::max(last, t);
  };
  for (const Point2 p : seeds) {
    take(triangle_of(surface, p));
    while (!waiting.empty()) {
      const Index t = waiting.back();
      waiting.pop_back();
      for (const Index beyond : surface.neighbours[at(t)]) take(beyond);
    }
  }
  return marked(seen, first, last);
}

// The number of each entry of an ascending list in that list; kNone for what is not in it.
class Numbers {
 public:
  explicit Numbers(const std::vector<Index>& list)
      : first_(list.empty() ? 0 : list.front()),
        number_(list.empty() ? 0 : at(list.back() - first_) + 1, kNone) {
    for (std::size_t i = 0; i < list.size(); ++i)
      number_[at(list[i] - first_)] = static_cast<Index>(i);
  }
  Index of(Index value) const {
    if (value < first_ || at(value - first_) >= number_.size()) return kNone;
    return number_[at(value - first_)];
  }

 private:
  Index first_;
  std::vector<Index> number_;
};

std::vector<Index> vertices_of(const Surface& surface, const std::vector<Index>& triangles) {
  Index first = static_cast<Index>(surface.vertices.size()), last = kNone;
  for (const Index t : triangles)
    for (const Index v : surface.triangles[at(t)])
      first = std::min(first, v), last = std::max(last, v);
  if (last == kNone) return {};
  std::vector<std::uint8_t> seen(surface.vertices.size(), 0);
  for (const Index t : triangles)
    for (const Index v : surface.triangles[at(t)]) seen[at(v)] = 1;
  return marked(seen, first, last);
}

}  // namespace

Patch patch_of(const Surface& surface, std::span<const Point2> seeds, const Box2& box) {
  Patch patch;
  patch.triangles = spread(surface, seeds, box);
  patch.vertices = vertices_of(surface, patch.triangles);
  const Numbers vertex(patch.vertices), triangle(patch.triangles);
  patch.surface.vertices.reserve(patch.vertices.size());
  patch.surface.triangles.reserve(patch.triangles.size());
  patch.surface.neighbours.reserve(patch.triangles.size());
  for (const Index v : patch.vertices) patch.surface.vertices.push_back(surface.vertices[at(v)]);
  for (const Index t : patch.triangles) {
    auto corners = surface.triangles[at(t)];
    auto beyond = surface.neighbours[at(t)];
    for (Index& v : corners) v = vertex.of(v);
    for (Index& n : beyond) n = n == kNone ? kNone : triangle.of(n);
    patch.surface.triangles.push_back(corners);
    patch.surface.neighbours.push_back(beyond);
  }
  return patch;
}

}  // namespace squaredig::geometry
