// Polygons in plan: area, tests, clipping, the largest empty circle.
//
// Frame and units: site frame, metres; anticlockwise positive.
// Laws: polygon.1 clip(p, line) + clip(p, opposite line) = p in area; polygon.2 the area of a clip
//   is never above the area of the polygon.
// Accuracy: areas about the first vertex, one rounding per product. Errors: none.
// Source: Sutherland and Hodgman's clipping against one half-plane, definition.
#pragma once

#include <optional>
#include <span>

#include "geometry/plane_types.h"

namespace squaredig::geometry {

double signed_area(std::span<const Point2> polygon);
Point2 centroid(std::span<const Point2> polygon);
bool is_convex(std::span<const Point2> polygon);  // anticlockwise and never turning right
// 1 inside, 0 within `snap` of the edge, -1 outside.
int side_of(std::span<const Point2> polygon, Point2 p, double snap);
// True where the ray from p towards greater x crosses the edge: a point is inside rings, however
// they lie in each other, where it crosses an odd number of their edges.
bool ray_crosses(Point2 p, Point2 a, Point2 b);
double distance_to_segment(Point2 p, Point2 a, Point2 b);
double distance_to_edge(std::span<const Point2> polygon, Point2 p);
// The first pair of edges that touch where neighbours would not: edge numbers.
std::optional<std::pair<std::size_t, std::size_t>> self_crossing(std::span<const Point2> polygon);
// The part of a convex polygon where a x + b y + c >= 0.
Polygon clip_half_plane(std::span<const Point2> convex, double a, double b, double c);
// Intersection of two convex anticlockwise polygons; empty when they do not overlap.
Polygon clip_convex(std::span<const Point2> subject, std::span<const Point2> window);

struct Circle {
  Point2 centre;
  double radius = 0;
};
// The largest circle centred inside the polygon that holds no point inside it, exact up to
// rounding: its centre is a Voronoi vertex, a Voronoi edge's crossing of the polygon, or a corner.
Circle largest_empty_circle(std::span<const Point2> polygon, std::span<const Point2> points);

}  // namespace squaredig::geometry
