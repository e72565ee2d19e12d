// The outline of a set of convex pieces that share edges.
//
// Frame and units: site frame, metres.
// Accuracy: corners nearer than 1e-5 m are one; an edge that finds no partner closes no ring.
#pragma once

#include "geometry/plane_types.h"

namespace squaredig::base {

// Closed rings, outer ones anticlockwise, without repeated first corner.
std::vector<geometry::Polygon> outline_of(const std::vector<geometry::Polygon>& pieces);

}  // namespace squaredig::base
