#include <algorithm>
#include <cmath>
#include <map>

#include "quantity/number_text.h"
#include "report/depth_ramp.h"
#include "report/pit_plan_internal.h"

namespace squaredig::report {
namespace {

constexpr Colour kGridLine{0.55, 0.55, 0.55};
constexpr double kBetweenFigures = 0.9;  // mm
constexpr double kBoldWidth = 0.87;      // mm of "8.88" for each point of its size
constexpr int kBlock = 4;                // cells along and across

// Finer steps of the ramp than the eye can tell apart.
constexpr int kSteps = 64;
constexpr int kPaperStep = -1;

// A cell dug at its centre shows the cut there on the colour of its depth; one that is dug in part,
// its centre not, shows its mean cut on paper.
int step_of(const dig::DigResult& dig, const dig::Cell& cell) {
  if (!cell.cut_at_centre) return kPaperStep;
  const double share = dig.deepest_cut > Length{} ? *cell.cut_at_centre / dig.deepest_cut : 0;
  return static_cast<int>(std::lround(kSteps * std::clamp(share, 0.0, 1.0)));
}

Colour colour_of(int step) {
  return step == kPaperStep ? kPaper : depth_colour(static_cast<double>(step) / kSteps);
}

bool touches(const Box& box, At p, double half) {
  return p.x + half > box.top_left.x && p.x - half < box.bottom_right.x &&
         p.y + half > box.top_left.y && p.y - half < box.bottom_right.y;
}

}  // namespace

double figure_points(const TankView& view, const dig::DigResult& dig) {
  return std::min(14.0, (view.mm(dig.grid.size) - kBetweenFigures) / kRegularWidth);
}

void draw_cells(Canvas& canvas, const dig::DigResult& dig, const TankView& view, const Box& box) {
  const double half = view.mm(dig.grid.size) / 2;
  std::map<int, std::vector<std::vector<At>>> squares;
  for (const auto& cell : dig.grid.cells) {
    const At c = view.at(cell.along, cell.across);
    if (!touches(box, c, half)) continue;
    squares[step_of(dig, cell)].push_back({{c.x - half, c.y - half},
                                           {c.x + half, c.y - half},
                                           {c.x + half, c.y + half},
                                           {c.x - half, c.y + half}});
  }
  canvas.begin_group({{"class", "cells"}});
  for (const auto& [step, areas] : squares)
    canvas.fill_each(areas, colour_of(step), {0.1, kGridLine});
  canvas.end_group();
}

void draw_figures(Canvas& canvas, const dig::DigResult& dig, const TankView& view, const Box& box,
                  const std::optional<Box>& words) {
  double points = figure_points(view, dig);
  if (points < kLeastFigure) return;
  const double bold_points =
      std::min(14.0, (view.mm(dig.grid.size) - kBetweenFigures) / kBoldWidth);
  const bool bold = bold_points >= 9;  // where it costs no legibility
  if (bold) points = bold_points;
  std::map<std::pair<int, int>, std::vector<const dig::Cell*>> blocks;
  for (const auto& cell : dig.grid.cells)
    if (touches(box, view.at(cell.along, cell.across), 0))
      blocks[{(cell.row - dig.grid.first_row) / kBlock,
              (cell.column - dig.grid.first_column) / kBlock}]
          .push_back(&cell);
  canvas.begin_group({{"class", "figures"}});
  for (const auto& [place, cells] : blocks) {
    canvas.begin_group({{"class", "block"}});
    for (const auto* cell : cells) {
      const At c = view.at(cell->along, cell->across);
      Lettering lettering{points, kInk, Anchor::Middle};
      if (bold && cell->cut_at_centre) lettering = lettering.bold();
      canvas.text({c.x, c.y + points * 0.128},
                  fixed(cell->cut_at_centre.value_or(cell->mean_cut).in_metres(), 2),
                  words && touches(*words, c, points * 0.18)
                      ? lettering
                      : lettering.on(colour_of(step_of(dig, *cell))));
    }
    canvas.end_group();
  }
  canvas.end_group();
}

}  // namespace squaredig::report
