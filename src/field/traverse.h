// A closed traverse by differences: how it closes, and the misclosure shared out by length.
//
// Frame and units: the grid; a misclosure is the sum of the differences.
// Laws: traverse.1 adjusted differences sum to zero.
// Accuracy: one rounding of each difference. Errors: none.
// Source: latitudes and departures, compass (Bowditch) rule: worked examples in
//   tests/published/field_coordinates_test.cpp.
#pragma once

#include <span>
#include <vector>

#include "quantity/angle.h"

namespace squaredig::field {

struct TraverseLeg {
  Bearing bearing;
  Length length;
};

struct Traverse {
  struct Leg {
    Length east, north;
    Length adjusted_east, adjusted_north;
  };
  std::vector<Leg> legs;
  Length length;
  Length misclosure_east, misclosure_north;
  Length misclosure() const;
};

Traverse closed_traverse(std::span<const TraverseLeg> legs);

}  // namespace squaredig::field
