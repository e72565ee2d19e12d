// The second answer: the removed volume again, by another road.
//
// What: the flux of x through the closed solid between the envelope, the surface inside the rings
//   and the vertical sides. The envelope is integrated facet by facet and the surface triangle by
//   triangle, each inside the rings; the pieces of the first answer take no part.
// Frame and units: site frame, cubic and square metres.
// Laws: closure.1  the flux equals the removed volume; closure.2  the outward vector areas of a
//   closed solid sum to zero.
// Accuracy: below 1e-9 of the volume on rings of whole metres to kilometres; a boundary that is off
//   the line of zero depth shows here in the first order, in the first answer in the second.
// Errors: none. Source: the divergence theorem.
#pragma once

#include "geometry/cut.h"

namespace squaredig::geometry {

struct Closure {
  double volume = 0;
  // Sum of the outward vector areas, in plan; zero for a closed solid.
  double open_x = 0;
  double open_y = 0;
};

Closure flux_of(const Surface& surface, const Removed& removed);

}  // namespace squaredig::geometry
