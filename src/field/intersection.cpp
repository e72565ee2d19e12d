#include "field/intersection.h"

#include <cmath>

namespace squaredig::field {

std::optional<GridPoint> intersection(GridPoint a, Bearing from_a, GridPoint b, Bearing from_b) {
  constexpr double kLeastCrossing = 1e-3;
  const double crossing = sine(from_a.from_north() - from_b.from_north());
  if (std::abs(crossing) < kLeastCrossing) return std::nullopt;
  const Length east = b.easting - a.easting;
  const Length north = b.northing - a.northing;
  const Length along =
      (east * cosine(from_b.from_north()) - north * sine(from_b.from_north())) / crossing;
  return ahead(a, from_a, along);
}

}  // namespace squaredig::field
