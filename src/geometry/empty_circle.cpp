// The parts of polygon.h that need exact predicates: crossing edges and the largest empty circle.
#include <CGAL/Delaunay_triangulation_2.h>
#include <CGAL/Exact_predicates_inexact_constructions_kernel.h>

#include <algorithm>
#include <cmath>
#include <tuple>

#include "geometry/polygon.h"

namespace squaredig::geometry {
namespace {

using Kernel = CGAL::Exact_predicates_inexact_constructions_kernel;
using Delaunay = CGAL::Delaunay_triangulation_2<Kernel>;

Kernel::Point_2 exact(Point2 p) { return {p.x, p.y}; }
Point2 plain(const Kernel::Point_2& p) { return {p.x(), p.y()}; }

int turn(Point2 a, Point2 b, Point2 c) {
  return static_cast<int>(CGAL::orientation(exact(a), exact(b), exact(c)));
}

bool in_box(Point2 p, Point2 a, Point2 b) {
  return std::min(a.x, b.x) <= p.x && p.x <= std::max(a.x, b.x) && std::min(a.y, b.y) <= p.y &&
         p.y <= std::max(a.y, b.y);
}

bool touch(Point2 a, Point2 b, Point2 c, Point2 d) {
  const int abc = turn(a, b, c), abd = turn(a, b, d), cda = turn(c, d, a), cdb = turn(c, d, b);
  if (abc * abd < 0 && cda * cdb < 0) return true;
  return (abc == 0 && in_box(c, a, b)) || (abd == 0 && in_box(d, a, b)) ||
         (cda == 0 && in_box(a, c, d)) || (cdb == 0 && in_box(b, c, d));
}

// Neighbours a-b, b-c may share b alone: not a repeated point, not the way back.
bool folds(Point2 a, Point2 b, Point2 c) {
  return a == b || b == c || (turn(a, b, c) == 0 && dot(b - a, c - b) < 0);
}

// A centre and the radius its defining points give it.
struct Candidate {
  double radius2 = 0;
  Point2 centre;
};
bool larger(const Candidate& a, const Candidate& b) {
  return std::tie(b.radius2, a.centre.x, a.centre.y) < std::tie(a.radius2, b.centre.x, b.centre.y);
}

double square(Point2 p) { return dot(p, p); }

// Where, along the left normal of a-b from its middle, the circle through a, b and c is centred.
double centre_on_bisector(Point2 a, Point2 b, Point2 c) {
  return dot(a - c, b - c) / (2 * orient(a, b, c));
}

class EmptyCircles {
 public:
  EmptyCircles(std::span<const Point2> polygon, std::span<const Point2> points)
      : polygon_(polygon) {
    std::vector<Kernel::Point_2> sites;
    sites.reserve(points.size());
    for (const Point2 p : points) sites.push_back(exact(p));
    voronoi_.insert(sites.begin(), sites.end());
  }

  Circle largest() {
    for (const Point2 corner : polygon_) add(corner, square(corner - nearest(corner)));
    for (auto e = voronoi_.finite_edges_begin(); e != voronoi_.finite_edges_end(); ++e) edge(*e);
    std::sort(candidates_.begin(), candidates_.end(), larger);
    Candidate best{-1, {}};
    for (const Candidate& c : candidates_) {
      if (c.radius2 <= best.radius2) break;
      // the true distance: a badly conditioned centre never claims more than it has
      const Candidate proven{square(c.centre - nearest(c.centre)), c.centre};
      if (larger(proven, best)) best = proven;
    }
    return {best.centre, std::sqrt(best.radius2)};
  }

 private:
  Point2 nearest(Point2 p) const { return plain(voronoi_.nearest_vertex(exact(p))->point()); }
  void add(Point2 centre, double radius2) { candidates_.push_back({radius2, centre}); }

  // The Voronoi edge between a and b: its two ends, and where it crosses the polygon. It runs along
  // middle + t normal, t between the centres of the faces beside it, without end beyond the hull.
  void edge(const Delaunay::Edge& e) {
    const Point2 a = plain(e.first->vertex(Delaunay::ccw(e.second))->point());
    const Point2 b = plain(e.first->vertex(Delaunay::cw(e.second))->point());
    const Point2 middle = a + 0.5 * (b - a);
    const Point2 normal{-(b - a).y, (b - a).x};
    const double quarter = square(b - a) / 4;
    double low = -HUGE_VAL, high = HUGE_VAL;
    if (voronoi_.dimension() == 2) {
      const auto other = voronoi_.mirror_edge(e);
      if (!voronoi_.is_infinite(e.first))
        high = centre_on_bisector(a, b, plain(e.first->vertex(e.second)->point()));
      if (!voronoi_.is_infinite(other.first))
        low = centre_on_bisector(a, b, plain(other.first->vertex(other.second)->point()));
    }
    for (const double t : {low, high}) {
      if (!std::isfinite(t)) continue;
      const Point2 centre = middle + t * normal;
      if (side_of(polygon_, centre, 0) >= 0) add(centre, quarter + t * t * square(normal));
    }
    crossings(middle, normal, low, high, quarter);
  }

  void crossings(Point2 middle, Point2 normal, double low, double high, double quarter) {
    constexpr double kSlack = 1e-12;  // of a crossing at a Voronoi vertex; the proof takes it back
    for (std::size_t i = 0; i < polygon_.size(); ++i) {
      const Point2 p = polygon_[i], q = polygon_[i + 1 == polygon_.size() ? 0 : i + 1];
      const double across = cross(normal, q - p);
      if (across == 0) continue;
      const double t = cross(p - middle, q - p) / across;
      const double s = cross(p - middle, normal) / across;
      const double slack = kSlack * (1 + std::abs(t));
      if (s < 0 || s > 1 || t < low - slack || t > high + slack) continue;
      add(p + s * (q - p), quarter + t * t * square(normal));
    }
  }

  std::span<const Point2> polygon_;
  Delaunay voronoi_;
  std::vector<Candidate> candidates_;
};

}  // namespace

std::optional<std::pair<std::size_t, std::size_t>> self_crossing(std::span<const Point2> polygon) {
  const std::size_t n = polygon.size();
  const auto at = [&](std::size_t i) { return polygon[i % n]; };
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = i + 1; j < n; ++j) {
      bool bad = false;
      if (j == i + 1) {
        bad = folds(at(i), at(j), at(j + 1));
      } else if (i == 0 && j == n - 1) {
        bad = folds(at(j), at(0), at(1));
      } else {
        bad = touch(at(i), at(i + 1), at(j), at(j + 1));
      }
      if (bad) return std::pair(i, j);
    }
  }
  return std::nullopt;
}

Circle largest_empty_circle(std::span<const Point2> polygon, std::span<const Point2> points) {
  if (polygon.empty()) return {};
  if (points.empty()) return {centroid(polygon), HUGE_VAL};
  return EmptyCircles(polygon, points).largest();
}

}  // namespace squaredig::geometry
