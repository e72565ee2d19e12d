#include "report/fill_words.h"

#include "quantity/day_text.h"
#include "quantity/number_text.h"

namespace squaredig::report {
namespace {

template <class AnyVolume>
std::string m3(AnyVolume volume) {
  return fixed(volume.in_cubic_metres(), 1);
}

std::string m2(Area area) { return fixed(area.in_square_metres(), 1); }

Table material_table(const fill::FillResult& fill) {
  Table table{"Order list",
              {words_column("material"), figures_column("placed, m\xC2\xB3"),
               figures_column("in the ground, m\xC2\xB3"), figures_column("loose, m\xC2\xB3"),
               figures_column("tonnes")},
              {},
              fill.factors};
  for (const auto& material : fill.materials)
    table.rows.push_back({material.what, m3(material.placed), m3(material.in_the_ground),
                          material.loose ? m3(*material.loose) : "",
                          material.tonnes ? fixed(*material.tonnes, 1) : ""});
  return table;
}

Table sheets_table(const fill::FillResult& fill) {
  Table table{
      "Sheets",
      {words_column("sheet"), figures_column("net, m\xC2\xB2"),
       figures_column("with laps, m\xC2\xB2"), figures_column("strips"), figures_column("rolls"),
       figures_column("whole rolls, m\xC2\xB2"), figures_column("left over, m\xC2\xB2")},
      {},
      {}};
  const auto add = [&](const std::string& name, const fill::Sheet& sheet) {
    table.rows.push_back({name, m2(sheet.net), sheet.with_laps ? m2(*sheet.with_laps) : "",
                          sheet.strips ? std::to_string(*sheet.strips) : "",
                          sheet.rolls ? std::to_string(*sheet.rolls) : "",
                          sheet.ordered ? m2(*sheet.ordered) : "",
                          sheet.waste ? m2(*sheet.waste) : ""});
    if (!sheet.laid.empty()) table.notes.push_back(name + ": " + sheet.laid);
  };
  add("geotextile", fill.geotextile);
  add("geogrid", fill.geogrid);
  add("liner", fill.liner);
  return table;
}

Table lift_table(const fill::FillResult& fill) {
  Table table{"Side fill, lift by lift",
              {figures_column("lift"), words_column("material"), figures_column("from, at A"),
               figures_column("fill to, at A"), figures_column("placed, m\xC2\xB3"),
               figures_column("in the ground, m\xC2\xB3"), figures_column("loose, m\xC2\xB3")},
              {},
              {"Levels at corner A; the lifts fall with the tank."}};
  for (const auto& lift : fill.side_fill)
    table.rows.push_back({std::to_string(lift.lift), lift.special ? "special" : "side",
                          level_text(lift.from), level_text(lift.to), m3(lift.placed),
                          m3(lift.in_the_ground), lift.loose ? m3(*lift.loose) : ""});
  return table;
}

Table capping_table(const fill::FillResult& fill) {
  Table table{
      "Capping, from the tank top upward",
      {figures_column("layer"), figures_column("from, at A"), figures_column("fill to, at A"),
       figures_column("area, m\xC2\xB2"), figures_column("placed, m\xC2\xB3"),
       figures_column("in the ground, m\xC2\xB3"), figures_column("loose, m\xC2\xB3")},
      {},
      {"Area: of the layer's underside."}};
  for (const auto& layer : fill.capping)
    table.rows.push_back({std::to_string(layer.layer), level_text(layer.from), level_text(layer.to),
                          m2(layer.area), m3(layer.placed), m3(layer.in_the_ground),
                          layer.loose ? m3(*layer.loose) : ""});
  return table;
}

Table layer_table(const fill::FillResult& fill) {
  Table table{"Layers as built",
              {words_column("layer"), words_column("answer"), figures_column("planned, mm"),
               figures_column("tolerance, mm"), figures_column("mean, mm"),
               figures_column("thinnest, mm"), figures_column("thickest, mm"),
               figures_column("uncertainty, mm"), figures_column("m\xC2\xB3")},
              {},
              {}};
  for (const auto& layer : fill.layers) {
    table.rows.push_back({layer.name, words(layer.verdict), mm_text(layer.planned),
                          mm_text(layer.tolerance), mm_text(layer.mean_thickness),
                          mm_text(layer.thinnest), mm_text(layer.thickest),
                          mm_text(layer.uncertainty), m3(layer.volume)});
    table.notes.push_back(layer.name + ": thinnest at E " + easting_text(layer.thinnest_at) +
                          " N " + northing_text(layer.thinnest_at) + "; measured over " +
                          area_text(layer.area) + " of " + area_text(layer.wanted_area) + ".");
  }
  return table;
}

std::string percent_text(const std::optional<Ratio>& ratio) {
  return ratio ? fixed(ratio->in_percent(), 1) + " %" : "";
}

std::string asked_of_layers(const fill::DensityTests& tests) {
  std::string text;
  if (tests.wanted_mean) text += "; mean of a layer " + percent_text(tests.wanted_mean);
  if (tests.wanted_characteristic)
    text += "; characteristic value of a layer of six tests or more " +
            percent_text(tests.wanted_characteristic);
  return text;
}

Table density_table(const fill::DensityTests& tests) {
  Table table{
      "Density of the fill, ratio to the " + tests.standard + " test's maximum",
      {words_column("layer"), words_column("answer"), figures_column("tests"),
       figures_column("mean"), figures_column("least"), figures_column("characteristic"),
       figures_column("largest untested, m"), figures_column("along A-B"), figures_column("in")},
      {},
      {"Wanted: " + percent_text(tests.wanted) + asked_of_layers(tests) + ". " + tests.rounding,
       "Largest untested: radius of the circle without a test in it, and its middle."}};
  table.rows.push_back({"all", words(tests.verdict), std::to_string(tests.count),
                        percent_text(tests.mean), percent_text(tests.least),
                        percent_text(tests.characteristic), "", "", ""});
  for (const auto& layer : tests.layers)
    table.rows.push_back({layer.layer, words(layer.verdict), std::to_string(layer.count),
                          percent_text(layer.mean), percent_text(layer.least),
                          percent_text(layer.characteristic), metres_text(layer.untested, 2),
                          metres_text(layer.along_ab, 2), metres_text(layer.across_ab, 2)});
  for (const auto& failed : tests.failed) table.notes.push_back("Below what is asked: " + failed);
  return table;
}

Table test_table(const fill::DensityTests& tests) {
  Table table{"Density tests one by one",
              {words_column("layer"), figures_column("easting"), figures_column("northing"),
               figures_column("ratio"), words_column("answer"), words_column("line")},
              {},
              {}};
  for (const auto& test : tests.tests)
    table.rows.push_back({test.layer, easting_text(test.at), northing_text(test.at),
                          percent_text(test.ratio), words(test.verdict),
                          test.place.file + ":" + std::to_string(test.place.line)});
  return table;
}

Table log_table(const fill::FillResult& fill) {
  Table table{"Log of lifts: both sides rise together",
              {words_column("lift"), words_column("side"), words_column("day"),
               figures_column("above underside"), words_column("opposite"),
               figures_column("ahead of it"), words_column("note")},
              {},
              {"Ahead: above zero this side stands higher than the lowest one opposite."}};
  for (const auto& step : fill.lift_log)
    table.rows.push_back({step.lift, step.side, day_text(step.date),
                          metres_text(step.above_underside, 2), step.opposite,
                          metres_text(step.ahead, 2), step.too_far ? "more than one lift" : ""});
  return table;
}

Table uplift_table(const fill::FillResult& fill) {
  Table table{"Uplift screening",
              {words_column("stage of the work"), figures_column("up, kN"),
               figures_column("down, kN"), figures_column("down over up")},
              {},
              {fill.uplift_definition}};
  for (const auto& stage : fill.uplift)
    table.rows.push_back({stage.stage, fixed(stage.up.in_kilonewtons(), 0),
                          fixed(stage.down.in_kilonewtons(), 0),
                          stage.ratio ? fixed(*stage.ratio, 2) : "no uplift"});
  if (fill.uplift_inputs) {
    const auto& with = *fill.uplift_inputs;
    table.notes.push_back("With groundwater at " + level_text(with.water) + ", cover of " +
                          fixed(with.cover.in_kilonewtons_per_cubic_metre(), 1) +
                          " kN/m\xC2\xB3, an empty tank of " +
                          fixed(with.tank.in_kilonewtons(), 0) + " kN; wanted " +
                          fixed(with.wanted.value(), 2) + ".");
  }
  if (fill.cover_wanted)
    table.notes.push_back(
        "Cover wanted for the ratio entered: " + metres_text(fill.cover_wanted, 2) + " m.");
  if (fill.least_cover_found)
    table.notes.push_back("Least cover found: " + metres_text(fill.least_cover_found, 2) + " m" +
                          (fill.least_cover_wanted
                               ? ", wanted " + metres_text(fill.least_cover_wanted, 2) + " m."
                               : "."));
  return table;
}

}  // namespace

std::vector<Row> fill_rows(const fill::FillResult& fill) {
  std::vector<Row> rows;
  // what is not there goes without a row
  const auto add = [&](const char* name, auto volume) {
    if (volume.in_cubic_metres() != 0) rows.push_back({name, volume_text(volume)});
  };
  add("bedding", fill.bedding);
  add("tank", fill.tank);
  add("pipes", fill.pipe);
  add("special side fill", fill.special);
  add("side fill", fill.side);
  for (const auto& layer : fill.capping)
    rows.push_back({"capping " + std::to_string(layer.layer), volume_text(layer.placed)});
  add("ramp", fill.ramp);
  add("sump", fill.sump);
  add("trench", fill.trench);
  add("finish", fill.finish);
  rows.push_back({"sum of all fills", volume_text(fill.closure.sum)});
  rows.push_back({"cut", volume_text(fill.closure.cut)});
  add("    fill up to the floor", fill.fill_to_floor);
  add("    above the existing ground", fill.above_ground);
  add("    left open", fill.left_open);
  rows.push_back({"sum less hole", volume_text(fill.closure.difference, 6)});
  return rows;
}

std::vector<Table> order_tables(const fill::FillResult& fill) {
  return {material_table(fill), sheets_table(fill)};
}

std::vector<Table> lift_tables(const fill::FillResult& fill) {
  std::vector<Table> tables{lift_table(fill)};
  if (!fill.capping.empty()) tables.push_back(capping_table(fill));
  return tables;
}

std::vector<Table> proof_tables(const fill::FillResult& fill) {
  std::vector<Table> tables;
  if (!fill.layers.empty()) tables.push_back(layer_table(fill));
  if (fill.tests) tables.push_back(density_table(*fill.tests));
  if (fill.tests && !fill.tests->tests.empty()) tables.push_back(test_table(*fill.tests));
  if (!fill.lift_log.empty()) tables.push_back(log_table(fill));
  if (!fill.uplift.empty()) tables.push_back(uplift_table(fill));
  return tables;
}

std::vector<std::string> fill_verdicts(const fill::FillResult& fill) {
  std::vector<std::string> lines;
  for (const auto& layer : fill.layers)
    if (layer.verdict != Verdict::NotAsked)
      lines.push_back("Layer " + layer.name + ": " + words(layer.verdict));
  if (fill.tests && fill.tests->verdict != Verdict::NotAsked)
    lines.push_back(std::string("Density: ") + words(fill.tests->verdict));
  return lines;
}

}  // namespace squaredig::report
