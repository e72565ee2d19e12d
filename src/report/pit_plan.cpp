#include "report/pit_plan.h"

#include <algorithm>
#include <cmath>

#include "quantity/number_text.h"
#include "report/depth_ramp.h"
#include "report/pit_plan_internal.h"
#include "report/plan_marks_internal.h"
#include "report/sheet.h"

namespace squaredig::report {
namespace {

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

// Gives where they stand.
std::vector<At> draw_corner_letters(Canvas& canvas, const PitPlan& plan, const TankView& view,
                                    const Box& box) {
  const auto tank = on_page(view, plan.dig.tank);
  const RoomForLetters room(plan.dig.grid, view);
  std::vector<At> discs;
  for (std::size_t i = 0; i < tank.size(); ++i) {
    const At disc = room.beyond(tank[i], middle_of(tank));
    if (!holds(box, disc, kLetterDisc)) continue;
    draw_corner_letter(canvas, i, disc);
    discs.push_back(disc);
  }
  return discs;
}

// The middle of each column and row, as it is taped along the string and square to it.
void draw_rulers(Canvas& canvas, const PitPlan& plan, const TankView& view, const Box& box,
                 const std::vector<At>& letters) {
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
  const auto taken = [&](At label) {
    for (const At p : letters)
      if (std::abs(p.x - label.x) < 9 && std::abs(p.y - label.y) < 6) return true;
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
    if (!holds(box, c, 0)) continue;
    if (!column_done[column] && cell.column % every == 0 && !taken({c.x, top - 2}))
      canvas.text({c.x, top - 1.3}, fixed(cell.along.in_metres(), 2), lettering);
    if (!row_done[row] && cell.row % every_row == 0 && !taken({left - 5, c.y}))
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
  for (const auto& ring : plan.dig.surroundings.influence_line)
    for (const auto& p : ring) points.push_back(p.at);
  if (plan.pegs)
    for (const auto& peg : plan.pegs->reference) points.push_back(peg.at);
  return points;
}

}  // namespace

TankFrame frame_of(const dig::DigResult& dig) { return {dig.tank.at(0).at, dig.grid.bearing}; }

TankView whole_pit(const PitPlan& plan, const Box& box) {
  constexpr double kNames = 5.5;  // beyond the outermost pegs
  return {frame_of(plan.dig), everything(plan), box.inside(kNames)};
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

void draw_pit_plan(Canvas& canvas, const PitPlan& plan, const TankView& view, const Box& box) {
  canvas.push_clip(box.top_left, box.bottom_right);
  draw_spoil_setback(canvas, plan.dig, view);
  draw_cells(canvas, plan.dig, view, box);
  draw_lines(canvas, plan, view);
  draw_site(canvas, plan.dig, view);
  if (plan.pegs) draw_strings(canvas, view, *plan.pegs);
  const auto words = draw_overprint(canvas, plan.dig.head, box);
  draw_figures(canvas, plan.dig, view, box, words);
  const auto letters = draw_corner_letters(canvas, plan, view, box);
  draw_rulers(canvas, plan, view, box, letters);
  draw_site_names(canvas, plan.dig, view, box);
  draw_warnings(canvas, plan.dig, view, box);
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

std::vector<Symbol> symbols_of(const dig::DigResult& dig) {
  const auto& around = dig.surroundings;
  std::vector<Symbol> symbols{{"toe", Stroke{0.5}},
                              {"crest", Stroke{0.6, kInk, {2.6, 1.5}}},
                              {"tank", Stroke{1}},
                              {"string", Stroke{0.3, kStringColour, {5, 1, 0.8, 1}}}};
  if (std::any_of(dig.grid.cells.begin(), dig.grid.cells.end(),
                  [](const dig::Cell& cell) { return !cell.cut_at_centre; }))
    symbols.push_back({"cell dug in part, its mean cut", std::nullopt, true});
  if (!around.keep_out.empty()) symbols.push_back({"boundary", boundary_stroke(), true});
  if (!around.services.empty()) symbols.push_back({"service", service_stroke(), true});
  if (!around.influence_line.empty())
    symbols.push_back({"influence line", influence_stroke(), true});
  if (around.spoil_setback)
    symbols.push_back({"no spoil, no plant", std::nullopt, true, kSpoilColour});
  return symbols;
}

void draw_symbol(Canvas& canvas, At at, const Symbol& symbol) {
  const double right = at.x + kSymbolWidth;
  if (symbol.line)
    canvas.line({{at.x, at.y - 1.3}, {right, at.y - 1.3}}, *symbol.line);
  else
    canvas.fill({{at.x, at.y - 2.8}, {right, at.y - 2.8}, {right, at.y + 0.2}, {at.x, at.y + 0.2}},
                symbol.area, {0.25, kQuiet});
}

void draw_symbols(Canvas& canvas, At at, double second_line, const dig::DigResult& dig) {
  constexpr double kStep = 5, kAir = 4.5;
  At next = at;
  bool second = false;
  for (const auto& symbol : symbols_of(dig)) {
    if (symbol.second && !second) next = {second_line, at.y + kStep};
    second = symbol.second;
    draw_symbol(canvas, next, symbol);
    canvas.text({next.x + kSymbolWidth + 1.5, next.y}, symbol.name, {9});
    next.x += kSymbolWidth + 1.5 + canvas.text_width(symbol.name, {9}) + kAir;
  }
}

}  // namespace squaredig::report
