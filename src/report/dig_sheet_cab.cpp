// The plan for the cab in windows, and the list of cells.
#include <algorithm>
#include <array>
#include <cmath>

#include "report/dig_sheet_internal.h"
#include "report/dig_words.h"

namespace squaredig::report {
namespace {

constexpr double kCabFigure = 9;                    // points, the least in the cab
constexpr double kColumnRuler = 6, kRowRuler = 13;  // mm

Box cab_box(const Box& page) {
  return {page.top_left, {page.bottom_right.x, page.bottom_right.y - 7.5 - kUnderStrip}};
}

int shares(int total, int most) { return (total + most - 1) / most; }

constexpr double kListStep = 4.7;
constexpr double kListWidth = 92;
constexpr double kListHead = 19;

TankView draw_window(Canvas& canvas, const PitPlan& plan, const Windows& windows, int n,
                     const Box& box) {
  const auto& grid = plan.dig.grid;
  const int column = n % windows.across * windows.columns, row = n / windows.across * windows.rows;
  const At corner{box.top_left.x + kRowRuler, box.top_left.y + kColumnRuler};
  const double scale = windows.cell / grid.size.in_metres();
  const At outer = TankView(frame_of(plan.dig), scale, {}, {}, {})(grid.origin);
  const TankView view(
      frame_of(plan.dig), scale, {}, {},
      {corner.x - outer.x - column * windows.cell, corner.y - outer.y - row * windows.cell});
  const At end{corner.x + std::min(windows.columns, grid.columns - column) * windows.cell,
               corner.y + std::min(windows.rows, grid.rows - row) * windows.cell};
  draw_pit_plan(canvas, plan, view, {box.top_left, end});
  canvas.polygon({corner, {end.x, corner.y}, end, {corner.x, end.y}}, {0.4});
  return view;
}

void draw_list_row(Canvas& canvas, At at, const std::vector<std::string>& cells,
                   Lettering lettering) {
  constexpr std::array kRights{17.0, 36.0, 49.0, 60.0, 77.0, 92.0};
  lettering.anchor = Anchor::Right;
  for (std::size_t i = 0; i < cells.size(); ++i)
    canvas.text({at.x + kRights[i], at.y}, cells[i], lettering);
}

}  // namespace

void draw_strip(Canvas& canvas, const dig::DigResult& dig, const TankView& view, At left,
                double right, const std::string& words) {
  draw_depth_ramp(canvas, left, dig);
  draw_symbols(canvas, {left.x + 98, left.y}, left.x, dig);
  draw_north(canvas, {right - 6, left.y + 0.5}, view.north());
  canvas.text({right - 18, left.y}, words, Lettering{9, kInk, Anchor::Right}.bold());
}

Windows windows_for(const PitPlan& plan, const Box& page) {
  const Box box = cab_box(page);
  if (figure_points(whole_pit(plan, box), plan.dig) >= kCabFigure) return {};
  const auto& grid = plan.dig.grid;
  const double width = box.width() - kRowRuler, height = box.height() - kColumnRuler;
  const double least = kCabFigure * kRegularWidth + 1;
  Windows windows;
  windows.across = shares(grid.columns, static_cast<int>(width / least));
  windows.down = shares(grid.rows, static_cast<int>(height / least));
  // even shares, so that the last window is no sliver, and as large as the page allows
  windows.columns = shares(grid.columns, windows.across);
  windows.rows = shares(grid.rows, windows.down);
  windows.cell = std::min({width / windows.columns, height / windows.rows, 2 * least});
  return windows;
}

void draw_cab(Canvas& canvas, const PitPlan& plan, const SheetHead& head, const Windows& windows,
              int n, int page, int pages) {
  const Box frame = draw_frame(canvas, head, plan.dig.head, page, pages);
  const Box box = cab_box(frame);
  const At strip{frame.top_left.x, frame.bottom_right.y - kUnderStrip + 1};
  if (windows.columns == 0) {
    const TankView view = whole_pit(plan, box);
    draw_pit_plan(canvas, plan, view, box);
    return draw_strip(canvas, plan.dig, view, strip, frame.bottom_right.x,
                      "plan " + view.scale_text());
  }
  const TankView view = draw_window(canvas, plan, windows, n, box);
  draw_strip(canvas, plan.dig, view, strip, frame.bottom_right.x,
             "plan, window " + std::to_string(n + 1) + " of " + std::to_string(windows.count()));
}

std::vector<const dig::Cell*> listed(const dig::DigResult& dig) {
  std::vector<const dig::Cell*> cells;
  for (const auto& cell : dig.grid.cells)
    if (cell.dig_level) cells.push_back(&cell);
  return cells;
}

std::size_t lines_of_list(const Box& page) {
  return static_cast<std::size_t>((page.height() - kListHead) / kListStep);
}

void draw_list(Canvas& canvas, const std::vector<const dig::Cell*>& cells, std::size_t first,
               const Box& page) {
  const bool read = std::any_of(cells.begin(), cells.end(),
                                [](const auto* cell) { return cell->staff_reading.has_value(); });
  canvas.text({page.top_left.x, page.top_left.y + 4},
              read ? "Staff readings at the middle of each cell"
                   : "Levels at the middle of each cell; no laser is named for staff readings",
              Lettering{10.5}.bold());
  if (read)
    canvas.text({page.bottom_right.x, page.top_left.y + 4}, kBiggerIsDeeper,
                Lettering{10.5, kStop, Anchor::Right}.bold());
  canvas.text({page.top_left.x, page.top_left.y + 9}, kHowToTape, {9});
  const std::size_t lines = lines_of_list(page);
  for (std::size_t column = 0; column < 2; ++column) {
    const At top{page.top_left.x + static_cast<double>(column) * (kListWidth + 6),
                 page.top_left.y + 15};
    if (first + column * lines >= cells.size()) return;
    draw_list_row(canvas, top, cell_headings(), Lettering{9}.bold());
    canvas.line({{top.x, top.y + 1.5}, {top.x + kListWidth, top.y + 1.5}}, {0.4});
    for (std::size_t i = 0; i < lines; ++i) {
      const std::size_t k = first + column * lines + i;
      if (k >= cells.size()) return;
      const double y = top.y + kListStep * static_cast<double>(i + 1) + 0.8;
      if (i % 2 == 1)  // a tint leads the eye along the line
        canvas.fill({{top.x, y - 3.5},
                     {top.x + kListWidth, y - 3.5},
                     {top.x + kListWidth, y + 1.2},
                     {top.x, y + 1.2}},
                    {0.93, 0.93, 0.93});
      draw_list_row(canvas, {top.x, y}, cell_values(*cells[k]), {9});
    }
  }
}

}  // namespace squaredig::report
