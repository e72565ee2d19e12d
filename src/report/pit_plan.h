// The plan of the pit: cells with their cut, toe, crest, tank, pegs and strings, and rulers that
// say where to tape.
//
// Frame and units: the tank's frame, A top left, metres.
// Requires: a dig result with a tank.
// Source: symbols of our own: toe solid, crest dashed, tank outline heavy, string lines
// chain-dotted, boundary dash and dot, service dashed, influence line dotted, a strip of sand where
// no spoil goes, a numbered triangle at each clash.
#pragma once

#include "dig/dig_result.h"
#include "pegs/pegs_result.h"
#include "report/tank_view.h"

namespace squaredig::report {

struct PitPlan {
  const dig::DigResult& dig;
  const pegs::PegsResult* pegs = nullptr;  // drawn where the job sets pegs out
};

constexpr Colour kStringColour{0.7, 0.08, 0.05};
constexpr double kLeastFigure = 7;       // points: smaller figures are left out
constexpr double kRegularWidth = 0.786;  // mm of "8.88" for each point of its size

TankFrame frame_of(const dig::DigResult& dig);

// What the plan covers in a view.
Box reach_on(const PitPlan& plan, const TankView& view);
// A view of everything on the plan, with room round it for rulers and names of pegs.
TankView whole_pit(const PitPlan& plan, const Box& box);
// The size of the figures in the cells at this scale.
double figure_points(const TankView& view, const dig::DigResult& dig);

// Draws what of the plan lies in the box.
void draw_pit_plan(Canvas& canvas, const PitPlan& plan, const TankView& view, const Box& box);

// What the plan draws and what it is called: a line, or an area.
struct Symbol {
  const char* name = "";
  std::optional<Stroke> line;  // nothing: an area
  bool second = false;         // stands in the second line
  Colour area = kPaper;
};
std::vector<Symbol> symbols_of(const dig::DigResult& dig);
constexpr double kSymbolWidth = 10;  // mm
// A sample of it; `at` is the left end of the baseline of what is written beside it.
void draw_symbol(Canvas& canvas, At at, const Symbol& symbol);

// The depth ramp, 94 mm wide, and all symbols with their names in two lines; `at` is the left end
// of the first baseline, and the second one begins at `second_line`.
void draw_depth_ramp(Canvas& canvas, At at, const dig::DigResult& dig);
void draw_symbols(Canvas& canvas, At at, double second_line, const dig::DigResult& dig);

// Long and cross section side by side on one scale of levels, with the ladder of levels.
void draw_sections(Canvas& canvas, const dig::DigResult& dig, const Box& box);

}  // namespace squaredig::report
