#include "report/dig_page.h"

#include <nlohmann/json.hpp>

#include "report/assets.h"
#include "report/dig_words.h"
#include "report/markup.h"
#include "report/page.h"

namespace squaredig::report {
namespace {

using Json = nlohmann::ordered_json;

template <class Value>
Json number_or_null(const std::optional<Value>& value) {
  return value ? Json(value->in_metres()) : Json(nullptr);
}

// What the marks of done cells belong to: this job with these very inputs.
std::string key_of(const ResultHead& head) {
  std::string key = "squaredig dig " + head.job;
  for (const auto& input : head.inputs) key += " " + input.sha256.substr(0, 8);
  return key;
}

// The plan with cells of ten millimetres, for the page to zoom, and where on it the cells begin.
constexpr double kCell = 10;
struct PlanDrawing {
  std::string svg;
  At first_cell;  // outer corner of the first column and row
};

std::string data_of(const dig::DigResult& dig, const PlanDrawing& drawing) {
  Json cells = Json::array();
  for (const auto& cell : dig.grid.cells)
    cells.push_back({cell.name(), cell.column, cell.row, cell.along.in_metres(),
                     cell.across.in_metres(), number_or_null(cell.ground),
                     number_or_null(cell.dig_level), number_or_null(cell.cut_at_centre),
                     cell.mean_cut.in_metres(), number_or_null(cell.staff_reading), cell.part});
  const Json data{{"key", clean_text(key_of(dig.head))},
                  {"job", clean_text(dig.head.job)},
                  {"plan",
                   {{"x", drawing.first_cell.x},
                    {"y", drawing.first_cell.y},
                    {"cell", kCell},
                    {"column", dig.grid.first_column},
                    {"row", dig.grid.first_row}}},
                  {"cells", std::move(cells)}};
  return data.dump();
}

std::string stop_html(const dig::DigResult& dig) {
  std::string html = "<div class=\"stops\">";
  for (const auto& stop : stops_of(dig)) {
    html += "<p><span>at " + stop.corner + "</span> <b>" + stop.level + "</b>";
    if (!stop.staff.empty()) html += " <span>staff <strong>" + stop.staff + "</strong></span>";
    html += "</p>";
  }
  if (dig.stop_level_at_a)
    html += "<p><span>first stop, at A</span> <b>" + level_text(dig.stop_level_at_a) + "</b></p>";
  return html + "</div><p>Bedding comes above the dig level. " + kBiggerIsDeeper + "</p>";
}

PlanDrawing plan_drawing(const PitPlan& plan) {
  const double scale = kCell / plan.dig.grid.size.in_metres();
  const TankView view(frame_of(plan.dig), scale, {}, {}, {});
  const Box reach = reach_on(plan, view);
  const TankView placed(frame_of(plan.dig), scale, {}, {},
                        {9 - reach.top_left.x, 9 - reach.top_left.y});
  const PageSize size{reach.width() + 18, reach.height() + 18};
  Canvas canvas = Canvas::svg(size, "");
  draw_pit_plan(canvas, plan, placed, {{0, 0}, {size.width, size.height}});
  return {canvas.finish(), placed(plan.dig.grid.origin)};
}

std::string legend_html(const PitPlan& plan) {
  Canvas ramp = Canvas::svg({95, 8}, "Depth ramp, pale for a small cut to dark for the deepest");
  draw_depth_ramp(ramp, {1, 5.6}, plan.dig);
  Canvas north = Canvas::svg({16, 16}, "Grid north");
  draw_north(north, {8, 8}, TankView(frame_of(plan.dig), 1, {}, {}, {}).north());
  std::string symbols;
  for (const auto& symbol : symbols_of(plan.dig)) {
    Canvas sample = Canvas::svg({kSymbolWidth + 1, 5}, "");
    draw_symbol(sample, {0.5, 3.8}, symbol);
    symbols += "<span>" + sample.finish() + symbol.name + "</span>";
  }
  return "<div class=\"legend\">" + ramp.finish() + symbols + north.finish() + "</div>";
}

std::string section_svg(const dig::DigResult& dig) {
  Canvas canvas = Canvas::svg({190, 56}, "Long and cross section with the ladder of levels at A");
  draw_sections(canvas, dig, {{1, 1}, {189, 54}});
  return drawing_html("Sections", canvas.finish());
}

constexpr const char* kPlanTools =
    "<div class=\"tools\" role=\"group\" aria-label=\"Plan\">"
    "<button type=\"button\" id=\"nearer\">Zoom in</button>"
    "<button type=\"button\" id=\"farther\">Zoom out</button>"
    "<button type=\"button\" id=\"whole\">Whole pit</button></div>";

constexpr const char* kReadOut =
    "<div id=\"now\"><p id=\"cell-line\"><span>cell</span> <b id=\"o-cell\">none</b></p>"
    "<dl><div class=\"big\"><dt id=\"o-kind\">cut</dt><dd id=\"o-cut\">&ndash;</dd></div>"
    "<div class=\"big\"><dt>dig level</dt><dd id=\"o-dig\">&ndash;</dd></div>"
    "<div class=\"big\"><dt>staff reading</dt><dd id=\"o-staff\">&ndash;</dd></div>"
    "<div><dt>ground</dt><dd id=\"o-ground\">&ndash;</dd></div>"
    "<div><dt>from string A-B, square to it</dt><dd id=\"o-across\">&ndash;</dd></div>"
    "<div><dt>along string A-B, from A</dt><dd id=\"o-along\">&ndash;</dd></div></dl>"
    "<p id=\"said\" class=\"unseen\" role=\"status\" aria-live=\"polite\"></p>"
    "<div class=\"staff\"><label for=\"read\">staff reads now</label>"
    "<input id=\"read\" inputmode=\"decimal\" autocomplete=\"off\">"
    "<label for=\"instrument\">new height of instrument (leave empty: as in the job)</label>"
    "<input id=\"instrument\" inputmode=\"decimal\" autocomplete=\"off\">"
    "<output id=\"answer\" for=\"read instrument\">Bigger reading = deeper.</output></div>"
    "<div class=\"tools\" role=\"group\" aria-label=\"Marks\">"
    "<button type=\"button\" id=\"done\" aria-pressed=\"false\" disabled>Cell done</button>"
    "<span id=\"count\">0 done</span>"
    "<button type=\"button\" id=\"export\">Export marks</button>"
    "<button type=\"button\" id=\"clear\">Clear marks</button></div></div>";

Table cells_table(const dig::DigResult& dig) {
  Table table{"Cells, at their middles", {}, {}, {kBiggerIsDeeper, kHowToTape}};
  for (const auto& heading : cell_headings()) table.columns.push_back({heading});
  for (const auto& cell : dig.grid.cells)
    if (cell.dig_level) table.rows.push_back(cell_values(cell));
  return table;
}

Table ladder_table(const dig::DigResult& dig) {
  Table table{"Level ladder at the corners", {{"at", Anchor::Left}}, {}, {}};
  for (const auto& name : ladder_names()) table.columns.push_back({name});
  for (const auto& line : ladder_lines(dig)) {
    table.rows.push_back({line.corner});
    table.rows.back().insert(table.rows.back().end(), line.levels.begin(), line.levels.end());
  }
  return table;
}

}  // namespace

std::string dig_page(const PitPlan& plan, const SheetHead& head) {
  const auto& dig = plan.dig;
  Page page(head, dig.head);
  const PlanDrawing drawing = plan_drawing(plan);
  page.data(data_of(dig, drawing));
  page.section("stop", "STOP: dig level", stop_html(dig));
  page.section("plan", "Plan",
               std::string(kPlanTools) + legend_html(plan) +
                   "<p id=\"keys\">Tap a cell, or use the arrow keys; the space bar marks it done."
                   " The list of cells below says the same in words.</p>"
                   "<div class=\"pair\"><div id=\"view\" tabindex=\"0\" role=\"application\" "
                   "aria-label=\"Plan of the pit, cell by cell\" aria-describedby=\"keys\">" +
                   "<div class=\"ground\">" + drawing.svg +
                   "<div id=\"cursor\" hidden></div></div></div>" + kReadOut + "</div>");
  page.section("sections", "Sections", section_svg(dig) + table_html(ladder_table(dig)));
  page.section("quantities", "Quantities", rows_html("Quantities", quantity_rows(dig)));
  page.section("batters", "Batters",
               rows_html("Batters", batter_rows(dig)) + "<p><strong>" +
                   label_html(batter_source(dig)) + "</strong></p>");
  if (const auto around = joined_html(around_tables(dig)); !around.empty())
    page.section("around", "Round the pit", around);
  if (const auto progress = joined_html(progress_tables(dig)); !progress.empty())
    page.section("progress", "Dug so far", progress);
  page.folded("list", "List of cells", table_html(cells_table(dig)));
  return page.finish(kDigJs);
}

}  // namespace squaredig::report
