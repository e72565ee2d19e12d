#include "report/dig_sheet.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "report/dig_words.h"
#include "report/flow.h"

namespace squaredig::report {
namespace {

constexpr Colour kStop{0.7, 0, 0};
constexpr double kCabFigure = 9;   // points, the least in the cab
constexpr double kUnderStrip = 9;  // mm below the first line of the symbols

// The levels to stop at.
double draw_stop(Canvas& canvas, At at, double width, const dig::DigResult& dig) {
  const auto stops = stops_of(dig);
  const double height = 9 + 6.4 * static_cast<double>(stops.size()) + (dig.stop_level_at_a ? 6 : 0);
  canvas.fill({at, {at.x + width, at.y}, {at.x + width, at.y + 7}, {at.x, at.y + 7}}, kStop);
  canvas.text({at.x + 2, at.y + 5.1}, "STOP: dig level", Lettering{11, kPaper}.bold());
  canvas.polygon({at, {at.x + width, at.y}, {at.x + width, at.y + height}, {at.x, at.y + height}},
                 {0.6, kStop});
  const bool staff =
      std::any_of(stops.begin(), stops.end(), [](const auto& stop) { return !stop.staff.empty(); });
  if (staff) canvas.text({at.x + width - 2, at.y + 5}, "staff", {9, kPaper, Anchor::Right});
  const double level_at = at.x + (staff ? 41 : width - 2);
  double y = at.y + 7;
  for (const auto& stop : stops) {
    y += 6.4;
    canvas.text({at.x + 2, y}, "at " + stop.corner, Lettering{11}.bold());
    canvas.text({level_at, y}, stop.level, Lettering{14, kStop, Anchor::Right}.bold());
    canvas.text({at.x + width - 2, y}, stop.staff, Lettering{14, kInk, Anchor::Right}.bold());
  }
  if (dig.stop_level_at_a) {
    canvas.text({at.x + 2, y + 5.6}, "first stop, at A", {9});
    canvas.text({at.x + width - 2, y + 5.6}, level_text(dig.stop_level_at_a),
                Lettering{11, kStop, Anchor::Right}.bold());
  }
  return canvas.paragraph({at.x, at.y + height + 1.5}, width,
                          std::string("Bedding comes above the dig level.") +
                              (staff ? std::string(" ") + kBiggerIsDeeper : ""),
                          {9}) +
         1;
}

// The whole ladder, a line for each corner.
double draw_ladder_table(Canvas& canvas, At at, double width, const dig::DigResult& dig) {
  double y = heading(canvas, at, width, "Level ladder") + 3.2;
  const auto line = [&](const std::string& corner, const std::vector<std::string>& values,
                        const Lettering& lettering) {
    canvas.text({at.x, y}, corner, Lettering{9}.bold());
    for (std::size_t i = 0; i < values.size(); ++i)
      canvas.text({at.x + width - 15.2 * static_cast<double>(values.size() - 1 - i), y}, values[i],
                  lettering.anchored(Anchor::Right));
    y += 4.4;
  };
  line("at", {"ground", "top", "underside", "dig"}, {7.5, kQuiet});
  for (const auto& corner : ladder_lines(dig)) line(corner.corner, corner.levels, {9});
  return y - 1;
}

// The batter of each side in words and degrees, and who gave it.
double draw_batters(Canvas& canvas, At at, double width, const dig::DigResult& dig) {
  double y = heading(canvas, at, width, "Batters");
  for (const auto& row : batter_rows(dig)) {
    canvas.text({at.x, y + 3.2}, row.label, Lettering{9}.bold());
    const double indent = canvas.text_width(row.label, Lettering{9}.bold()) + 2;
    y = canvas.paragraph({at.x + indent, y}, width - indent, row.value, {9});
  }
  return canvas.paragraph({at.x, y}, width, batter_source(dig), Lettering{9}.bold()) + 1;
}

// Gives the number of the first caution that found no room.
std::size_t draw_side_column(Canvas& canvas, const PitPlan& plan, const Box& box) {
  const double x = box.top_left.x, width = box.width();
  double y = draw_stop(canvas, box.top_left, width, plan.dig);
  y = draw_batters(canvas, {x, y}, width, plan.dig);
  y = heading(canvas, {x, y}, width, "Where to tape");
  y = canvas.paragraph({x, y}, width,
                       std::string(kHowToTape) +
                           " The rulers at the edges give the middle of each column and row.",
                       {9}) +
      1;
  y = draw_ladder_table(canvas, {x, y}, width, plan.dig);
  y = heading(canvas, {x, y}, width, "Quantities");
  y = rows(canvas, {x, y}, width, quantity_rows(plan.dig), 9);
  return draw_cautions(canvas, {{x, y}, box.bottom_right}, plan.dig.head, 8.5, 0).next;
}

void draw_strip(Canvas& canvas, const dig::DigResult& dig, const TankView& view, At left,
                double right, const std::string& words) {
  draw_depth_ramp(canvas, left, dig);
  draw_symbols(canvas, {left.x + 98, left.y}, dig);
  draw_north(canvas, {right - 6, left.y + 0.5}, view.north());
  canvas.text({right - 18, left.y}, words, Lettering{9, kInk, Anchor::Right}.bold());
}

std::size_t draw_a3(Canvas& canvas, const PitPlan& plan, const SheetHead& head, int pages) {
  const Box page = draw_frame(canvas, head, plan.dig.head, 1, pages);
  constexpr double kSide = 64, kStrip = 7 + kUnderStrip;
  const double split = page.bottom_right.x - kSide - 4;
  // the sections give way where that makes the figures of the plan readable
  double sections = page.bottom_right.y - 51;
  const auto plan_box = [&] { return Box{page.top_left, {split, sections - kStrip}}; };
  if (figure_points(whole_pit(plan, plan_box()), plan.dig) < kLeastFigure) sections += 12;
  const Box box = plan_box();
  const TankView view = whole_pit(plan, box);
  draw_pit_plan(canvas, plan, view, box);
  draw_strip(canvas, plan.dig, view, {page.top_left.x, sections - kUnderStrip}, split,
             "plan " + view.scale_text());
  draw_sections(canvas, plan.dig, {{page.top_left.x, sections}, {split, page.bottom_right.y}});
  return draw_side_column(
      canvas, plan, {{split + 4, page.top_left.y}, {page.bottom_right.x, page.bottom_right.y}});
}

// The plan for the cab: windows of whole cells, each large enough to be read.
struct Windows {
  int columns = 0, rows = 0;  // cells in one window; 0: the whole pit fits one page
  int across = 1, down = 1;   // windows
  double cell = 0;            // mm
  int count() const { return across * down; }
};

constexpr double kColumnRuler = 6, kRowRuler = 13;  // mm

Box cab_box(const Box& page) {
  return {page.top_left, {page.bottom_right.x, page.bottom_right.y - 7.5 - kUnderStrip}};
}

int shares(int total, int most) { return (total + most - 1) / most; }

Windows windows_for(const PitPlan& plan, const Box& box) {
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

// Cells with their readings, two columns of them to a page.
constexpr double kListStep = 4.7;
constexpr double kListWidth = 92;
constexpr double kListHead = 19;

std::vector<const dig::Cell*> listed(const dig::DigResult& dig) {
  std::vector<const dig::Cell*> cells;
  for (const auto& cell : dig.grid.cells)
    if (cell.dig_level) cells.push_back(&cell);
  return cells;
}

std::size_t lines_of_list(const Box& page) {
  return static_cast<std::size_t>((page.height() - kListHead) / kListStep);
}

void draw_list_row(Canvas& canvas, At at, const std::vector<std::string>& cells,
                   Lettering lettering) {
  constexpr std::array kRights{17.0, 36.0, 49.0, 60.0, 77.0, 92.0};
  lettering.anchor = Anchor::Right;
  for (std::size_t i = 0; i < cells.size(); ++i)
    canvas.text({at.x + kRights[i], at.y}, cells[i], lettering);
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

// The room a page of this size leaves.
Box room_on(PageSize size, const SheetHead& head, const ResultHead& result) {
  Canvas canvas = Canvas::svg(size, "");
  return draw_frame(canvas, head, result, 1, 1);
}

// What stands round the pit, the surveys during the dig, and the cautions that found no room on the
// first page. Gives the number of its last page.
int write_around(Canvas& canvas, const PitPlan& plan, const SheetHead& head, int first, int pages,
                 std::size_t cautions_from) {
  Flow flow(canvas, head, plan.dig.head, pages, first);
  flow.table(batter_table(plan.dig));
  for (const auto& table : around_tables(plan.dig)) flow.table(table);
  for (const auto& table : progress_tables(plan.dig)) flow.table(table);
  if (cautions_from < caution_count(plan.dig.head)) flow.cautions(cautions_from);
  return flow.page();
}

int pages_around(const PitPlan& plan, const SheetHead& head, std::size_t cautions_from) {
  Canvas canvas = Canvas::svg(kA4Portrait, "");
  return write_around(canvas, plan, head, 1, 1, cautions_from);
}

std::size_t cautions_on_first(const PitPlan& plan, const SheetHead& head) {
  Canvas canvas = Canvas::svg(kA3Landscape, "");
  return draw_a3(canvas, plan, head, 1);
}

}  // namespace

std::string dig_sheet_pdf(const PitPlan& plan, const SheetHead& head) {
  Canvas canvas = Canvas::pdf(kA3Landscape, head.title + ": " + plan.dig.head.job, head.date);
  const auto cells = listed(plan.dig);
  const Windows windows = windows_for(plan, cab_box(room_on(kA4Landscape, head, plan.dig.head)));
  const std::size_t per_page = 2 * lines_of_list(room_on(kA4Portrait, head, plan.dig.head));
  const int lists = static_cast<int>((cells.size() + per_page - 1) / per_page);
  const std::size_t cautions = cautions_on_first(plan, head);
  const int before_lists = 1 + windows.count() + pages_around(plan, head, cautions);
  const int pages = before_lists + lists;
  draw_a3(canvas, plan, head, pages);
  for (int n = 0; n < windows.count(); ++n) {
    canvas.next_page(kA4Landscape);
    draw_cab(canvas, plan, head, windows, n, 2 + n, pages);
  }
  canvas.next_page(kA4Portrait);
  write_around(canvas, plan, head, 2 + windows.count(), pages, cautions);
  for (int n = 0; n < lists; ++n) {
    canvas.next_page(kA4Portrait);
    const Box page = draw_frame(canvas, head, plan.dig.head, before_lists + 1 + n, pages);
    draw_list(canvas, cells, static_cast<std::size_t>(n) * per_page, page);
  }
  return canvas.finish();
}

}  // namespace squaredig::report
