// The base in plan: each point with what it departs, or with the bedding it leaves.
#pragma once

#include "base/base_result.h"
#include "report/tank_view.h"

namespace squaredig::report {

// Signed millimetres at each point, repair patches, the straightedge at its worst place.
void draw_deviation_map(Canvas& canvas, const base::BaseResult& base, const Box& box);
// Millimetres of bedding at each point under the tank.
void draw_bedding_map(Canvas& canvas, const base::BaseResult& base, const Box& box);

}  // namespace squaredig::report
