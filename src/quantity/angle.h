// Angle: a turn of any size, positive clockwise where it is a turn of direction. Bearing: a
// direction on the grid, clockwise from grid north, kept in [0, 360).
//
// Accuracy: one rounding per operation; quarter turns have exact sine and cosine.
// Errors: none.
// Source: degree, grad (gon) and radian by definition; 1 gon = 0.9 degree.
#pragma once

#include <cmath>
#include <numbers>

#include "quantity/position.h"

namespace squaredig {

class Angle : public Measure<Angle> {
 public:
  static constexpr Angle degrees(double d) { return make(d); }
  static constexpr Angle gons(double g) { return make(g * 0.9); }
  static constexpr Angle seconds(double s) { return make(s / 3600); }
  static constexpr Angle radians(double r) { return make(r * (180 / std::numbers::pi)); }
  constexpr double in_degrees() const { return value_; }
  constexpr double in_seconds() const { return value_ * 3600; }
  constexpr double in_radians() const { return value_ * (std::numbers::pi / 180); }
};

// Sine and cosine of an angle given in degrees, exact at multiples of 90.
double sine(Angle a);
double cosine(Angle a);

class Bearing {
 public:
  constexpr Bearing() = default;
  static Bearing degrees(double d);
  // The bearing of the line from one point to another. Requires: two different points.
  static Bearing of_line(GridPoint from, GridPoint to);
  constexpr double in_degrees() const { return degrees_; }
  Angle from_north() const { return Angle::degrees(degrees_); }
  friend Bearing operator+(Bearing b, Angle turn) {
    return degrees(b.degrees_ + turn.in_degrees());
  }
  friend Bearing operator-(Bearing b, Angle turn) {
    return degrees(b.degrees_ - turn.in_degrees());
  }
  // The clockwise turn from `from` to `to`, in [0, 360).
  static Angle clockwise(Bearing from, Bearing to);
  friend constexpr bool operator==(Bearing, Bearing) = default;

 private:
  double degrees_ = 0;
};

Length distance(GridPoint a, GridPoint b);
// The point at a distance from `from` along a bearing, and then to the right of that bearing.
GridPoint ahead(GridPoint from, Bearing along, Length forward, Length right = {});

}  // namespace squaredig
