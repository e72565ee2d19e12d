#include "report/pit_plan.h"

#include <algorithm>
#include <cmath>

#include "quantity/number_text.h"
#include "report/depth_ramp.h"
#include "report/plan_marks_internal.h"
#include "report/sheet.h"

namespace squaredig::report {
namespace {

constexpr Colour kGridLine{0.55, 0.55, 0.55};
constexpr double kBetweenFigures = 0.9;  // mm
constexpr double kBoldWidth = 0.87;      // mm of "8.88" for each point of its size

double share_of(const dig::DigResult& dig, Length cut) {
  return dig.deepest_cut > Length{} ? cut / dig.deepest_cut : 0;
}

bool touches(const Box& box, At p, double half) {
  return p.x + half > box.top_left.x && p.x - half < box.bottom_right.x &&
         p.y + half > box.top_left.y && p.y - half < box.bottom_right.y;
}

// A cell dug at its centre shows the cut there on the colour of its depth; one that is dug in part,
// its centre not, shows its mean cut on paper.
Colour ground_of(const dig::DigResult& dig, const dig::Cell& cell) {
  return cell.cut_at_centre ? depth_colour(share_of(dig, *cell.cut_at_centre)) : kPaper;
}

void draw_cells(Canvas& canvas, const PitPlan& plan, const TankView& view, const Box& box) {
  const auto& dig = plan.dig;
  const double half = view.mm(dig.grid.size) / 2;
  for (std::size_t i = 0; i < dig.grid.cells.size(); ++i) {
    const auto& cell = dig.grid.cells[i];
    const At c = view.at(cell.along, cell.across);
    if (!touches(box, c, half)) continue;
    const std::vector<At> square{{c.x - half, c.y - half},
                                 {c.x + half, c.y - half},
                                 {c.x + half, c.y + half},
                                 {c.x - half, c.y + half}};
    canvas.begin_group({{"class", "cell"}, {"data-i", std::to_string(i)}});
    canvas.fill(square, ground_of(dig, cell), {0.1, kGridLine});
    canvas.end_group();
  }
}

void draw_figures(Canvas& canvas, const PitPlan& plan, const TankView& view, const Box& box) {
  double points = figure_points(view, plan.dig);
  if (points < kLeastFigure) return;
  const double bold_points =
      std::min(14.0, (view.mm(plan.dig.grid.size) - kBetweenFigures) / kBoldWidth);
  const bool bold = bold_points >= 9;  // where it costs no legibility
  if (bold) points = bold_points;
  canvas.begin_group({{"class", "figures"}});
  std::optional<int> row;  // a group for each row: a page shows those in view
  for (const auto& cell : plan.dig.grid.cells) {
    const At c = view.at(cell.along, cell.across);
    if (!touches(box, c, 0)) continue;
    if (row != cell.row) {
      if (row) canvas.end_group();
      canvas.begin_group({{"data-row", std::to_string(cell.row)}});
      row = cell.row;
    }
    const Length cut = cell.cut_at_centre.value_or(cell.mean_cut);
    Lettering lettering{points, kInk, Anchor::Middle};
    if (bold && cell.cut_at_centre) lettering = lettering.bold();
    canvas.text({c.x, c.y + points * 0.128}, fixed(cut.in_metres(), 2),
                lettering.on(ground_of(plan.dig, cell)));
  }
  if (row) canvas.end_group();
  canvas.end_group();
}

void draw_lines(Canvas& canvas, const PitPlan& plan, const TankView& view) {
  canvas.begin_group({{"class", "crest"}});
  for (const auto& ring : plan.dig.crest)
    cased_polygon(canvas, on_page(view, ring), {0.6, kInk, {2.6, 1.5}});
  canvas.end_group();
  canvas.begin_group({{"class", "toe"}});
  cased_polygon(canvas, on_page(view, plan.dig.toe), {0.5});
  canvas.end_group();
  canvas.begin_group({{"class", "tank"}});
  cased_polygon(canvas, on_page(view, plan.dig.tank), {1});
  canvas.end_group();
}

// Where the letters stand: outward from the tank until no cell is covered.
class RoomForLetters {
 public:
  RoomForLetters(const dig::CellGrid& grid, const TankView& view) : grid_(grid), view_(view) {
    taken_.resize(static_cast<std::size_t>(grid.columns) * static_cast<std::size_t>(grid.rows));
    for (const auto& cell : grid.cells)
      taken_[index(cell.column - grid.first_column, cell.row - grid.first_row)] = true;
  }
  At beyond(At corner, At middle) const {
    constexpr double kReach = 70, kDisc = kLetterDisc + 1;
    const double dx = corner.x - middle.x, dy = corner.y - middle.y;
    // along the bisector of a square corner, so that neighbours do not meet
    const At step{dx < 0 ? -0.7071 : 0.7071, dy < 0 ? -0.7071 : 0.7071};
    for (double d = 6; d < kReach; d += 1) {
      const At p{corner.x + d * step.x, corner.y + d * step.y};
      if (free(p, kDisc)) return p;
    }
    return corner;
  }

