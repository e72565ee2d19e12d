// Points, planes and polygons of the site frame: metres, x east, y north, z up, anticlockwise
// positive. Plain doubles are allowed in this room alone; coordinates are a few kilometres at most
// from the frame's origin, so that products keep their litres.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

namespace squaredig::geometry {

struct Point2 {
  double x = 0, y = 0;
  friend constexpr bool operator==(const Point2&, const Point2&) = default;
};
struct Point3 {
  double x = 0, y = 0, z = 0;
  constexpr Point2 plan() const { return {x, y}; }
  friend constexpr bool operator==(const Point3&, const Point3&) = default;
};
constexpr Point2 operator+(Point2 a, Point2 b) { return {a.x + b.x, a.y + b.y}; }
constexpr Point2 operator-(Point2 a, Point2 b) { return {a.x - b.x, a.y - b.y}; }
constexpr Point2 operator*(double k, Point2 a) { return {k * a.x, k * a.y}; }
constexpr double dot(Point2 a, Point2 b) { return a.x * b.x + a.y * b.y; }
constexpr double cross(Point2 a, Point2 b) { return a.x * b.y - a.y * b.x; }
// Twice the signed area of the triangle a b c, positive anticlockwise.
constexpr double orient(Point2 a, Point2 b, Point2 c) { return cross(b - a, c - a); }

// z = height + slope_x (x - about.x) + slope_y (y - about.y). `about` lies near the work.
struct Plane {
  Point2 about;
  double height = 0;
  double slope_x = 0;
  double slope_y = 0;
  constexpr double at(Point2 p) const {
    return height + slope_x * (p.x - about.x) + slope_y * (p.y - about.y);
  }
};

// About the first of three points that are not on one line in plan.
constexpr Plane plane_through(Point3 a, Point3 b, Point3 c) {
  const Point2 u = b.plan() - a.plan(), v = c.plan() - a.plan();
  const double du = b.z - a.z, dv = c.z - a.z, twice_area = cross(u, v);
  return {a.plan(), a.z, (du * v.y - dv * u.y) / twice_area, (u.x * dv - v.x * du) / twice_area};
}

// Simple polygon, anticlockwise, without a repeated last point.
using Polygon = std::vector<Point2>;

}  // namespace squaredig::geometry
