// What to trim and what to make up, patch by patch.
//
// What: a patch is a connected part of the floor where the deviation is beyond a contour: the level
//   tolerance, or, where that leaves less than the least area a machine can work, the contour
//   nearer to the dig level that gives the least area; at the dig level itself it stops and says
//   so.
// Frame and units: site frame, metres; heights are deviations.
// Laws: repair.1 every point beyond the tolerance lies in one patch; repair.2 a patch's volume is
// the
//   deviation over its area, down or up to the dig level; repair.3 a greater least area never gives
//   more patches.
// Accuracy: exact on the surface for the contour; the contour to 1e-6 m.
// Source: definition.
#pragma once

#include "base/floor_internal.h"

namespace squaredig::base {

std::vector<RepairPatch> plan_repair(const BaseInput& input, const PlannedBase& planned,
                                     const Floor& floor, const DugSurface& dug);

}  // namespace squaredig::base
