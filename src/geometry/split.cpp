#include <algorithm>
#include <cmath>

#include "geometry/split_internal.h"

namespace squaredig::geometry {

LabelledPolygon part_above(const LabelledPolygon& polygon, std::span<const double> values,
                           int label) {
  LabelledPolygon part;
  const std::size_t n = polygon.corners.size();
  bool any = false;
  for (std::size_t i = 0; i < n; ++i) {
    const std::size_t j = (i + 1) % n;
    const double vi = snapped(values[i]);
    const double vj = snapped(values[j]);
    any = any || vi > 0;
    if (vi >= 0) {
      part.corners.push_back(polygon.corners[i]);
      // leaving at this corner: what follows runs along the line
      part.labels.push_back(vi == 0 && vj < 0 ? label : polygon.labels[i]);
    }
    if (vi > 0 && vj < 0) {
      part.corners.push_back(crossing(polygon.corners[i], vi, polygon.corners[j], vj));
      part.labels.push_back(label);
    } else if (vi < 0 && vj > 0) {
      part.corners.push_back(crossing(polygon.corners[j], vj, polygon.corners[i], vi));
      part.labels.push_back(polygon.labels[i]);
    }
  }
  if (!any || part.corners.size() < 3) return {};
  return part;
}

HalfPlane HalfPlane::left_of(Point2 from, Point2 to) {
  const Point2 d = to - from;
  const double length = std::hypot(d.x, d.y);
  HalfPlane h{-d.y / length, d.x / length, 0};
  h.c = -(h.a * from.x + h.b * from.y);
  return h;
}

LabelledPolygon part_inside(const LabelledPolygon& polygon, const HalfPlane& half, int label) {
  std::vector<double> values;
  values.reserve(polygon.corners.size());
  for (const Point2 p : polygon.corners) values.push_back(half.at(p));
  return part_above(polygon, values, label);
}

LabelledPolygon part_inside(LabelledPolygon polygon, std::span<const Point2> convex, int label) {
  for (std::size_t i = 0; i < convex.size() && !polygon.empty(); ++i) {
    const Point2 a = convex[i];
    const Point2 b = convex[(i + 1) % convex.size()];
    if (a == b) continue;
    polygon = part_inside(polygon, HalfPlane::left_of(a, b), label);
  }
  return polygon;
}

Box2 box_of(std::span<const Point2> points) {
  Box2 box{points[0], points[0]};
  for (const Point2 p : points) {
    box.low = {std::min(box.low.x, p.x), std::min(box.low.y, p.y)};
    box.high = {std::max(box.high.x, p.x), std::max(box.high.y, p.y)};
  }
  return box;
}

void ConvexWindow::become(std::span<const Point2> convex) {
  box_ = box_of(convex);
  sides_.clear();
  for (std::size_t i = 0; i < convex.size(); ++i) {
    const Point2 a = convex[i], b = convex[(i + 1) % convex.size()];
    if (a != b) sides_.push_back(HalfPlane::left_of(a, b));
  }
}

std::span<const Point2> ConvexWindow::part_of(std::span<const Point2> whole,
                                              CutSpace& space) const {
  std::span<const Point2> part = whole;
  for (const HalfPlane& side : sides_) {
    reserve_places(space.values, part.size());
    reserve_places(space.to, 2 * part.size());
    const auto held = held_to(side, part, space.values.data(), space.to.data());
    if (held.data() == space.to.data()) space.from.swap(space.to);
    part = held;
    if (part.empty()) break;
  }
  return part;
}

double area_of(std::span<const Point2> polygon) {
  double twice = 0;
  for (std::size_t i = 2; i < polygon.size(); ++i)
    twice += orient(polygon[0], polygon[i - 1], polygon[i]);
  return twice / 2;
}

double integral_over(std::span<const Point2> convex, std::span<const double> values) {
  double six = 0;
  for (std::size_t i = 2; i < convex.size(); ++i)
    six += orient(convex[0], convex[i - 1], convex[i]) * (values[0] + values[i - 1] + values[i]);
  return six / 6;
}

}  // namespace squaredig::geometry
