// Meetings of segments: exact predicates, the crossing point, and the pairs that are worth a look.
#pragma once

#include <cstddef>
#include <functional>
#include <vector>

#include "geometry/plane_types.h"

namespace squaredig::geometry {

struct Segment2 {
  Point2 a, b;
};

// True when the segments cross in one point inside both; decided exactly.
bool cross_properly(const Segment2& s, const Segment2& t);

// Where their lines cross, found in exact numbers and rounded once. Requires: not parallel.
Point2 exact_crossing(const Segment2& s, const Segment2& t);

// Calls use(i, j), i < j, for all pairs whose boxes come within `margin` of each other.
void near_pairs(const std::vector<Segment2>& segments, double margin,
                const std::function<void(std::size_t, std::size_t)>& use);

}  // namespace squaredig::geometry
