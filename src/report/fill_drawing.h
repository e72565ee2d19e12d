// The side fill as a gauge: lift upon lift at corner A, each with the level to fill to.
#pragma once

#include "fill/fill_result.h"
#include "report/canvas.h"

namespace squaredig::report {

void draw_lifts(Canvas& canvas, const fill::FillResult& fill, const Box& box);

}  // namespace squaredig::report
