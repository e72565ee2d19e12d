// The pegs in plan, and a sketch of each corner with the distances that find it again.
#pragma once

#include "pegs/pegs_result.h"
#include "report/tank_view.h"

namespace squaredig::report {

// Tank, toe, crest, pegs, strings, pipes and shafts.
void draw_peg_plan(Canvas& canvas, const pegs::PegsResult& pegs, const Box& box);
// One corner: its two strings and pegs, each with its distance to tape.
void draw_recovery(Canvas& canvas, const pegs::PegsResult& pegs, std::size_t number,
                   const Box& box);

}  // namespace squaredig::report
