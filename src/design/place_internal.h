// Where the corners stand: the ways [tank] may say it.
#pragma once

#include "design/tank.h"

namespace squaredig::design {

// Corners, A-B and findings filled; the rest is left to place_tank.
Tank placed_corners(const DesignInput& input);

}  // namespace squaredig::design
