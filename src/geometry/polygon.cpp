#include "geometry/polygon.h"

#include <algorithm>
#include <cmath>

namespace squaredig::geometry {
namespace {

std::size_t next(std::size_t i, std::size_t n) { return i + 1 == n ? 0 : i + 1; }

// Sutherland and Hodgman's step; `value` is above zero on the side that stays.
template <class Value>
Polygon clipped(std::span<const Point2> convex, const Value& value) {
  Polygon out;
  out.reserve(convex.size() + 1);
  for (std::size_t i = 0; i < convex.size(); ++i) {
    const Point2 p = convex[i], q = convex[next(i, convex.size())];
    const double at_p = value(p), at_q = value(q);
    if (at_p >= 0) out.push_back(p);
    if ((at_p > 0 && at_q < 0) || (at_p < 0 && at_q > 0)) {
      // measured from the nearer end, so that a crossing close to a corner stays close to it
      const bool from_p = std::abs(at_p) <= std::abs(at_q);
      const double t = (from_p ? at_p : at_q) / (at_p - at_q);
      out.push_back(from_p ? p + t * (q - p) : q + t * (q - p));
    }
  }
  if (out.size() < 3) out.clear();
  return out;
}

}  // namespace

double signed_area(std::span<const Point2> polygon) {
  double twice = 0;
  for (std::size_t i = 2; i < polygon.size(); ++i)
    twice += orient(polygon[0], polygon[i - 1], polygon[i]);
  return twice / 2;
}

Point2 centroid(std::span<const Point2> p) {
  double x = 0, y = 0, twice = 0;
  for (std::size_t i = 2; i < p.size(); ++i) {
    const double w = orient(p[0], p[i - 1], p[i]);
    x += w * ((p[i - 1].x - p[0].x) + (p[i].x - p[0].x)) / 3;
    y += w * ((p[i - 1].y - p[0].y) + (p[i].y - p[0].y)) / 3;
    twice += w;
  }
  if (twice == 0) return p.empty() ? Point2{} : p[0];
  return {p[0].x + x / twice, p[0].y + y / twice};
}

bool is_convex(std::span<const Point2> polygon) {
  const std::size_t n = polygon.size();
  if (n < 3 || signed_area(polygon) <= 0) return false;
  double turned = 0;
  for (std::size_t i = 0; i < n; ++i) {
    const Point2 in = polygon[next(i, n)] - polygon[i];
    const Point2 out = polygon[next(next(i, n), n)] - polygon[next(i, n)];
    if (cross(in, out) < 0 || (cross(in, out) == 0 && dot(in, out) < 0)) return false;
    turned += std::atan2(cross(in, out), dot(in, out));
  }
  return turned < 7;  // once round is 2 pi; a star goes round twice without turning right
}

double distance_to_segment(Point2 p, Point2 a, Point2 b) {
  const Point2 ab = b - a;
  const double length2 = dot(ab, ab);
  const double t = length2 > 0 ? std::clamp(dot(p - a, ab) / length2, 0.0, 1.0) : 0;
  const Point2 off = p - (a + t * ab);
  return std::hypot(off.x, off.y);
}

double distance_to_edge(std::span<const Point2> polygon, Point2 p) {
  double least = HUGE_VAL;
  for (std::size_t i = 0; i < polygon.size(); ++i)
    least = std::min(least, distance_to_segment(p, polygon[i], polygon[next(i, polygon.size())]));
  return least;
}

bool ray_crosses(Point2 p, Point2 a, Point2 b) {
  if ((a.y > p.y) == (b.y > p.y)) return false;
  // upward both times, so that an edge's two sides share no rounding
  return a.y < b.y ? orient(a, b, p) > 0 : orient(b, a, p) > 0;
}

int side_of(std::span<const Point2> polygon, Point2 p, double snap) {
  if (distance_to_edge(polygon, p) <= snap) return 0;
  bool inside = false;
  for (std::size_t i = 0; i < polygon.size(); ++i)
    if (ray_crosses(p, polygon[i], polygon[next(i, polygon.size())])) inside = !inside;
  return inside ? 1 : -1;
}

Polygon clip_half_plane(std::span<const Point2> convex, double a, double b, double c) {
  return clipped(convex, [=](Point2 p) { return a * p.x + b * p.y + c; });
}

Polygon clip_convex(std::span<const Point2> subject, std::span<const Point2> window) {
  Polygon left(subject.begin(), subject.end());
  for (std::size_t i = 0; i < window.size() && !left.empty(); ++i) {
    const Point2 a = window[i], b = window[next(i, window.size())];
    left = clipped(left, [=](Point2 p) { return orient(a, b, p); });
  }
  return left;
}

}  // namespace squaredig::geometry
