// An order of points in which each lies near the one before: along a Hilbert curve over their box.
#pragma once

#include <vector>

#include "geometry/surface.h"

namespace squaredig::geometry {

// Numbers into `vertices`. Close to linear in time, whatever order they come in.
std::vector<Index> hilbert_order(const std::vector<Point3>& vertices);

}  // namespace squaredig::geometry
