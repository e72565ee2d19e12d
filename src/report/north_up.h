// A plan with grid north up the page.
#pragma once

#include "report/tank_view.h"

namespace squaredig::report {

// Requires: at least one point.
inline TankView north_up(const std::vector<GridPoint>& points, const Box& box) {
  return TankView({points.front(), Bearing::degrees(90)}, points, box);
}

}  // namespace squaredig::report
