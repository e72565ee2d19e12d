// Depth as colour: even to the eye, the same order in grey, readable without colour vision, and
// light enough everywhere for black figures and a pencil mark. The number stands in every cell all
// the same.
//
// Laws: ramp.1  deeper is darker: lightness falls evenly with depth; ramp.2  black on any colour of
//   the ramp has a contrast of at least 4.5 to 1.
// Source: CIE 1976 L*a*b* under D65 and the sRGB transfer function (IEC 61966-2-1); contrast after
//   WCAG 2.1, 1.4.3. The end colours are our own: straw and slate blue.
#pragma once

#include "report/canvas.h"

namespace squaredig::report {

// `share` from 0, the shallowest (light), to 1, the deepest (dark).
Colour depth_colour(double share);
// Below and above what was planned: `share` from -1 (low, blue) over 0 (paper) to 1 (high, red).
Colour deviation_colour(double share);

}  // namespace squaredig::report
