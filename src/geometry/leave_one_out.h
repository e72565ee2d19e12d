// What a surface would say at a vertex had the vertex not been measured.
//
// What: the vertex is taken out, the hole of its triangles is closed by a constrained Delaunay
//   triangulation of the hole's corners, and the height is read at its place.
// Frame and units: site frame, metres.
// Requires: a verified surface.
// Laws: leave_one_out.1  on a plane the height is the vertex's own; leave_one_out.2  on a Delaunay
//   surface it is the height of the whole triangulated again without the vertex.
// Accuracy: below 1e-9 m.
// Errors: nothing for a vertex on the rim, or in no triangle.
// Source: taking a vertex out of a Delaunay triangulation changes its own triangles alone.
#pragma once

#include <optional>
#include <span>

#include "geometry/surface.h"

namespace squaredig::geometry {

std::vector<std::optional<double>> heights_without(const Surface& surface,
                                                   std::span<const Index> vertices);

}  // namespace squaredig::geometry
