// Cutting a convex polygon along a line, each edge keeping a label that says where it came from.
//
// Frame and units: site frame, metres; anticlockwise.
// Requires: a convex polygon; the values at its corners are of a linear function.
// Laws: split.1 both parts' areas add up to the whole's, and both use the same two points on the
//   line; split.2 a polygon on which the function is nowhere above zero keeps nothing above.
// Accuracy: values within `kLevelSnap` of zero count as zero, so that a line through a corner cuts
//   no sliver; an intersection point is rounded once. Errors: none.
// Source: Sutherland and Hodgman's clipping.
#pragma once

#include <span>

#include "geometry/plane_types.h"

namespace squaredig::geometry {

// A difference of heights below this is none: far under a micrometre, far over rounding.
constexpr double kLevelSnap = 1e-10;

struct LabelledPolygon {
  std::vector<Point2> corners;
  std::vector<int> labels;  // labels[i] is of the edge from corner i to the next
  bool empty() const { return corners.size() < 3; }
};

// The part of `polygon` where the function is above zero; `values` are taken at its corners. The
// new edge gets `label`.
LabelledPolygon part_above(const LabelledPolygon& polygon, std::span<const double> values,
                           int label);

// A line in plan: a x + b y + c, positive on the inner side; (a, b) has length 1.
struct HalfPlane {
  double a = 0, b = 0, c = 0;
  constexpr double at(Point2 p) const { return a * p.x + b * p.y + c; }
  // The half-plane to the left of the line from one point to another.
  static HalfPlane left_of(Point2 from, Point2 to);
};

LabelledPolygon part_inside(const LabelledPolygon& polygon, const HalfPlane& half, int label);
LabelledPolygon part_inside(LabelledPolygon polygon, std::span<const Point2> convex, int label);

struct Box2 {
  Point2 low, high;
};
Box2 box_of(std::span<const Point2> points);  // of one point at least

// Places for the corners of a polygon while it is cut, kept from one to the next.
struct CutSpace {
  std::vector<Point2> from, to;
  std::vector<double> values;
};

// A convex polygon that many others are held to: its sides as half-planes, made once.
class ConvexWindow {
 public:
  ConvexWindow() = default;
  explicit ConvexWindow(std::span<const Point2> convex) { become(convex); }
  void become(std::span<const Point2> convex);
  // The corners that part_inside keeps, in `space` until it is used again; none where nothing is
  // left. Sides that cut nothing off are passed over.
  std::span<const Point2> part_of(std::span<const Point2> whole, CutSpace& space) const;
  const Box2& box() const { return box_; }
  // A box does not meet the window's own.
  bool misses(const Box2& box) const {
    return box.high.x < box_.low.x || box.low.x > box_.high.x || box.high.y < box_.low.y ||
           box.low.y > box_.high.y;
  }

 private:
  std::vector<HalfPlane> sides_;
  Box2 box_;
};

double area_of(std::span<const Point2> polygon);

// Integral of the linear function with the given values at the corners over a convex polygon.
double integral_over(std::span<const Point2> convex, std::span<const double> values);

}  // namespace squaredig::geometry
