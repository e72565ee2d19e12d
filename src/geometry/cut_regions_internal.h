// The regions that single cuts take out of single triangles, and how they hang together.
#pragma once

#include <vector>

#include "geometry/convex_cut.h"

namespace squaredig::geometry {

// Labels of region edges: 0, 1, 2 lie on the triangle's edges.
constexpr int kZeroLine = 3;        // the surface meets the cut
constexpr int kVertical = 4;        // the top of a vertical side
constexpr double kNoArea = 1e-12;   // m2
constexpr double kNoLength = 1e-8;  // m

struct Region {
  Index triangle = kNone;
  Index cut = kNone;
  LabelledPolygon polygon;
  std::size_t group = 0;  // regions that hang together share it
  bool removed = false;
};

// All regions, by triangle and then cut, with groups joined and `removed` set for those groups that
// touch a toe polygon.
std::vector<Region> find_regions(const Surface& surface, const std::vector<ConvexCut>& cuts);

}  // namespace squaredig::geometry
