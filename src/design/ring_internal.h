// Rings of toe lines whose edges remember their side: offset and covered by convex rings.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "geometry/plane_types.h"

namespace squaredig::design {

// Anticlockwise; side[i] belongs to the edge from corner i to the next.
struct SideRing {
  geometry::Polygon corners;
  std::vector<std::size_t> side;
};

// The ring with each edge moved outward by its distance (by side number); nothing where two
// neighbouring edges are parallel with different distances, or the result crosses itself.
std::optional<SideRing> moved_outward(const SideRing& ring, const std::vector<double>& by_side);

// A convex ring with each edge's line moved outward; an edge that finds no room is left out.
// Requires: a convex ring without straight corners; no distance below zero.
SideRing convex_moved_outward(const SideRing& ring, const std::vector<double>& by_side);

// Whether the edges before and after a corner lie in one line.
bool runs_straight(const SideRing& ring, std::size_t corner);

// Convex rings that together cover the ring. Every edge lies on a line of the ring's own edges.
struct Cover {
  std::vector<SideRing> rings;
  // pairs of sides where an extended side meets another at under 60 degrees
  std::vector<std::pair<std::size_t, std::size_t>> sharp;
};
Cover covered_by_convex(const SideRing& ring);

}  // namespace squaredig::design
