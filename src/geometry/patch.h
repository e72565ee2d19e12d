// The part of a surface round some places: what hangs together with them inside a box.
//
// What: every triangle whose own box meets the given one and that is joined to a seed's triangle
//   through others that do. Found by walking and spreading over neighbours, so that the cost goes
//   with the patch and not with the surface.
// Frame and units: site frame, metres.
// Requires: a verified surface.
// Laws: patch.1  triangles and vertices keep their order and their numbers' order; patch.2  the
//   patch of a larger surface that is the same inside the box is the same patch.
// Accuracy: exact: nothing is computed but comparisons. Errors: none.
// Source: visibility walk over a triangulation; where the surface's rim or an endless turn stops
//   the walk, every triangle is looked at.
#pragma once

#include <span>

#include "geometry/convex_cut.h"
#include "geometry/surface.h"

namespace squaredig::geometry {

struct Patch {
  Surface surface;
  std::vector<Index> vertices;   // of each vertex its number in the surface it was taken from
  std::vector<Index> triangles;  // the same of each triangle
};

Patch patch_of(const Surface& surface, std::span<const Point2> seeds, const Box2& box);

}  // namespace squaredig::geometry
