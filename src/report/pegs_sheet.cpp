#include "report/pegs_sheet.h"

#include "report/flow.h"
#include "report/page.h"
#include "report/peg_drawings.h"
#include "report/pegs_words.h"

namespace squaredig::report {

std::string pegs_sheet_pdf(const pegs::PegsResult& pegs, const SheetHead& head) {
  return flow_pdf(head, pegs.head, [&](Flow& flow) {
    for (const auto& line : peg_verdicts(pegs)) flow.paragraph(line, Lettering{12}.bold());
    flow.drawing(118, [&](Canvas& canvas, const Box& box) { draw_peg_plan(canvas, pegs, box); });
    for (const auto& table : peg_tables(pegs)) flow.table(table);
    flow.heading("To find a corner again");
    flow.drawings(pegs.corners.size(), 2, 66, [&](Canvas& canvas, const Box& box, std::size_t i) {
      draw_recovery(canvas, pegs, i, box);
    });
    const auto squareness = squareness_tables(pegs);
    if (!squareness.empty()) flow.heading("As set and as taped");
    for (const auto& table : squareness) flow.table(table);
    flow.cautions();
  });
}

std::string pegs_page(const pegs::PegsResult& pegs, const SheetHead& head) {
  Page page(head, pegs.head);
  std::string plan;
  for (const auto& line : peg_verdicts(pegs))
    plan += "<p><strong>" + label_html(line) + "</strong></p>";
  Canvas canvas = Canvas::svg({190, 118}, "Plan of the tank with its pegs and string lines");
  draw_peg_plan(canvas, pegs, {{0, 0}, {190, 117}});
  page.section("plan", "Pegs in plan", plan + drawing_html("Pegs in plan", canvas.finish()));
  std::string tables, sketches = "<div class=\"sketches\">", square;
  for (const auto& table : peg_tables(pegs)) tables += table_html(table);
  page.section("schedules", "Schedules", tables);
  for (std::size_t i = 0; i < pegs.corners.size(); ++i) {
    Canvas sketch =
        Canvas::svg({92, 66}, "Sketch to find corner " + pegs.corners[i].name + " again");
    draw_recovery(sketch, pegs, i, {{0.5, 0.5}, {91.5, 65.5}});
    sketches += "<div>" + sketch.finish() + "</div>";
  }
  page.section("recovery", "To find a corner again", sketches + "</div>");
  for (const auto& table : squareness_tables(pegs)) square += table_html(table);
  if (!square.empty()) page.section("square", "As set and as taped", square);
  return page.finish("");
}

}  // namespace squaredig::report
