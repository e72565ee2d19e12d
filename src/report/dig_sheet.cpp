#include "report/dig_sheet.h"

#include <algorithm>

#include "report/dig_sheet_internal.h"
#include "report/dig_words.h"
#include "report/flow.h"

namespace squaredig::report {
namespace {

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
  const Windows windows = windows_for(plan, room_on(kA4Landscape, head, plan.dig.head));
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
