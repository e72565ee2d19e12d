// The level net: runs between points of known and unknown height, adjusted together.
//
// Frame and units: heights on the job's datum. Weights by levelled length, or where a length is
//   missing by number of stands. A misclosure is measured less known.
// Laws: level_net.1 a run between two known points closes on both after adjustment; level_net.2 the
//   allowed misclosure is k sqrt(K).
// Accuracy: standard deviations from the stated one of a kilometre; without it from the residuals,
//   where there is redundancy; else none.
// Errors: Refusal where a run hangs on no known height.
// Source: least squares with weights 1 / K; misclosure classes k sqrt(K): OS guide v2.2, table 3.
#pragma once

#include "field/level_book.h"
#include "field/two_peg.h"

namespace squaredig::field {

// Known heights come from input.control. Findings and assumptions go to `head`.
LevelResult reduce_levels(const FieldInput& input, const Earth& earth, ResultHead& head);

}  // namespace squaredig::field
