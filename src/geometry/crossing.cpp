#include <CGAL/Exact_predicates_inexact_constructions_kernel.h>
#include <CGAL/Exact_rational.h>
#include <CGAL/box_intersection_d.h>

#include <algorithm>

#include "geometry/crossing_internal.h"

namespace squaredig::geometry {
namespace {

int turn(Point2 a, Point2 b, Point2 c) {
  using Point = CGAL::Exact_predicates_inexact_constructions_kernel::Point_2;
  return static_cast<int>(CGAL::orientation(Point(a.x, a.y), Point(b.x, b.y), Point(c.x, c.y)));
}

}  // namespace

bool cross_properly(const Segment2& s, const Segment2& t) {
  return turn(s.a, s.b, t.a) * turn(s.a, s.b, t.b) < 0 &&
         turn(t.a, t.b, s.a) * turn(t.a, t.b, s.b) < 0;
}

Point2 exact_crossing(const Segment2& s, const Segment2& t) {
  using Exact = CGAL::Exact_rational;
  const Exact ux = Exact(s.b.x) - Exact(s.a.x), uy = Exact(s.b.y) - Exact(s.a.y);
  const Exact vx = Exact(t.b.x) - Exact(t.a.x), vy = Exact(t.b.y) - Exact(t.a.y);
  const Exact wx = Exact(t.a.x) - Exact(s.a.x), wy = Exact(t.a.y) - Exact(s.a.y);
  const Exact k = (wx * vy - wy * vx) / (ux * vy - uy * vx);
  return {CGAL::to_double(Exact(s.a.x) + k * ux) + 0.0,
          CGAL::to_double(Exact(s.a.y) + k * uy) + 0.0};
}

void near_pairs(const std::vector<Segment2>& segments, double margin,
                const std::function<void(std::size_t, std::size_t)>& use) {
  using Box = CGAL::Box_intersection_d::Box_with_info_d<double, 2, std::size_t>;
  std::vector<Box> boxes;
  boxes.reserve(segments.size());
  for (const auto& [a, b] : segments) {
    double low[] = {std::min(a.x, b.x) - margin, std::min(a.y, b.y) - margin};
    double high[] = {std::max(a.x, b.x), std::max(a.y, b.y)};
    boxes.emplace_back(low, high, boxes.size());
  }
  CGAL::box_self_intersection_d(boxes.begin(), boxes.end(), [&](const Box& p, const Box& q) {
    use(std::min(p.info(), q.info()), std::max(p.info(), q.info()));
  });
}

}  // namespace squaredig::geometry
