#include "report/ground_page.h"

#include "quantity/number_text.h"
#include "report/ground_plan.h"
#include "report/page.h"
#include "report/words.h"

namespace squaredig::report {
namespace {

std::vector<Row> surface_rows(const ground::GroundResult& ground) {
  std::vector<Row> rows{{"points", std::to_string(ground.points)},
                        {"triangles", std::to_string(ground.triangles)},
                        {"area in plan", area_text(ground.plan_area)},
                        {"area along the slope", area_text(ground.surface_area)},
                        {"lowest", level_text(ground.lowest)},
                        {"highest", level_text(ground.highest)}};
  if (ground.contour_interval)
    rows.push_back({"contours every", shortest(ground.contour_interval->in_metres()) + " m"});
  return rows;
}

Table found_table(const ground::GroundResult& ground) {
  Table table{"Found, with its mark on the plan",
              {figures_column("mark"), words_column("kind"), words_column("what"),
               figures_column("easting"), figures_column("northing")},
              {},
              {"Nothing is taken out or moved because of a finding."}};
  for (std::size_t i = 0; i < ground.found.size(); ++i) {
    const auto& found = ground.found[i];
    table.rows.push_back({std::to_string(i + 1), found.finding.code, found.finding.text,
                          easting_text(found.at), northing_text(found.at)});
  }
  return table;
}

Table suspect_table(const ground::GroundResult& ground) {
  Table table{"Points that hardly can be ground",
              {words_column("point"), figures_column("easting"), figures_column("northing"),
               figures_column("height"), figures_column("off by, m"), words_column("why")},
              {},
              {"Off by: from the plane of its neighbours, positive is high."}};
  for (const auto& s : ground.suspects)
    table.rows.push_back({s.point, easting_text(s.at.at), northing_text(s.at.at),
                          level_text(s.at.height), metres_text(s.by, 3), s.why});
  return table;
}

}  // namespace

std::string ground_page(const ground::GroundResult& ground, const SheetHead& head) {
  Page page(head, ground.head);
  constexpr PageSize kSize{190, 150};
  Canvas canvas = Canvas::svg(kSize, "Plan of the ground with contours, grid north up");
  draw_ground_plan(canvas, ground, {{0, 0}, {kSize.width, kSize.height}});
  page.section("plan", "Ground in plan", drawing_html("Ground in plan", canvas.finish()));
  std::string found;
  if (!ground.found.empty()) found += table_html(found_table(ground));
  if (!ground.suspects.empty()) found += table_html(suspect_table(ground));
  page.section("found", "Findings", found.empty() ? "<p>Nothing was found.</p>" : found);
  page.section("surface", "Surface", rows_html("Surface", surface_rows(ground)));
  return page.finish("");
}

}  // namespace squaredig::report
