// Input points brought into the order of the result: lexicographic by (x, y), each position once.
#pragma once

#include "geometry/triangulate.h"

namespace squaredig::geometry {

struct Placed {
  std::vector<Point3> vertices;  // ascending by (x, y)
  std::vector<Index> source;     // the input point each came from; kNone for a crossing
  std::vector<Index> vertex_of;  // the vertex at which each string vertex lies
  std::vector<Doubled> doubled;  // by dropped point, ascending
};

// Of several points at one position a string's vertex is kept, else the first given.
Placed place_in_order(const TriangulationInput& input);

// True when a comes before b in the order of vertices.
inline bool before(Point2 a, Point2 b) { return a.x != b.x ? a.x < b.x : a.y < b.y; }

}  // namespace squaredig::geometry
