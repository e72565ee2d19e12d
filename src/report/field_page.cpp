#include "report/field_page.h"

#include "report/field_drawings.h"
#include "report/field_words.h"
#include "report/page.h"

namespace squaredig::report {
namespace {

std::string plan_html(const field::FieldResult& field) {
  Canvas canvas = Canvas::svg({190, 110}, "Plan of the points and set-ups, grid north up");
  draw_field_plan(canvas, field, {{0, 0}, {190, 110}});
  return drawing_html("Points in plan", canvas.finish());
}

std::string setup_html(const field::SetupResult& setup, const field::Tests& tests) {
  std::string html = "<h3>" + label_html("Set-up " + setup.setup) + "</h3>" +
                     rows_html("Set-up " + setup.setup, setup_rows(setup));
  if (setup.residuals.empty()) return html;
  const double height = residual_height(setup);
  Canvas canvas = Canvas::svg({190, height}, "Residuals of set-up " + setup.setup + " as bars");
  draw_residuals(canvas, setup, tests, {{0, 0}, {190, height}});
  return html + drawing_html("Residuals of set-up " + setup.setup, canvas.finish()) +
         table_html(residual_table(setup, tests));
}

}  // namespace

std::string field_page(const field::FieldResult& field, const SheetHead& head) {
  Page page(head, field.head);
  std::string points = plan_html(field) + table_html(reduced_table(field));
  if (!field.withheld.empty()) points = table_html(withheld_table(field)) + points;
  page.section("points", "Points", points);
  std::string setups, levels;
  for (const auto& setup : field.setups) setups += setup_html(setup, field.tests);
  if (!setups.empty()) page.section("setups", "Set-ups and residuals", setups);
  if (field.levels) levels = joined_html(level_tables(*field.levels));
  if (!levels.empty()) page.section("levels", "Level book", levels);
  if (field.fit)
    page.section("fit", "Fit to the site grid",
                 rows_html("Fit", fit_rows(*field.fit)) + table_html(fit_table(*field.fit)));
  if (field.gnss)
    page.section(
        "gnss", "GNSS",
        rows_html("GNSS", gnss_rows(*field.gnss)) +
            (field.gnss->occupations.empty() ? "" : joined_html(gnss_tables(*field.gnss))));
  return page.finish("");
}

}  // namespace squaredig::report
