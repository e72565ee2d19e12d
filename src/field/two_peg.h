// The two-peg test: from two set-ups to two staffs, how far a level's line of sight is off level.
//
// What: the same four readings serve the test from the middle and from one end, and reciprocal
//   levelling across a river.
// Frame and units: metres; the slope is what the level reads too high per metre of sight.
// Requires: two set-ups with the same two staffs each.
// Laws: two_peg.1 a level without error gives slope zero and the same difference from both set-ups;
//   two_peg.2 the correct readings of both set-ups give the same difference.
// Accuracy: one rounding.
// Errors: Refusal for anything but two by two readings, and for set-ups whose sights differ alike
//   in length.
// Source: readings as level line + slope x distance + curvature less refraction; worked examples in
//   tests/published/field_levels_test.cpp.
#pragma once

#include <span>

#include "field/field_input.h"
#include "field/field_result.h"
#include "field/ray.h"

namespace squaredig::field {

// Without an earth, curvature and refraction are left in the slope.
Collimation two_peg_test(std::span<const TwoPegReading> readings,
                         const std::optional<Earth>& earth);

}  // namespace squaredig::field