 private:
  std::size_t index(int column, int row) const {
    return static_cast<std::size_t>(row) * static_cast<std::size_t>(grid_.columns) +
           static_cast<std::size_t>(column);
  }
  bool free(At p, double radius) const {
    const At outer = view_(grid_.origin);
    const double size = view_.mm(grid_.size);
    const auto cells = [&](double from, double edge) {
      return static_cast<int>(std::floor((from - edge) / size));
    };
    const int last_column = cells(p.x + radius, outer.x), last_row = cells(p.y + radius, outer.y);
    for (int row = std::max(0, cells(p.y - radius, outer.y));
         row <= std::min(last_row, grid_.rows - 1); ++row)
      for (int column = std::max(0, cells(p.x - radius, outer.x));
           column <= std::min(last_column, grid_.columns - 1); ++column)
        if (taken_[index(column, row)]) return false;
    return true;
  }
  const dig::CellGrid& grid_;
  const TankView& view_;
  std::vector<bool> taken_;
};

void draw_corner_letters(Canvas& canvas, const PitPlan& plan, const TankView& view,
                         const Box& box) {
  const auto tank = on_page(view, plan.dig.tank);
  const RoomForLetters room(plan.dig.grid, view);
  for (std::size_t i = 0; i < tank.size(); ++i) {
    const At disc = room.beyond(tank[i], middle_of(tank));
    if (holds(box, disc, kLetterDisc)) draw_corner_letter(canvas, i, disc);
  }
}

// The middle of each column and row, as it is taped along the string and square to it.
void draw_rulers(Canvas& canvas, const PitPlan& plan, const TankView& view, const Box& box) {
  const auto& grid = plan.dig.grid;
  const Lettering lettering{8, kQuiet, Anchor::Middle};
  const double size = view.mm(grid.size);
  const int every = std::max(1, static_cast<int>(std::ceil(9.2 / size)));
  const int every_row = std::max(1, static_cast<int>(std::ceil(4.0 / size)));
  std::vector<bool> column_done(static_cast<std::size_t>(grid.columns));
  std::vector<bool> row_done(static_cast<std::size_t>(grid.rows));
  const At outer = view(grid.origin);  // of the first column and row
  const double top = std::max(outer.y, box.top_left.y + 5),
               left = std::max(outer.x, box.top_left.x + 11);
  const auto peg_near = [&](At label) {
    if (!plan.pegs) return false;
    return std::any_of(plan.pegs->reference.begin(), plan.pegs->reference.end(),
                       [&](const auto& peg) {
                         const At at = view(peg.at);
                         return std::abs(at.x - label.x) < 7 && std::abs(at.y - label.y) < 3.5;
                       });
  };
  canvas.begin_group({{"class", "rulers"}});
  for (const auto& cell : grid.cells) {
    const auto column = static_cast<std::size_t>(cell.column - grid.first_column);
    const auto row = static_cast<std::size_t>(cell.row - grid.first_row);
    const At c = view.at(cell.along, cell.across);
    if (!touches(box, c, 0)) continue;
    if (!column_done[column] && cell.column % every == 0 && !peg_near({c.x, top - 2}))
      canvas.text({c.x, top - 1.3}, fixed(cell.along.in_metres(), 2), lettering);
    if (!row_done[row] && cell.row % every_row == 0 && !peg_near({left - 5, c.y}))
      canvas.text({left - 1.2, c.y + 1}, fixed(cell.across.in_metres(), 2),
                  lettering.anchored(Anchor::Right));
    column_done[column] = row_done[row] = true;
  }
  canvas.end_group();
}

std::vector<GridPoint> everything(const PitPlan& plan) {
  std::vector<GridPoint> points;
  for (const auto& ring : plan.dig.crest)
    for (const auto& p : ring) points.push_back(p.at);
  for (const auto& p : plan.dig.toe) points.push_back(p.at);
  if (plan.pegs)
    for (const auto& peg : plan.pegs->reference) points.push_back(peg.at);
  return points;
}

}  // namespace

TankFrame frame_of(const dig::DigResult& dig) { return {dig.tank.at(0).at, dig.grid.bearing}; }

TankView whole_pit(const PitPlan& plan, const Box& box) {
  constexpr double kNames = 5.5;  // beyond the outermost pegs
  return TankView(frame_of(plan.dig), everything(plan), box.inside(kNames));
}

Box reach_on(const PitPlan& plan, const TankView& view) {
  const At outer = view(plan.dig.grid.origin);
  const double size = view.mm(plan.dig.grid.size);
  Box reach{outer, {outer.x + size * plan.dig.grid.columns, outer.y + size * plan.dig.grid.rows}};
  for (const GridPoint p : everything(plan)) {
    const At at = view(p);
    reach.top_left = {std::min(reach.top_left.x, at.x), std::min(reach.top_left.y, at.y)};
    reach.bottom_right = {std::max(reach.bottom_right.x, at.x),
                          std::max(reach.bottom_right.y, at.y)};
  }
  return reach;
}

double figure_points(const TankView& view, const dig::DigResult& dig) {
  return std::min(14.0, (view.mm(dig.grid.size) - kBetweenFigures) / kRegularWidth);
}

void draw_pit_plan(Canvas& canvas, const PitPlan& plan, const TankView& view, const Box& box) {
  canvas.push_clip(box.top_left, box.bottom_right);
  canvas.begin_group({{"class", "cells"}});
  draw_cells(canvas, plan, view, box);
  canvas.end_group();
  draw_lines(canvas, plan, view);
  if (plan.pegs) draw_strings(canvas, view, *plan.pegs);
  draw_overprint(canvas, plan.dig.head, box);
  draw_figures(canvas, plan, view, box);
  draw_corner_letters(canvas, plan, view, box);
  draw_rulers(canvas, plan, view, box);
  canvas.pop_clip();
  if (plan.pegs) draw_pegs(canvas, view, *plan.pegs, box);  // names may stand over the edge
}

void draw_depth_ramp(Canvas& canvas, At at, const dig::DigResult& dig) {
  constexpr double kFrom = 9, kLength = 84;
  constexpr int kSteps = 42;
  const Lettering plain{9};
  canvas.text(at, "cut", plain.bold());
  for (int i = 0; i < kSteps; ++i) {
    const double from = at.x + kFrom + kLength * i / kSteps, to = from + kLength / kSteps + 0.05;
    canvas.fill({{from, at.y - 4.2}, {to, at.y - 4.2}, {to, at.y + 1.3}, {from, at.y + 1.3}},
                depth_colour(i / (kSteps - 1.0)));
  }
  canvas.text({at.x + kFrom + 1, at.y}, "0", plain.bold());
  canvas.text({at.x + kFrom + kLength - 1, at.y},
              "deepest " + fixed(dig.deepest_cut.in_metres(), 2),
              plain.bold().anchored(Anchor::Right));
}

void draw_symbols(Canvas& canvas, At at) {
  double x = at.x;
  const auto sample = [&](const char* name, const Stroke& stroke, double room) {
    canvas.line({{x, at.y - 1.3}, {x + 10, at.y - 1.3}}, stroke);
    canvas.text({x + 11.5, at.y}, name, {9});
    x += room;
  };
  sample("toe", {0.5}, 22);
  sample("crest", {0.6, kInk, {2.6, 1.5}}, 26);
  sample("tank", {1}, 24);
  sample("string", {0.3, kStringColour, {5, 1, 0.8, 1}}, 28);
}

}  // namespace squaredig::report
