// Where a layer was tested least.
#pragma once

#include <span>

#include "design/excavation.h"
#include "geometry/polygon.h"

namespace squaredig::fill {

// The largest circle that holds no test inside it, centred over the tank; where every test lies
// beside the tank, centred on the tank's outline. Requires: at least one test.
geometry::Circle largest_untested(const design::Excavation& pit,
                                  const std::vector<geometry::Point2>& tests);

// The point of the segment from `a` to `b` that lies furthest from the nearest test.
geometry::Circle furthest_on_segment(geometry::Point2 a, geometry::Point2 b,
                                     std::span<const geometry::Point2> tests);

}  // namespace squaredig::fill
