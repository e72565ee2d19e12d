// What lies between two planes over one overlap, and the sum of many.
#pragma once

#include <algorithm>

#include "geometry/overlay.h"
#include "geometry/split_internal.h"
#include "geometry/sum.h"

namespace squaredig::geometry {

// Volume and area of the part of a convex polygon where a linear function is above zero, built
// corner by corner.
class PartAbove {
 public:
  void add(Point2 p, double height) {
    if (count_ == 0) first_ = p, first_height_ = height;
    if (count_ > 1) {
      const double twice = orient(first_, last_, p);
      area_ += twice;
      volume_ += twice * (first_height_ + last_height_ + height);
    }
    last_ = p, last_height_ = height;
    ++count_;
  }
  double area() const { return area_ / 2; }
  double volume() const { return volume_ / 6; }

 private:
  Point2 first_, last_;
  double first_height_ = 0, last_height_ = 0;
  double area_ = 0, volume_ = 0;
  int count_ = 0;
};

class BetweenSums {
 public:
  // A piece of the overlap, with the differences of the planes at its corners and its area.
  void add(std::span<const Point2> corners, std::span<const double> differences, double area) {
    area_.add(area);
    double most = 0, least = 0;
    for (const double d : differences) most = std::max(most, d), least = std::min(least, d);
    greatest_above_ = std::max(greatest_above_, most);
    greatest_below_ = std::max(greatest_below_, -least);
    const bool up = most >= kLevelSnap, down = least <= -kLevelSnap;
    if (up && down) {
      add_both(corners, differences);
    } else if (up) {
      above_.add(integral_over(corners, differences));
      area_above_.add(area);
    } else if (down) {
      below_.add(-integral_over(corners, differences));
      area_below_.add(area);
    }
  }
  double area() const { return area_.value(); }
  Between value() const {
    return {area_.value(),       above_.value(),  below_.value(), area_above_.value(),
            area_below_.value(), greatest_above_, greatest_below_};
  }

 private:
  // Cut along the line on which the difference is zero.
  void add_both(std::span<const Point2> corners, std::span<const double> differences) {
    PartAbove above, below;
    for (std::size_t i = 0, j = 1; i < corners.size(); ++i, ++j) {
      if (j == corners.size()) j = 0;
      const double vi = snapped(differences[i]), vj = snapped(differences[j]);
      if (vi >= 0) above.add(corners[i], differences[i]);
      if (vi <= 0) below.add(corners[i], -differences[i]);
      if (vi * vj < 0) {
        const Point2 zero = crossing(corners[i], vi, corners[j], vj);
        above.add(zero, 0);
        below.add(zero, 0);
      }
    }
    above_.add(above.volume());
    area_above_.add(above.area());
    below_.add(below.volume());
    area_below_.add(below.area());
  }

  Sum area_, above_, below_, area_above_, area_below_;
  double greatest_above_ = 0, greatest_below_ = 0;
};

}  // namespace squaredig::geometry
