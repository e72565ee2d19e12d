// Cutting along a line, corner by corner, for work that is done millions of times.
#pragma once

#include <algorithm>
#include <cmath>
#include <utility>

#include "geometry/split.h"

namespace squaredig::geometry {

inline double snapped(double value) { return std::abs(value) < kLevelSnap ? 0 : value; }

inline bool comes_before(Point2 a, Point2 b) { return a.x < b.x || (a.x == b.x && a.y < b.y); }
inline Point2 zero_between(Point2 from, double first, Point2 to, double last) {
  return from + (first / (first - last)) * (to - from);
}
// Always walked from the lexicographically first end, so that both parts of a cut, and both
// triangles at an edge, get the same point.
inline Point2 crossing(Point2 a, double at_a, Point2 b, double at_b) {
  return comes_before(a, b) ? zero_between(a, at_a, b, at_b) : zero_between(b, at_b, a, at_a);
}

template <class T>
void reserve_places(std::vector<T>& places, std::size_t count) {
  if (places.size() < count) places.resize(count);
}

// The corners that part_above keeps, written to `out`, and how many: each corner that is left out
// brings at most one more, so that twice the polygon's are room enough. Values are snapped already.
inline std::size_t corners_above(std::span<const Point2> polygon, const double* values,
                                 Point2* out) {
  const std::size_t n = polygon.size();
  Point2* next = out;
  for (std::size_t i = 0; i < n;) {
    for (; i < n && values[i] >= 0; ++i) *next++ = polygon[i];
    if (i == n) break;
    if (i > 0 && values[i - 1] > 0)
      *next++ = crossing(polygon[i - 1], values[i - 1], polygon[i], values[i]);
    while (i < n && values[i] < 0) ++i;
    if (i < n && values[i] > 0)
      *next++ = crossing(polygon[i - 1], values[i - 1], polygon[i], values[i]);
  }
  if (values[n - 1] * values[0] < 0)
    *next++ = crossing(polygon[n - 1], values[n - 1], polygon[0], values[0]);
  return static_cast<std::size_t>(next - out);
}

// A polygon held to one side of a line: unchanged, or its corners in `out`, or none where too few
// stay or none is above.
inline std::span<const Point2> held_to(const HalfPlane& side, std::span<const Point2> polygon,
                                       double* values, Point2* out) {
  double least = HUGE_VAL, most = 0;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    values[i] = snapped(side.at(polygon[i]));
    least = std::min(least, values[i]);
    most = std::max(most, values[i]);
  }
  if (most <= 0) return {};
  if (least >= 0) return polygon;
  const std::size_t count = corners_above(polygon, values, out);
  return count < 3 ? std::span<const Point2>() : std::span<const Point2>(out, count);
}

}  // namespace squaredig::geometry
