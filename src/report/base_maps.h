// The base in plan: each point with what it departs, or with the bedding it leaves.
#pragma once

#include "base/base_result.h"
#include "report/tank_view.h"

namespace squaredig::report {

// Signed millimetres at each point, repair patches by number, the straightedge at its worst place,
// and where more points are wanted.
void draw_deviation_map(Canvas& canvas, const base::BaseResult& base, const Box& box);
// Millimetres of bedding at each point, and where the skin leaves its least or most.
void draw_bedding_map(Canvas& canvas, const base::BaseResult& base, const Box& box);
// The units in plan, the joints that open, and the widest. Requires: has_stack_map.
void draw_stack_map(Canvas& canvas, const base::BaseResult& base, const Box& box);
bool has_stack_map(const base::BaseResult& base);

}  // namespace squaredig::report
