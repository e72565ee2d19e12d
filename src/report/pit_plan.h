// The plan of the pit: cells with their cut, toe, crest, tank, pegs and strings.
//
// Requires: a dig result with at least one cell.
// Source: symbols of our own: toe solid, crest dashed, tank outline heavy, string lines
// chain-dotted.
#pragma once

#include "dig/dig_result.h"
#include "pegs/pegs_result.h"
#include "report/tank_view.h"

namespace squaredig::report {

struct PitPlan {
  const dig::DigResult& dig;
  const pegs::PegsResult* pegs = nullptr;  // drawn where the job sets pegs out
};

// Draws the plan into the box and gives the view it used.
TankView draw_pit_plan(Canvas& canvas, const PitPlan& plan, const Box& box);

// The depth ramp with its classes.
void draw_depth_legend(Canvas& canvas, At top_left, const dig::DigResult& dig);

// A long or cross section with the ladder of levels.
void draw_section(Canvas& canvas, const dig::DigResult& dig, const dig::Section& section,
                  const Box& box);

}  // namespace squaredig::report
