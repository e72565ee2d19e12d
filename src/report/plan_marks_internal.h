// Marks that several plans share.
#pragma once

#include "pegs/pegs_result.h"
#include "report/tank_view.h"

namespace squaredig::report {

std::vector<At> on_page(const TankView& view, const std::vector<GridPosition>& ring);
std::vector<At> on_page(const TankView& view, const std::vector<GridPoint>& ring);
// The line with a pale edge, so that it is seen on dark ground and light.
void cased_polygon(Canvas& canvas, const std::vector<At>& corners, const Stroke& stroke);
// A corner's letter in a disc.
constexpr double kLetterDisc = 4;
void draw_corner_letter(Canvas& canvas, std::size_t corner, At disc);
// Whether a disc of this radius lies wholly in the box.
bool holds(const Box& box, At p, double radius);
At middle_of(const std::vector<At>& points);
// "A", ... "Z", "AA", ...
std::string corner_letter(std::size_t i);
void draw_strings(Canvas& canvas, const TankView& view, const pegs::PegsResult& pegs);
// Those that lie in the box.
void draw_pegs(Canvas& canvas, const TankView& view, const pegs::PegsResult& pegs, const Box& box);

}  // namespace squaredig::report
