#include "report/field_words.h"

#include <cmath>

#include "quantity/number_text.h"

namespace squaredig::report {
namespace {

// The standard deviation of a variance in square metres, in millimetres.
std::string sigma_text(const std::optional<field::Covariance>& covariance,
                       double field::Covariance::*variance) {
  return covariance ? fixed(1000 * std::sqrt((*covariance).*variance), 1) : "";
}

std::string number_text(const std::optional<double>& value, int decimals) {
  return value ? fixed(*value, decimals) : "";
}

std::string lines_text(const std::vector<Place>& places) {
  std::string text;
  for (const auto& place : places)
    text += (text.empty() ? place.file + ":" : ", ") + std::to_string(place.line);
  return text;
}

std::string unit_of(field::Reading reading) {
  return reading == field::Reading::Distance ? " mm" : "\xE2\x80\xB3";
}

Table run_table(const field::LevelResult& levels) {
  Table table{"Level runs",
              {words_column("from"), words_column("to"), figures_column("set-ups"),
               figures_column("length"), figures_column("rise"), figures_column("misclosure, mm"),
               figures_column("allowed, mm"), words_column("answer")},
              {},
              {"Misclosure: the rise levelled less the rise known."}};
  for (const auto& run : levels.runs)
    table.rows.push_back({run.from, run.to, std::to_string(run.setups),
                          metres_text(run.distance, 1), metres_text(run.rise, 3),
                          signed_mm_text(run.misclosure), mm_text(run.allowed),
                          words(run.verdict)});
  return table;
}

Table page_table(const field::LevelResult& levels) {
  Table table{"Sums of the level book",
              {words_column("run"), figures_column("backsights"), figures_column("foresights"),
               figures_column("rises"), figures_column("falls"), figures_column("last less first"),
               figures_column("booked"), words_column("sums agree")},
              {},
              {"Booked: the book's own rises less its falls, where it has them."}};
  for (const auto& run : levels.runs) {
    const auto& page = run.page;
    table.rows.push_back({run.from + " to " + run.to, metres_text(page.sum_backsight, 3),
                          metres_text(page.sum_foresight, 3), metres_text(page.sum_rise, 3),
                          metres_text(page.sum_fall, 3), metres_text(page.last_less_first, 3),
                          metres_text(page.booked_rise_less_fall, 3), page.agrees ? "yes" : "no"});
  }
  return table;
}

Table rise_table(const field::LevelResult& levels) {
  Table table{"Residuals of the level book",
              {words_column("from"), words_column("to"), figures_column("rise"),
               figures_column("residual, mm"), figures_column("over its sigma"),
               figures_column("redundancy"), words_column("line")},
              {},
              {}};
  for (const auto& r : levels.residuals)
    table.rows.push_back({r.from, r.to, metres_text(r.rise, 4), signed_mm_text(r.residual),
                          number_text(r.normalised, 2), fixed(r.redundancy, 2),
                          lines_text({r.place})});
  return table;
}

Table height_table(const field::LevelResult& levels) {
  Table table{"Levelled heights",
              {words_column("point"), figures_column("height"), figures_column("sigma, mm"),
               words_column("note")},
              {},
              {}};
  for (const auto& point : levels.points)
    table.rows.push_back({point.point, level_text(point.height), mm_text(point.sigma),
                          point.known ? "known" : "levelled"});
  return table;
}

Table collimation_table(const field::Collimation& test) {
  Table table{"Two-peg test of the level",
              {words_column("set-up"), words_column("staff"), figures_column("true reading")},
              {},
              {"Line of sight: " + fixed(1000 * test.slope.value(), 3) +
                   " mm too high for each metre of distance.",
               "Second staff above the first: " + metres_text(test.true_difference, 4) + " m."}};
  for (const auto& reading : test.correct)
    table.rows.push_back({reading.setup, reading.staff, metres_text(reading.reading, 4)});
  return table;
}

}  // namespace

Table reduced_table(const field::FieldResult& field) {
  Table table{"Points",
              {words_column("point"), words_column("code"), figures_column("easting"),
               figures_column("northing"), figures_column("height"), figures_column("sigma E, mm"),
               figures_column("sigma N, mm"), figures_column("sigma H, mm"), words_column("from"),
               figures_column("sights")},
              {},
              {"Sigma: one standard deviation of that coordinate."}};
  for (const auto& p : field.points)
    table.rows.push_back({p.point, p.code, easting_text(p.at), northing_text(p.at),
                          level_text(p.height), sigma_text(p.covariance, &field::Covariance::ee),
                          sigma_text(p.covariance, &field::Covariance::nn),
                          p.height ? sigma_text(p.covariance, &field::Covariance::hh) : "", p.from,
                          std::to_string(p.sights)});
  return table;
}

Table withheld_table(const field::FieldResult& field) {
  Table table{"Points without coordinates",
              {words_column("point"), words_column("why"), words_column("line")},
              {},
              {}};
  for (const auto& p : field.withheld)
    table.rows.push_back({p.point, p.why, lines_text({p.place})});
  return table;
}

std::vector<Row> setup_rows(const field::SetupResult& setup) {
  std::vector<Row> rows{{"station", setup.station.empty() ? "not named" : setup.station},
                        {"kind", words(setup.kind)},
                        {"easting", easting_text(setup.at)},
                        {"northing", northing_text(setup.at)}};
  if (setup.height) rows.push_back({"height", level_text(setup.height)});
  if (setup.covariance)
    rows.push_back(
        {"sigma E, N, H", sigma_text(setup.covariance, &field::Covariance::ee) + ", " +
                              sigma_text(setup.covariance, &field::Covariance::nn) + ", " +
                              sigma_text(setup.covariance, &field::Covariance::hh) + " mm"});
  rows.push_back({"bearing of the circle's zero", bearing_text(setup.orientation)});
  if (setup.sigma0) rows.push_back({"sigma of unit weight", fixed(*setup.sigma0, 2)});
  rows.push_back({"redundancy", fixed(setup.redundancy, 1)});
  if (setup.faces) {
    rows.push_back({"pairs of faces", std::to_string(setup.faces->pairs)});
    rows.push_back({"index error", fixed(setup.faces->index.in_seconds(), 1) + "\xE2\x80\xB3"});
    rows.push_back(
        {"collimation", fixed(setup.faces->collimation.in_seconds(), 1) + "\xE2\x80\xB3"});
  }
  rows.push_back({"grid over ground", fixed(setup.combined_factor.value(), 8)});
  return rows;
}

Table residual_table(const field::SetupResult& setup, const field::Tests& tests) {
  Table table{
      "Residuals of set-up " + setup.setup,
      {words_column("to"), words_column("reading"), figures_column("residual"),
       figures_column("over its sigma"), figures_column("redundancy"),
       figures_column("least error found"), words_column("line"), words_column("note")},
      {},
      {"Residual: adjusted less observed; over its sigma beyond " + fixed(tests.critical, 2) +
       " it is suspect. Redundancy: 0 is checked by nothing, 1 wholly by the others. Least "
       "error found: with a chance of " +
       fixed(100 * tests.power, 0) + " %."}};
  for (const auto& r : setup.residuals)
    table.rows.push_back(
        {r.target, words(r.reading), fixed(r.residual, 1) + unit_of(r.reading),
         number_text(r.normalised, 2), fixed(r.redundancy, 2),
         r.smallest_detectable ? fixed(*r.smallest_detectable, 1) + unit_of(r.reading) : "",
         lines_text(r.places), r.left_out ? "left out" : ""});
  for (const auto& doubt : setup.doubts) table.notes.push_back("Doubt: " + doubt);
  return table;
}

std::vector<Table> level_tables(const field::LevelResult& levels) {
  std::vector<Table> tables;
  if (!levels.runs.empty()) tables = {run_table(levels), page_table(levels)};
  if (!levels.residuals.empty()) tables.push_back(rise_table(levels));
  if (!levels.points.empty()) tables.push_back(height_table(levels));
  if (levels.collimation) tables.push_back(collimation_table(*levels.collimation));
  return tables;
}

std::vector<Row> fit_rows(const field::FitResult& fit) {
  std::vector<Row> rows{{"scale", fixed(fit.scale, 8)},
                        {"turn, clockwise", turn_text(fit.rotation)},
                        {"east", metres_text(fit.east, 3)},
                        {"north", metres_text(fit.north, 3)}};
  if (fit.sigma0_m)
    rows.push_back({"sigma of one coordinate", fixed(1000 * *fit.sigma0_m, 1) + " mm"});
  if (fit.vertical_shift) rows.push_back({"height shift", metres_text(fit.vertical_shift, 3)});
  return rows;
}

Table fit_table(const field::FitResult& fit) {
  Table table{"Residuals of the fit",
              {words_column("point"), figures_column("east, mm"), figures_column("north, mm"),
               figures_column("height, mm"), words_column("note")},
              {},
              {"Fitted less given."}};
  for (const auto& pair : fit.residuals)
    table.rows.push_back({pair.point, signed_mm_text(pair.east), signed_mm_text(pair.north),
                          signed_mm_text(pair.height), pair.fits ? "" : "does not fit, left out"});
  return table;
}

std::vector<Row> gnss_rows(const field::GnssResult& gnss) {
  return {{"operation", gnss.operation},
          {"stated accuracy", metres_text(gnss.accuracy, 3) + " m"},
          {"geoid", gnss.geoid.value_or("none")},
          {"software", gnss.software}};
}

std::vector<Table> gnss_tables(const field::GnssResult& gnss) {
  Table spreads{"Points occupied more than once",
                {words_column("point"), words_column("answer"), figures_column("times"),
                 figures_column("spread in plan, mm"), figures_column("in height, mm")},
                {},
                {"Spread: the greatest between two of them."}};
  Table residuals{"Residuals of the occupations",
                  {words_column("point"), figures_column("east, mm"), figures_column("north, mm"),
                   figures_column("height, mm"), words_column("line")},
                  {},
                  {}};
  for (const auto& o : gnss.occupations) {
    spreads.rows.push_back({o.point, words(o.verdict), std::to_string(o.count),
                            mm_text(o.spread_plan), mm_text(o.spread_height)});
    for (const auto& r : o.residuals)
      residuals.rows.push_back({o.point, signed_mm_text(r.east), signed_mm_text(r.north),
                                signed_mm_text(r.height), lines_text({r.place})});
  }
  std::vector<Table> tables{std::move(spreads)};
  if (!residuals.rows.empty()) tables.push_back(std::move(residuals));
  return tables;
}

}  // namespace squaredig::report
