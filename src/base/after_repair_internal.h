// A second survey, made after the repair, beside the first.
//
// Frame and units: grid; deviations from the dig level.
// Accuracy: exact; a point on a patch's outline is in it.
// Source: definition.
#pragma once

#include "base/check_base.h"

namespace squaredig::base {

// The second survey as the one to judge, with the toe of the first where it has none of its own.
BaseInput after_repair(const BaseInput& input);

// What was fixed and what was not, check by check and patch by patch.
BeforeRepair compared(BaseResult first, const BaseResult& second);

}  // namespace squaredig::base
