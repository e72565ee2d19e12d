// What to trim and what to make up, patch by patch.
//
// What: wherever the deviation is beyond the level tolerance there is a patch: the ground a machine
//   works to put the place right. The machine works squares along and square to A-B whose side is
//   that of a square of the least repair area; they cover the place, and what hangs together is one
//   patch. A place smaller than the least area even down to the dig level is left to hands, unless
//   a patch reaches it.
// Frame and units: site frame, metres; heights are deviations.
// Laws: repair.1 every point beyond the tolerance lies in one patch; repair.2 a patch's volume is
//   what its area holds of the deviation, down or up to the dig level; repair.3 a patch for the
//   machine is a union of squares of the least repair area.
// Accuracy: volumes exact on the surface; what is worked as in base/work_grid_internal.h.
// Source: definition.
#pragma once

#include "base/floor_internal.h"

namespace squaredig::base {

struct RepairAnswer {
  std::vector<RepairPatch> patches;
  std::vector<std::string> assumed;
};
RepairAnswer plan_repair(const BaseInput& input, const PlannedBase& planned, const Floor& floor,
                         const DugSurface& dug);

}  // namespace squaredig::base
