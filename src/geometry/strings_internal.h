// Strings made ready for a triangulation that knows no crossings: each segment cut where it crosses
// another, the crossings added to the vertices.
#pragma once

#include "geometry/ordering_internal.h"

namespace squaredig::geometry {

// A piece of a string between two vertices, the lower number first.
struct Piece {
  Index a = kNone;
  Index b = kNone;
  StringKind kind = StringKind::Breakline;
};

struct CutStrings {
  std::vector<Piece> pieces;  // ascending by (a, b), each once
  std::vector<StringCrossing> crossings;
  std::vector<StringCrossing> touches;
};

// Adds the crossings to `placed`, whose vertices are renumbered to stay in order; no two pieces
// cross afterwards.
CutStrings cut_strings(const TriangulationInput& input, Placed& placed);

}  // namespace squaredig::geometry
