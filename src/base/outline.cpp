#include <cmath>
#include <cstdint>
#include <map>
#include <set>

#include "base/outline_internal.h"
#include "geometry/polygon.h"

namespace squaredig::base {
namespace {

using Key = std::pair<std::int64_t, std::int64_t>;

Key key_of(geometry::Point2 p) {
  constexpr double kSame = 1e-5;
  return {std::llround(p.x / kSame), std::llround(p.y / kSame)};
}

// Corners in the order of a straight line are left out.
geometry::Polygon straightened(const geometry::Polygon& ring) {
  geometry::Polygon out;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const geometry::Point2 before = ring[(i + ring.size() - 1) % ring.size()];
    const geometry::Point2 after = ring[(i + 1) % ring.size()];
    if (geometry::distance_to_segment(ring[i], before, after) > 1e-6) out.push_back(ring[i]);
  }
  return out;
}

struct Edges {
  std::map<Key, geometry::Point2> corners;
  std::multimap<Key, Key> outer;  // from corner to corner, none beside a neighbour
};

Edges edges_of(const std::vector<geometry::Polygon>& pieces) {
  Edges edges;
  for (const geometry::Polygon& piece : pieces)
    for (std::size_t i = 0; i < piece.size(); ++i) {
      const geometry::Point2 a = piece[i], b = piece[(i + 1) % piece.size()];
      const Key from = key_of(a), to = key_of(b);
      if (from == to) continue;
      edges.corners.emplace(from, a);
      edges.corners.emplace(to, b);
      auto [it, end] = edges.outer.equal_range(to);
      while (it != end && it->second != from) ++it;
      if (it != end)
        edges.outer.erase(it);  // the neighbour's edge the other way: inside
      else
        edges.outer.emplace(from, to);
    }
  return edges;
}

}  // namespace

std::vector<geometry::Polygon> outline_of(const std::vector<geometry::Polygon>& pieces) {
  auto [corners, edges] = edges_of(pieces);
  std::vector<geometry::Polygon> rings;
  while (!edges.empty()) {
    geometry::Polygon ring;
    auto edge = edges.begin();
    const Key start = edge->first;
    while (edge != edges.end()) {
      ring.push_back(corners.at(edge->first));
      const Key to = edge->second;
      edges.erase(edge);
      if (to == start) break;
      edge = edges.find(to);
    }
    ring = straightened(ring);
    if (ring.size() >= 3) rings.push_back(std::move(ring));
  }
  return rings;
}

}  // namespace squaredig::base
