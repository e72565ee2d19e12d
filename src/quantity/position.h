// Positions on the site grid: Easting before Northing before Elevation, each its own type, so that
// no two can change places and a reduced level never passes for a depth. Metres in the job's grid.
//
// Laws: position.1  elevation minus elevation is a length; elevation plus elevation does not
// compile.
// Accuracy: one rounding per operation. Errors: none.
// Source: plane geometry, definition.
#pragma once

#include "quantity/length.h"

namespace squaredig {

class Easting : public Datum<Easting, Length> {
 public:
  static constexpr Easting metres(double m) { return make(m); }
  constexpr double in_metres() const { return value_; }
};

class Northing : public Datum<Northing, Length> {
 public:
  static constexpr Northing metres(double m) { return make(m); }
  constexpr double in_metres() const { return value_; }
};

// A height above the job's height datum, also called a reduced level.
class Elevation : public Datum<Elevation, Length> {
 public:
  static constexpr Elevation metres(double m) { return make(m); }
  constexpr double in_metres() const { return value_; }
};

struct GridPoint {
  Easting easting;
  Northing northing;
  friend constexpr bool operator==(const GridPoint&, const GridPoint&) = default;
};

struct GridPosition {
  GridPoint at;
  Elevation height;
  friend constexpr bool operator==(const GridPosition&, const GridPosition&) = default;
};

constexpr GridPoint grid_point(double easting_m, double northing_m) {
  return {Easting::metres(easting_m), Northing::metres(northing_m)};
}
constexpr GridPosition grid_position(double easting_m, double northing_m, double height_m) {
  return {grid_point(easting_m, northing_m), Elevation::metres(height_m)};
}

}  // namespace squaredig
