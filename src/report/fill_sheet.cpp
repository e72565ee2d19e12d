#include "report/fill_sheet.h"

#include "report/fill_drawing.h"
#include "report/fill_words.h"
#include "report/flow.h"
#include "report/page.h"

namespace squaredig::report {
namespace {

constexpr double kGauge = 74;  // mm

}  // namespace

std::string fill_sheet_pdf(const fill::FillResult& fill, const SheetHead& head) {
  return flow_pdf(head, fill.head, [&](Flow& flow) {
    for (const auto& line : fill_verdicts(fill)) flow.paragraph(line, Lettering{12}.bold());
    flow.rows("What goes back", fill_rows(fill));
    flow.paragraph(kPlacedMeasure);
    flow.heading("What to order");
    for (const auto& table : order_tables(fill)) flow.table(table);
    flow.heading("Fill to these levels");
    if (!fill.side_fill.empty())
      flow.drawing(kGauge, [&](Canvas& canvas, const Box& box) { draw_lifts(canvas, fill, box); });
    for (const auto& table : lift_tables(fill)) flow.table(table);
    const auto proof = proof_tables(fill);
    if (!proof.empty()) flow.heading("As built, and uplift");
    for (const auto& table : proof) flow.table(table);
    flow.cautions();
  });
}

std::string fill_page(const fill::FillResult& fill, const SheetHead& head) {
  Page page(head, fill.head);
  std::string top, order, lifts, proof;
  for (const auto& line : fill_verdicts(fill))
    top += "<p><strong>" + label_html(line) + "</strong></p>";
  page.section("fills", "What goes back",
               top + rows_html("What goes back", fill_rows(fill)) + paragraph_html(kPlacedMeasure));
  for (const auto& table : order_tables(fill)) order += table_html(table);
  page.section("order", "What to order", order);
  if (!fill.side_fill.empty()) {
    Canvas canvas = Canvas::svg({190, kGauge}, "Lifts of the side fill with their levels at A");
    draw_lifts(canvas, fill, {{0, 0}, {190, kGauge}});
    lifts = drawing_html("Lifts", canvas.finish());
  }
  for (const auto& table : lift_tables(fill)) lifts += table_html(table);
  page.section("lifts", "Fill to these levels", lifts);
  for (const auto& table : proof_tables(fill)) proof += table_html(table);
  if (!proof.empty()) page.section("proof", "As built, and uplift", proof);
  return page.finish("");
}

}  // namespace squaredig::report
