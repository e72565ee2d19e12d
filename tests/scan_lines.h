// A volume by another road: exact sections along scan lines, summed across by adaptive quadrature.
//
// On a line of constant y both the ground and the excavated surface are piecewise linear, so the
// section's area is exact once every place where either may bend is among the break points: the
// edges of the ground's triangles, the bounds of the cuts, every pair of cut planes, and every cut
// plane with the ground. Across, the sections are a piecewise polynomial of y: Gauss's rule of
// three points over an interval is compared with that over its halves and the interval split until
// they agree. No polygon is clipped and no facet is made.
#pragma once

#include <algorithm>
#include <cmath>
#include <set>

#include "design/excavation.h"
#include "geometry/locate.h"

namespace squaredig::testing {

class ScanLines {
 public:
  ScanLines(const design::Excavation& pit, const geometry::Surface& ground)
      : pit_(pit), ground_(ground), locator_(ground) {
    for (const auto& cut : pit.pit.cuts) {
      planes_.push_back(cut.floor);
      for (const auto& face : cut.faces) planes_.push_back(face.plane);
      for (const auto& bound : cut.bounds) bounds_.push_back(bound.inside);
    }
    for (const auto& ring : pit.dug.rings)
      for (const auto& p : ring.corners) {
        low_ = {std::min(low_.x, p.x), std::min(low_.y, p.y)};
        high_ = {std::max(high_.x, p.x), std::max(high_.y, p.y)};
      }
    low_ = {low_.x - 1, low_.y - 1};
    high_ = {high_.x + 1, high_.y + 1};
    for (geometry::Index t = 0; t < static_cast<geometry::Index>(ground.triangles.size()); ++t)
      near_.push_back(t);
    std::erase_if(near_, [&](geometry::Index t) {
      const auto [a, b, c] = ground_.corners(t);
      return std::max({a.x, b.x, c.x}) < low_.x || std::min({a.x, b.x, c.x}) > high_.x ||
             std::max({a.y, b.y, c.y}) < low_.y || std::min({a.y, b.y, c.y}) > high_.y;
    });
  }

  // To about `accuracy` cubic metres.
  double volume(double accuracy) {
    const double rate = accuracy / (high_.y - low_.y);
    double sum = 0;
    const int strips = 64;
    for (int i = 0; i < strips; ++i) {
      const double a = low_.y + (high_.y - low_.y) * i / strips;
      const double b = low_.y + (high_.y - low_.y) * (i + 1) / strips;
      sum += adaptive(a, b, gauss(a, b), rate);
    }
    return sum;
  }

 private:
  using Point2 = geometry::Point2;

  double depth(Point2 p) const {
    const auto top = locator_.height_at(p);
    const auto floor = pit_.surface_at(pit_.frame.to_grid(p));
    return top && floor ? *top - pit_.frame.to_site(*floor) : 0;
  }

  // Where two functions that are linear along the line are equal.
  void meet(const geometry::Plane& a, const geometry::Plane& b, double y,
            std::vector<double>& breaks) const {
    const Point2 left{low_.x, y}, right{high_.x, y};
    const double at_left = a.at(left) - b.at(left), at_right = a.at(right) - b.at(right);
    if ((at_left > 0) != (at_right > 0))
      breaks.push_back(low_.x + (high_.x - low_.x) * at_left / (at_left - at_right));
  }

  std::vector<double> break_points(double y) const {
    std::vector<double> breaks{low_.x, high_.x};
    for (std::size_t i = 0; i < planes_.size(); ++i)
      for (std::size_t j = i + 1; j < planes_.size(); ++j) meet(planes_[i], planes_[j], y, breaks);
    for (const auto& bound : bounds_)
      if (bound.a != 0) breaks.push_back(-(bound.b * y + bound.c) / bound.a);
    for (const auto t : near_) {
      const auto c = ground_.corners(t);
      if (std::max({c[0].y, c[1].y, c[2].y}) < y || std::min({c[0].y, c[1].y, c[2].y}) > y)
        continue;
      for (std::size_t i = 0; i < 3; ++i) {
        const auto &p = c[i], &q = c[(i + 1) % 3];
        if ((p.y > y) != (q.y > y)) breaks.push_back(p.x + (q.x - p.x) * (y - p.y) / (q.y - p.y));
      }
      for (const auto& plane : planes_) meet(ground_.plane(t), plane, y, breaks);
    }
    std::erase_if(breaks, [&](double x) { return x < low_.x || x > high_.x; });
    std::sort(breaks.begin(), breaks.end());
    return breaks;
  }

  double section(double y) const {
    const auto breaks = break_points(y);
    double area = 0;
    for (std::size_t i = 1; i < breaks.size(); ++i) {
      const double width = breaks[i] - breaks[i - 1];
      if (width < 1e-13) continue;
      area += width * std::max(0.0, depth({(breaks[i] + breaks[i - 1]) / 2, y}));
    }
    return area;
  }

  double gauss(double a, double b) const {
    const double middle = (a + b) / 2, half = (b - a) / 2, off = half * std::sqrt(0.6);
    return half / 9 * (5 * section(middle - off) + 8 * section(middle) + 5 * section(middle + off));
  }

  double adaptive(double a, double b, double whole, double rate) const {
    const double middle = (a + b) / 2;
    const double left = gauss(a, middle), right = gauss(middle, b);
    if (std::abs(left + right - whole) < rate * (b - a) || b - a < 1e-9) return left + right;
    return adaptive(a, middle, left, rate) + adaptive(middle, b, right, rate);
  }

  const design::Excavation& pit_;
  const geometry::Surface& ground_;
  geometry::Locator locator_;
  std::vector<geometry::Plane> planes_;
  std::vector<geometry::HalfPlane> bounds_;
  std::vector<geometry::Index> near_;
  Point2 low_{HUGE_VAL, HUGE_VAL}, high_{-HUGE_VAL, -HUGE_VAL};
};

}  // namespace squaredig::testing
