// Volumes of every fill, column by column.
#pragma once

#include "fill/columns_internal.h"
#include "fill/fill.h"
#include "fill/levels_internal.h"

namespace squaredig::fill {

// Fills everything of the result that is a volume in the hole, and the closure.
void add_quantities(const FillInput& input, const FillContext& context, FillResult& result);

// The volume of each pipe stub within each lift, from the tank's face to where the pipe leaves the
// hole: taken from the side fill and told apart.
std::vector<Volume> pipes_by_lift(const FillContext& context, const FillLevels& levels,
                                  std::vector<Finding>& findings);

}  // namespace squaredig::fill
