#include "report/dig_sheet.h"

#include <array>

#include "quantity/number_text.h"

namespace squaredig::report {
namespace {

constexpr Colour kStop{0.75, 0, 0};

std::string m3(double value) { return fixed(value, 1) + " m3"; }
std::string m(Length value, int decimals = 2) { return fixed(value.in_metres(), decimals) + " m"; }

std::vector<Row> quantity_rows(const dig::DigResult& dig) {
  std::vector<Row> rows{{"cut, in the ground", m3(dig.cut.in_cubic_metres())}};
  if (dig.uncertainty)
    rows.push_back({"  one standard deviation", m3(dig.uncertainty->sigma.in_cubic_metres())});
  for (const auto& part : dig.by_part)
    if (dig.by_part.size() > 1) rows.push_back({"  " + part.part, m3(part.cut.in_cubic_metres())});
  if (dig.topsoil) rows.push_back({"  of it topsoil", m3(dig.topsoil->in_cubic_metres())});
  if (dig.loose) rows.push_back({"loose", m3(dig.loose->in_cubic_metres())});
  if (dig.truckloads) rows.push_back({"loads", std::to_string(*dig.truckloads)});
  rows.push_back({"deepest cut", m(dig.deepest_cut)});
  rows.push_back({"mean cut", m(dig.mean_cut)});
  rows.push_back({"floor", fixed(dig.floor_area.in_square_metres(), 1) + " m2"});
  rows.push_back({"area dug", fixed(dig.crest_area.in_square_metres(), 1) + " m2"});
  rows.push_back({"crest", m(dig.crest_length, 1)});
  return rows;
}

// The levels to stop at, in red.
double draw_stop(Canvas& canvas, At at, double width, const dig::DigResult& dig) {
  double y = heading(canvas, at, width, "Stop levels");
  for (const auto& rung : dig.levels) {
    if (rung.name != "dig level") continue;
    y += 5;
    canvas.text({at.x, y}, "STOP at " + rung.at, {10, kStop, Anchor::Left, true});
    canvas.text({at.x + width, y}, fixed(rung.level.in_metres(), 3),
                {12, kStop, Anchor::Right, true});
  }
  if (dig.stop_level_at_a) {
    y += 5;
    canvas.text({at.x, y}, "first stop at A", {9, kStop});
    canvas.text({at.x + width, y}, fixed(dig.stop_level_at_a->in_metres(), 3),
                {10, kStop, Anchor::Right, true});
  }
  return canvas.paragraph({at.x, y + 2}, width, "Bedding comes above the dig level.", {8}) + 3;
}

void draw_side_column(Canvas& canvas, const PitPlan& plan, At at, double width) {
  double y = draw_stop(canvas, at, width, plan.dig);
  y = heading(canvas, {at.x, y}, width, "Quantities");
  y = rows(canvas, {at.x, y}, width, quantity_rows(plan.dig), 8.5);
  draw_cautions(canvas, {at.x, y + 1}, width, plan.dig.head, 7);
}

void draw_a3(Canvas& canvas, const PitPlan& plan, const SheetHead& head, int pages) {
  const Frame frame = draw_frame(canvas, head, plan.dig.head, 1, pages);
  constexpr double kSide = 92;
  const double split = frame.bottom_right.x - kSide - 6;
  const double sections_top = frame.bottom_right.y - 62;
  const TankView view = draw_pit_plan(
      canvas, plan, {{frame.top_left.x, frame.top_left.y}, {split, sections_top - 8}});
  draw_depth_legend(canvas, {frame.top_left.x, sections_top - 2}, plan.dig);
  canvas.text({split, sections_top - 2}, "plan " + view.scale_text() + " on A3",
              {8, kInk, Anchor::Right});
  const double middle = frame.top_left.x + (split - frame.top_left.x) * 0.58;
  if (plan.dig.sections.size() == 2) {
    draw_section(canvas, plan.dig, plan.dig.sections[0],
                 {{frame.top_left.x, sections_top + 2}, {middle - 4, frame.bottom_right.y}});
    draw_section(canvas, plan.dig, plan.dig.sections[1],
                 {{middle + 2, sections_top + 2}, {split, frame.bottom_right.y}});
  }
  canvas.line({{split + 3, frame.top_left.y}, {split + 3, frame.bottom_right.y}}, {0.2});
  draw_side_column(canvas, plan, {split + 6, frame.top_left.y}, kSide);
}

void draw_cab(Canvas& canvas, const PitPlan& plan, const SheetHead& head, int page, int pages) {
  const Frame frame = draw_frame(canvas, head, plan.dig.head, page, pages);
  const TankView view = draw_pit_plan(
      canvas, plan,
      {{frame.top_left.x, frame.top_left.y}, {frame.bottom_right.x, frame.bottom_right.y - 10}});
  draw_depth_legend(canvas, {frame.top_left.x, frame.bottom_right.y - 3}, plan.dig);
  canvas.text({frame.bottom_right.x, frame.bottom_right.y - 3}, view.scale_text() + " on A4",
              {8, kInk, Anchor::Right});
}

// Cells with their readings, two columns of them to a page.
struct CellList {
  static constexpr double kStep = 4.4;
  static constexpr double kWidth = 92;
  std::size_t per_column = 0;
  std::size_t per_page() const { return 2 * per_column; }
};

CellList list_on(const Canvas& canvas) {
  const double height = canvas.size().height - 22 - 20 - 16;
  return {static_cast<std::size_t>(height / CellList::kStep)};
}

void draw_list_row(Canvas& canvas, At at, const std::vector<std::string>& cells,
                   Lettering lettering) {
  constexpr std::array kRights{14.0, 30.0, 43.0, 60.0, 77.0, 92.0};
  lettering.anchor = Anchor::Right;
  for (std::size_t i = 0; i < cells.size(); ++i)
    canvas.text({at.x + kRights[i], at.y}, cells[i], lettering);
}

std::string or_dash(const std::optional<Length>& value, int decimals) {
  return value ? fixed(value->in_metres(), decimals) : "-";
}

std::vector<std::string> list_cells(const dig::Cell& cell) {
  return {cell.name(),
          fixed(cell.along.in_metres(), 2),
          fixed(cell.across.in_metres(), 2),
          cell.dig_level ? fixed(cell.dig_level->in_metres(), 3) : "-",
          or_dash(cell.cut_at_centre, 2),
          or_dash(cell.staff_reading, 3)};
}

void draw_list(Canvas& canvas, const PitPlan& plan, const SheetHead& head, std::size_t first,
               int page, int pages) {
  const Frame frame = draw_frame(canvas, head, plan.dig.head, page, pages);
  const CellList list = list_on(canvas);
  canvas.text({frame.top_left.x, frame.top_left.y + 4},
              "Staff readings at cell centres. Bigger reading = deeper.",
              {10, kInk, Anchor::Left, true});
  canvas.text({frame.top_left.x, frame.top_left.y + 9},
              "Tape along string A-B from A, then square to it into the tank.", {8.5});
  const auto& cells = plan.dig.grid.cells;
  for (std::size_t column = 0; column < 2; ++column) {
    const At top{frame.top_left.x + static_cast<double>(column) * (CellList::kWidth + 6),
                 frame.top_left.y + 15};
    draw_list_row(canvas, top, {"cell", "along A-B", "in", "dig level", "cut", "staff"},
                  {7.5, kInk, Anchor::Right, true});
    canvas.line({{top.x, top.y + 1.3}, {top.x + CellList::kWidth, top.y + 1.3}}, {0.3});
    for (std::size_t i = 0; i < list.per_column; ++i) {
      const std::size_t k = first + column * list.per_column + i;
      if (k >= cells.size()) return;
      draw_list_row(canvas, {top.x, top.y + CellList::kStep * static_cast<double>(i + 1) + 0.6},
                    list_cells(cells[k]), {8.5});
    }
  }
}

}  // namespace

std::string dig_sheet_pdf(const PitPlan& plan, const SheetHead& head) {
  Canvas canvas = Canvas::pdf(kA3Landscape, head.title + ": " + plan.dig.head.job, head.date);
  const std::size_t cells = plan.dig.grid.cells.size();
  const std::size_t per_page = list_on(Canvas::svg(kA4Portrait)).per_page();
  const int pages = 2 + static_cast<int>((cells + per_page - 1) / per_page);
  draw_a3(canvas, plan, head, pages);
  canvas.next_page(kA4Landscape);
  draw_cab(canvas, plan, head, 2, pages);
  for (int page = 3; page <= pages; ++page) {
    canvas.next_page(kA4Portrait);
    draw_list(canvas, plan, head, static_cast<std::size_t>(page - 3) * per_page, page, pages);
  }
  return canvas.finish();
}

std::string pit_plan_svg(const PitPlan& plan, PageSize size) {
  Canvas canvas = Canvas::svg(size);
  draw_pit_plan(canvas, plan, {{0, 0}, {size.width, size.height}});
  return canvas.finish();
}

}  // namespace squaredig::report
