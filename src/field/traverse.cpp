#include "field/traverse.h"

#include <cmath>

namespace squaredig::field {

Length Traverse::misclosure() const {
  return Length::metres(std::hypot(misclosure_east.in_metres(), misclosure_north.in_metres()));
}

Traverse closed_traverse(std::span<const TraverseLeg> legs) {
  Traverse t;
  for (const TraverseLeg& leg : legs) {
    const Length east = leg.length * sine(leg.bearing.from_north());
    const Length north = leg.length * cosine(leg.bearing.from_north());
    t.legs.push_back({east, north, east, north});
    t.length += leg.length;
    t.misclosure_east += east;
    t.misclosure_north += north;
  }
  for (std::size_t i = 0; i < legs.size(); ++i) {
    const double share = legs[i].length / t.length;
    t.legs[i].adjusted_east -= t.misclosure_east * share;
    t.legs[i].adjusted_north -= t.misclosure_north * share;
  }
  return t;
}

}  // namespace squaredig::field
