#include "report/base_sheet.h"

#include "report/base_maps.h"
#include "report/base_words.h"
#include "report/flow.h"
#include "report/page.h"

namespace squaredig::report {
namespace {

constexpr Colour kOutside{0.66, 0, 0};

void draw_verdict(Canvas& canvas, const base::BaseResult& base, const Box& box) {
  const Colour colour = base.verdict == Verdict::Conforms ? kInk : kOutside;
  const Box frame{box.top_left, {box.bottom_right.x, box.top_left.y + 12}};
  canvas.polygon({frame.top_left,
                  {frame.bottom_right.x, frame.top_left.y},
                  frame.bottom_right,
                  {frame.top_left.x, frame.bottom_right.y}},
                 {1, colour});
  canvas.text({frame.top_left.x + 4, frame.top_left.y + 8.3}, base_verdict(base),
              Lettering{16, colour}.bold());
  if (base.surveyed)
    canvas.text({frame.bottom_right.x - 4, frame.top_left.y + 8}, "surveyed " + *base.surveyed,
                {10, kInk, Anchor::Right});
}

// Room to sign that the work stops here until the base is taken over.
void draw_hold_point(Canvas& canvas, const Box& box) {
  const std::vector<std::string> lines{"surveyed by", "taken over for bedding by"};
  canvas.text({box.top_left.x, box.top_left.y + 4},
              "Hold point: no bedding before both have signed.", Lettering{10}.bold());
  double y = box.top_left.y + 16;
  for (const auto& line : lines) {
    const double x = box.top_left.x;
    canvas.text({x, y}, line, {9});
    canvas.line({{x + 45, y + 0.5}, {x + 100, y + 0.5}}, {0.3});
    canvas.text({x + 104, y}, "date, time", {9});
    canvas.line({{x + 123, y + 0.5}, {x + 150, y + 0.5}}, {0.3});
    canvas.text({x + 153, y}, "sign", {9});
    canvas.line({{x + 162, y + 0.5}, {box.bottom_right.x, y + 0.5}}, {0.3});
    y += 11;
  }
}

constexpr const char* kHoldPoint =
    "<p><strong>Hold point: no bedding before both have signed.</strong></p><div class=\"sign\">"
    "<p>surveyed by</p><p>date, time</p><p>sign</p><p>taken over for bedding by</p>"
    "<p>date, time</p><p>sign</p></div>";

}  // namespace

std::string base_sheet_pdf(const base::BaseResult& base, const SheetHead& head) {
  return flow_pdf(head, base.head, [&](Flow& flow) {
    flow.drawing(13, [&](Canvas& canvas, const Box& box) { draw_verdict(canvas, base, box); });
    flow.paragraph(kBaseHolds, Lettering{10}.bold());
    flow.paragraph(kBaseMeans);
    flow.table(check_table(base));
    flow.heading("Deviation from the dig level");
    flow.drawing(105,
                 [&](Canvas& canvas, const Box& box) { draw_deviation_map(canvas, base, box); });
    flow.heading("Bedding");
    flow.drawing(105, [&](Canvas& canvas, const Box& box) { draw_bedding_map(canvas, base, box); });
    if (has_stack_map(base)) {
      flow.heading("Joints between stacks");
      flow.drawing(105, [&](Canvas& canvas, const Box& box) { draw_stack_map(canvas, base, box); });
    }
    flow.rows("Measures", base_rows(base));
    for (const auto& table : base_tables(base)) flow.table(table);
    flow.drawing(36, draw_hold_point);
    flow.cautions();
    flow.table(point_table(base));
  });
}

std::string base_page(const base::BaseResult& base, const SheetHead& head) {
  Page page(head, base.head);
  const char* kind = base.verdict == Verdict::Conforms ? "verdict conforms" : "verdict";
  std::string top = std::string("<p class=\"") + kind + "\">" + base_verdict(base) + "</p>";
  if (base.surveyed) top += paragraph_html("Surveyed " + *base.surveyed + ".");
  page.section("verdict", "Verdict",
               top + "<p><strong>" + kBaseHolds + "</strong></p>" + paragraph_html(kBaseMeans) +
                   table_html(check_table(base)));
  const auto map = [&](const char* title, auto draw) {
    Canvas canvas = Canvas::svg({190, 105}, title);
    draw(canvas, base, Box{{1, 0}, {189, 105}});
    return canvas.finish();
  };
  page.section("deviation", "Deviation from the dig level",
               drawing_html("Deviation map",
                            map("Deviation of each point from the dig level", draw_deviation_map)));
  page.section("bedding", "Bedding",
               drawing_html("Bedding map", map("Bedding at each point", draw_bedding_map)));
  if (has_stack_map(base))
    page.section("stacks", "Joints between stacks",
                 drawing_html("Stack map", map("Joints between stacks", draw_stack_map)));
  page.section("measures", "Measures", rows_html("Measures", base_rows(base)));
  std::string tables;
  for (const auto& table : base_tables(base)) tables += table_html(table);
  if (!tables.empty()) page.section("repair", "Repair and what is open", tables);
  page.section("hold", "Hold point", kHoldPoint);
  page.folded("points", "List of points", table_html(point_table(base)));
  return page.finish("");
}

}  // namespace squaredig::report
