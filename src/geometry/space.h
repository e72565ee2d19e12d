// Distances between straight pieces in plan and in space, with where they are nearest.
//
// Frame and units: site frame, metres.
// Laws: space.1  swapping the ends of a segment or turning the triangle's corners round changes no
//   distance; space.2  a segment that pierces the triangle is at distance zero.
// Accuracy: below 1e-9 m for pieces of metres to kilometres. Errors: none.
// Source: the nearest points of two convex pieces lie on their edges, or one is an end of the
//   segment over the triangle.
#pragma once

#include "geometry/plane_types.h"

namespace squaredig::geometry {

struct Near2 {
  double distance = 0;
  Point2 at;  // on the first piece
};
Near2 nearest(Point2 a, Point2 b, Point2 c, Point2 d);  // segment a-b to segment c-d

struct Near3 {
  double distance = 0;
  Point3 at;  // on the segment
};
Near3 nearest(const Point3& a, const Point3& b, const std::array<Point3, 3>& triangle);

}  // namespace squaredig::geometry
