// What the maps of the base share.
#pragma once

#include <string>

#include "base/base_result.h"
#include "report/tank_view.h"

namespace squaredig::report {

constexpr Colour kHigh{0.62, 0.08, 0.02};
constexpr Colour kLow{0.02, 0.2, 0.55};

std::string whole_mm(Length value);
// The tank's plan, with room for corner letters round it and a legend below.
TankView base_view(const base::BaseResult& base, const Box& box);
void draw_outlines(Canvas& canvas, const base::BaseResult& base, const TankView& view,
                   const Box& box);
// Left of the scale and the north arrow.
void draw_legend(Canvas& canvas, const Box& box, const std::string& words);

}  // namespace squaredig::report
