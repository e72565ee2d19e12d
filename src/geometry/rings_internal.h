// The boundary of the removed regions, chained into closed rings.
#pragma once

#include "geometry/cut.h"
#include "geometry/cut_regions_internal.h"

namespace squaredig::geometry {

struct BoundarySegment {
  Point3 from, to;  // the removed region lies on the left
  bool vertical = false;
};

struct Boundary {
  std::vector<BoundarySegment> segments;
  std::vector<Leaving> leaving;
};

// Requires: regions by triangle, only removed ones.
Boundary boundary_of(const Surface& surface, const std::vector<ConvexCut>& cuts,
                     const std::vector<Region>& regions);

// Closes segments whose ends agree to a micrometre (to 0.1 mm at worst) into rings.
std::vector<Ring> chain(const std::vector<BoundarySegment>& segments);

}  // namespace squaredig::geometry
