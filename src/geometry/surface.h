// A triangulated surface in flat arrays.
//
// What: vertices, triangles and neighbours; a function of plan position (no overhangs).
// Frame and units: site frame, metres.
// Laws (each told by verify): surface.1 every triangle is anticlockwise with area above zero;
//   surface.2 neighbours agree from both sides; surface.3 no two triangles overlap in plan;
//   surface.4 every index is in range and every coordinate finite.
// Overlaps up to a nanometre deep are rounding, not faults.
// Accuracy: exact on what is stored; area sums are compensated. Errors: none.
// Source: definition.
#pragma once

#include <string>

#include "geometry/plane_types.h"

namespace squaredig::geometry {

using Index = std::int32_t;
constexpr Index kNone = -1;

struct Surface {
  std::vector<Point3> vertices;
  std::vector<std::array<Index, 3>> triangles;
  // neighbours[t][i] lies across the edge from triangles[t][i] to triangles[t][(i + 1) % 3].
  std::vector<std::array<Index, 3>> neighbours;

  std::array<Point3, 3> corners(Index t) const {
    const auto& c = triangles[static_cast<std::size_t>(t)];
    return {vertices[static_cast<std::size_t>(c[0])], vertices[static_cast<std::size_t>(c[1])],
            vertices[static_cast<std::size_t>(c[2])]};
  }
  Plane plane(Index t) const;
};

// Fills `neighbours` from `triangles`. Gives false where an edge has more than two triangles.
bool link_neighbours(Surface& surface);

// A law that does not hold: for which triangle, and against which other, where there is one.
struct SurfaceFault {
  enum class Kind { OutOfRange, NotFinite, Clockwise, NoArea, Neighbours, Overlap };
  Kind kind = Kind::OutOfRange;
  Index triangle = kNone;
  Index other = kNone;  // the other triangle of an overlap; the vertex of NotFinite
};
std::vector<SurfaceFault> find_faults(const Surface& surface);

// Every law that does not hold, in words; empty when all hold.
std::vector<std::string> verify(const Surface& surface);

double plan_area(const Surface& surface);
double surface_area(const Surface& surface);

}  // namespace squaredig::geometry
