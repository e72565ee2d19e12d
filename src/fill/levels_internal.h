// The levels of the fill: planes parallel to the tank, from the dig level to the top of the
// capping.
#pragma once

#include "design/excavation.h"
#include "fill/fill_input.h"

namespace squaredig::fill {

struct LiftPlanes {
  geometry::Plane from;
  geometry::Plane to;
  Length above_underside_from;
  Length above_underside_to;
  bool special = false;
};

struct FillLevels {
  geometry::Plane underside;
  geometry::Plane tank_top;
  std::vector<LiftPlanes> lifts;
  std::vector<geometry::Plane> capping;  // bottom of the first, then the top of each
};

// Lifts of the given thickness from the underside, broken at the top of the special fill; the last
// one ends at the tank top.
FillLevels levels_of(const FillInput& input, const design::Excavation& pit);

}  // namespace squaredig::fill
