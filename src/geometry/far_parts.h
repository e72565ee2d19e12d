// The parts of a plan that lie farther than a distance from every point.
//
// What: each connected part by itself, with its area and the place in it farthest from all points.
// Frame and units: site frame, metres.
// Requires: convex anticlockwise pieces that tile the plan; a distance above zero.
// Laws: far.1 the parts fill what circles of that radius round the points leave of the plan; far.2
//   the farthest place of all has the radius of the largest empty circle; far.3 tiling the plan
//   another way changes no part.
// Accuracy: areas exact up to rounding, arcs included; two stretches of a border belong together
//   where their middles agree to a micrometre. Errors: none.
// Source: definition. Each point's own part of the plan is cut out by the bisectors to its Delaunay
//   neighbours; what its circle leaves of a convex piece touches the piece's border, one stretch of
//   it for each connected remnant; areas by Green's theorem.
#pragma once

#include <span>

#include "geometry/plane_types.h"

namespace squaredig::geometry {

struct FarPart {
  double area = 0;
  Point2 farthest;
  double distance = 0;  // there, to the nearest point
};

// Largest first.
std::vector<FarPart> far_parts(std::span<const Polygon> pieces, std::span<const Point2> points,
                               double distance);

}  // namespace squaredig::geometry
