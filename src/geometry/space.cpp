#include "geometry/space.h"

#include <algorithm>
#include <cmath>

namespace squaredig::geometry {
namespace {

Point3 minus(const Point3& a, const Point3& b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
Point3 along(const Point3& a, double t, const Point3& d) {
  return {a.x + t * d.x, a.y + t * d.y, a.z + t * d.z};
}
double dot3(const Point3& a, const Point3& b) { return a.x * b.x + a.y * b.y + a.z * b.z; }
Point3 cross3(const Point3& a, const Point3& b) {
  return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
double length(const Point3& a) { return std::sqrt(dot3(a, a)); }
double clamped(double t) { return std::max(0.0, std::min(1.0, t)); }

// Place on segment c-d nearest to p, as a fraction.
double place_on(const Point3& p, const Point3& c, const Point3& d) {
  const Point3 v = minus(d, c);
  const double vv = dot3(v, v);
  return vv > 0 ? clamped(dot3(minus(p, c), v) / vv) : 0;
}

Near3 between(const Point3& a, const Point3& b, const Point3& c, const Point3& d) {
  const Point3 u = minus(b, a), v = minus(d, c), w = minus(a, c);
  const double uu = dot3(u, u), uv = dot3(u, v), vv = dot3(v, v);
  const double uw = dot3(u, w), vw = dot3(v, w);
  const double det = uu * vv - uv * uv;
  Near3 best{HUGE_VAL, a};
  const auto offer = [&](double s) {
    const Point3 p = along(a, s, u);
    const double distance = length(minus(p, along(c, place_on(p, c, d), v)));
    if (distance < best.distance) best = {distance, p};
  };
  // inside both, at an end of the first, or where an end of the second falls on the first
  if (det > 1e-14 * uu * vv) offer(clamped((uv * vw - vv * uw) / det));
  offer(0);
  offer(1);
  offer(place_on(c, a, b));
  offer(place_on(d, a, b));
  return best;
}

bool over(const Point3& p, const std::array<Point3, 3>& t, const Point3& normal) {
  for (std::size_t i = 0; i < 3; ++i)
    if (dot3(cross3(minus(t[(i + 1) % 3], t[i]), minus(p, t[i])), normal) < 0) return false;
  return true;
}

}  // namespace

Near2 nearest(Point2 a, Point2 b, Point2 c, Point2 d) {
  const double side_a = orient(c, d, a), side_b = orient(c, d, b);
  if ((side_a > 0) != (side_b > 0) && (orient(a, b, c) > 0) != (orient(a, b, d) > 0))
    return {0, a + (side_a / (side_a - side_b)) * (b - a)};
  const Near3 found = between({a.x, a.y, 0}, {b.x, b.y, 0}, {c.x, c.y, 0}, {d.x, d.y, 0});
  return {found.distance, found.at.plan()};
}

Near3 nearest(const Point3& a, const Point3& b, const std::array<Point3, 3>& triangle) {
  Near3 best{HUGE_VAL, a};
  const auto offer = [&](const Near3& near) {
    if (near.distance < best.distance) best = near;
  };
  for (std::size_t i = 0; i < 3; ++i) offer(between(a, b, triangle[i], triangle[(i + 1) % 3]));
  const Point3 normal = cross3(minus(triangle[1], triangle[0]), minus(triangle[2], triangle[0]));
  const double size = length(normal);
  if (size <= 0) return best;
  const double at_a = dot3(minus(a, triangle[0]), normal) / size;
  const double at_b = dot3(minus(b, triangle[0]), normal) / size;
  if (over(a, triangle, normal)) offer({std::abs(at_a), a});
  if (over(b, triangle, normal)) offer({std::abs(at_b), b});
  if ((at_a > 0) != (at_b > 0)) {
    const Point3 p = along(a, at_a / (at_a - at_b), minus(b, a));
    if (over(p, triangle, normal)) offer({0, p});
  }
  return best;
}

}  // namespace squaredig::geometry
