// Triangles as they come out of the triangulation, before trimming and ordering.
#pragma once

#include <utility>

#include "geometry/strings_internal.h"

namespace squaredig::geometry {

struct RawMesh {
  std::vector<std::array<Index, 3>> triangles;
  std::vector<std::array<Index, 3>> neighbours;  // as in Surface
  std::vector<Index> flat;  // triangles whose area is lost in rounding, ascending
  std::vector<std::pair<Index, Index>> outline;  // edges on outlines, lower vertex first, ascending
};

// The constrained Delaunay triangulation of the placed vertices; empty where all lie on one line.
RawMesh constrained_delaunay(const Placed& placed, const std::vector<StringPiece>& pieces);

// Takes out triangles outside all `keep` polygons, and those whose area is lost in rounding.
void leave_out(RawMesh& mesh, const std::vector<Point3>& vertices,
               const std::vector<Polygon>& keep);

// Takes out rim triangles with a side longer than `longest`, from the hull inward, never across an
// outline. Gives their number.
std::size_t leave_out_rim(RawMesh& mesh, const std::vector<Point3>& vertices, double longest);

// Fills the surface with the triangles that are left, each turned so that its lowest vertex comes
// first, in ascending order, and the vertices that are used.
void fill_surface(const RawMesh& mesh, Placed& placed, Triangulated& out);

}  // namespace squaredig::geometry
