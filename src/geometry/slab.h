// What lies between the highest of some planes and the lowest of others, over a convex polygon.
//
// Frame and units: site frame; cubic and square metres.
// Requires: a convex anticlockwise polygon; at least one plane below and one above.
// Laws: slab.1  slabs between rising levels add up to the slab between the outer ones; slab.2  the
//   order of the planes changes nothing; slab.3  splitting the polygon changes no sum.
// Accuracy: exact integration of a linear thickness over each convex part. Errors: none.
// Source: definition.
#pragma once

#include "geometry/split.h"

namespace squaredig::geometry {

struct Slab {
  double volume = 0;
  double area = 0;  // of the plan region where the slab has any thickness
};

Slab slab_between(std::span<const Point2> convex, std::span<const Plane> lowers,
                  std::span<const Plane> uppers);

// A convex polygon split at a convex ring: the part inside, and convex parts that make up the rest.
struct SplitAtRing {
  Polygon inside;  // empty where they do not overlap
  std::vector<Polygon> outside;
};
SplitAtRing split_at(std::span<const Point2> convex, std::span<const Point2> ring);

// The parts of a convex polygon where plane a lies above plane b, and where it does not.
struct SplitAtPlanes {
  Polygon above;
  Polygon below;
};
SplitAtPlanes split_where_above(std::span<const Point2> convex, const Plane& a, const Plane& b);

}  // namespace squaredig::geometry
