// Digging given cuts out of a survey, for the pit and for zones round it.
#pragma once

#include "design/excavation.h"

namespace squaredig::design {

// Fills region, ground, dug and crest for `pit.pit`.
void dig_in(Excavation& pit, ground::Survey& survey, const DesignInput& input);

}  // namespace squaredig::design
