// Strings made ready for a triangulation that knows no crossings: each segment cut where it crosses
// another or passes another string's vertex, the crossings added to the vertices.
//
// What comes within kStringSnap of a string's vertex counts as going through it. Without that,
// strings laid along one line, equal but for the last bit, would cross without end; with it,
// vertices of strings keep apart and the work ends.
#pragma once

#include <cstdint>
#include <unordered_map>

#include "geometry/ordering_internal.h"

namespace squaredig::geometry {

constexpr double kStringSnap = 1e-9;

// A piece of a string between two vertices, the lower number first.
struct StringPiece {
  Index a = kNone;
  Index b = kNone;
  StringKind kind = StringKind::Breakline;
};

struct CutStrings {
  std::vector<StringPiece> pieces;  // ascending by (a, b), each once
  std::vector<StringCrossing> crossings;
  std::vector<StringCrossing> touches;
};

// Adds the crossings to `placed`, whose vertices are renumbered to stay in order; no two pieces
// cross afterwards.
CutStrings cut_strings(const TriangulationInput& input, Placed& placed);

// Vertices of strings by place: finds one within kStringSnap.
class SnapIndex {
 public:
  // The nearest vertex within reach of `p`; where there is none, `vertex` is entered at `p` and
  // given back.
  Index find_or_enter(Point2 p, Index vertex);

 private:
  struct Entry {
    Point2 at;
    Index vertex = kNone;
  };
  struct Cell {
    std::int64_t column, row;
    friend bool operator==(const Cell&, const Cell&) = default;
  };
  struct CellHash {
    std::size_t operator()(const Cell& c) const;
  };
  std::unordered_map<Cell, std::vector<Entry>, CellHash> cells_;
};

// The segments of all strings, lower vertex first, ascending by (a, b), then by string. Of string
// vertices within reach of each other the lowest stands for all; the index holds those.
struct StringSegment {
  Index a, b;
  Index string;
  StringKind kind;
  double height_a, height_b;  // the string's own, which a doubled vertex need not have
};
std::vector<StringSegment> segments_of(const TriangulationInput& input, const Placed& placed,
                                       SnapIndex& index);

}  // namespace squaredig::geometry
