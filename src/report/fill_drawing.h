// The fill drawn: a gauge of lifts and layers at corner A, each with the level to fill to, and each
// layer as built in plan.
#pragma once

#include "fill/fill_result.h"
#include "report/canvas.h"

namespace squaredig::report {

void draw_lifts(Canvas& canvas, const fill::FillResult& fill, const Box& box);

// The thickness at each surveyed point, in millimetres.
void draw_layer(Canvas& canvas, const fill::FillResult& fill, const fill::LayerBuilt& layer,
                const Box& box);

}  // namespace squaredig::report
