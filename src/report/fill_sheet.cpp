#include "report/fill_sheet.h"

#include "report/fill_drawing.h"
#include "report/fill_words.h"
#include "report/flow.h"
#include "report/page.h"

namespace squaredig::report {
namespace {

constexpr double kGauge = 84;  // mm
constexpr double kLayer = 96;

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
    for (const auto& layer : fill.layers)
      if (!layer.points.empty())
        flow.drawing(kLayer,
                     [&](Canvas& canvas, const Box& box) { draw_layer(canvas, fill, layer, box); });
    for (const auto& table : proof) flow.table(table);
    flow.cautions();
  });
}

std::string fill_page(const fill::FillResult& fill, const SheetHead& head) {
  Page page(head, fill.head);
  std::string top, lifts;
  for (const auto& line : fill_verdicts(fill))
    top += "<p><strong>" + label_html(line) + "</strong></p>";
  page.section("fills", "What goes back",
               top + rows_html("What goes back", fill_rows(fill)) + paragraph_html(kPlacedMeasure));
  page.section("order", "What to order", joined_html(order_tables(fill)));
  if (!fill.side_fill.empty()) {
    Canvas canvas = Canvas::svg({190, kGauge}, "Lifts of the side fill with their levels at A");
    draw_lifts(canvas, fill, {{0, 0}, {190, kGauge}});
    lifts = drawing_html("Lifts", canvas.finish());
  }
  page.section("lifts", "Fill to these levels", lifts + joined_html(lift_tables(fill)));
  std::string layers;
  for (const auto& layer : fill.layers) {
    if (layer.points.empty()) continue;
    Canvas canvas = Canvas::svg({190, kLayer}, "Thickness of layer " + layer.name);
    draw_layer(canvas, fill, layer, {{1, 0}, {189, kLayer}});
    layers += drawing_html("Layer " + layer.name, canvas.finish());
  }
  if (const auto proof = proof_tables(fill); !proof.empty())
    page.section("proof", "As built, and uplift", layers + joined_html(proof));
  return page.finish("");
}

}  // namespace squaredig::report
