// The layers of the plan of the pit, from the ground up.
#pragma once

#include "report/pit_plan.h"

namespace squaredig::report {

constexpr Colour kSpoilColour{0.93, 0.9, 0.84};
constexpr Colour kBoundaryColour{0.12, 0.32, 0.18};
constexpr Colour kServiceColour{0.42, 0.05, 0.48};
inline Stroke boundary_stroke() { return {0.9, kBoundaryColour, {6, 1.2, 1.2, 1.2}}; }
inline Stroke service_stroke() { return {0.7, kServiceColour, {3, 1.4}}; }
inline Stroke influence_stroke() { return {0.45, kInk, {0.5, 1.2}}; }

// The strip beside the crest where neither spoil nor plant may stand.
void draw_spoil_setback(Canvas& canvas, const dig::DigResult& dig, const TankView& view);
// The cells, all of one colour as one shape: a pit of ten thousand is drawn as fast as one of a
// hundred. The figures, in blocks of cells: a page shows those in view.
void draw_cells(Canvas& canvas, const dig::DigResult& dig, const TankView& view, const Box& box);
// Figures over words leave these to be read: they have no ground of their own there.
void draw_figures(Canvas& canvas, const dig::DigResult& dig, const TankView& view, const Box& box,
                  const std::optional<Box>& words);
// Boundaries, services and influence line; then their names, levels and clearances.
void draw_site(Canvas& canvas, const dig::DigResult& dig, const TankView& view);
void draw_site_names(Canvas& canvas, const dig::DigResult& dig, const TankView& view,
                     const Box& box);
// A numbered mark at each clash, the height of each vertical face, the deepest over-dig.
void draw_warnings(Canvas& canvas, const dig::DigResult& dig, const TankView& view, const Box& box);

}  // namespace squaredig::report
