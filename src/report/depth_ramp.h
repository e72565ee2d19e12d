// Depth as colour: even to the eye, the same in grey, readable without colour vision. The number
// stands in every cell all the same.
//
// Source: the end and middle colours of the cividis map, 0 (0, 32, 76), 0.47 (117, 117, 117),
//   1 (255, 233, 69); straight lines between them.
#pragma once

#include "report/canvas.h"

namespace squaredig::report {

// `share` from 0, the shallowest (light), to 1, the deepest (dark).
Colour depth_colour(double share);
// Black or white, whichever reads better on the colour.
Colour lettering_on(Colour ground);
double luminance(Colour colour);

}  // namespace squaredig::report
