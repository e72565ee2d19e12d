// What of the floor the survey reached.
//
// What: a corner, or a place on a side, is seen where a point lies within the coverage limit of it:
//   then no empty circle larger than the limit stands there. Beside that, the parts of the floor
//   that lie farther than the spacing from every point.
// Frame and units: grid; along a side from its first corner.
// Accuracy: exact up to rounding.
// Source: definition.
#pragma once

#include "base/floor_internal.h"

namespace squaredig::base {

SurveyReach reach_of(const PlannedBase& planned, const Floor& floor, Length spacing, Length limit);
std::string reach_words(const SurveyReach& reach, Length spacing);

}  // namespace squaredig::base
