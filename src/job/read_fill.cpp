// [fill], [water]
#include "job/files.h"
#include "job/tables.h"
#include "quantity/number_text.h"

namespace squaredig::job {
namespace {

Rule<fill::Roll> roll() {
  return made<fill::Roll>(two_lengths("width and length of a roll"), [](const auto& pair) {
    return fill::Roll{pair.first, pair.second};
  });
}

// A strip that laps by its whole width, or a roll by its whole length, never gets on.
void roll_beyond_lap(TableReader& rolls, std::string_view sheet, const std::optional<fill::Roll>& r,
                     Length lap) {
  if (!r || std::min(r->width, r->length) > lap) return;
  const std::string key(sheet);
  rolls.faults().add(rolls.place_of(sheet),
                     "a roll of " + key + " no wider or longer than its lap of " +
                         shortest(lap.in_millimetres()) + " mm",
                     "width and length above the lap",
                     "correct fill.roll." + key + " or fill." + key + "_lap_mm");
}

void read_rolls(TableReader& table, fill::FillInput& fill) {
  const Node* node = table.table("roll");
  if (!node) {
    if (!table.has("roll"))
      table.missing("roll", "{ geotextile = [width, length], geogrid = ..., liner = ... }");
    return;
  }
  TableReader rolls(*node, table.faults());
  fill.geotextile = rolls.may("geotextile", roll());
  fill.geogrid = rolls.may("geogrid", roll());
  fill.liner = rolls.may("liner", roll());
  roll_beyond_lap(rolls, "geotextile", fill.geotextile, fill.geotextile_lap);
  roll_beyond_lap(rolls, "geogrid", fill.geogrid, fill.geogrid_lap);
  roll_beyond_lap(rolls, "liner", fill.liner, fill.liner_lap);
  rolls.finish();
}

void read_densities(TableReader& table, fill::FillInput& fill) {
  const Node* node = table.table("t_per_m3");
  if (!node) return;
  TableReader densities(*node, table.faults());
  auto& placed_density = fill.placed_density.emplace();
  placed_density.bedding = densities.may("bedding", soil_density());
  placed_density.special = densities.may("special", soil_density());
  placed_density.side = densities.may("side", soil_density());
  placed_density.capping = densities.may("capping", soil_density());
  densities.finish();
}

// "ground", a level, or a surface file.
void read_finish(TableReader& table, FillTable& fill) {
  const Node* node = table.find("finish");
  if (!node) {
    table.missing("finish", "\"ground\", a level in metres, or a surface file");
  } else if (node->kind == Node::Kind::Number) {
    fill.settings.finish = table.may("finish", level()).value_or(Elevation{});
  } else if (node->kind != Node::Kind::Text || node->text != "ground") {
    fill.finish = table.may("finish", file());
  }
}

void read_layers(TableReader& table, FillTable& fill) {
  auto& s = fill.settings;
  fill.layers = table.each<NamedSurvey>("layers", named_survey);
  s.layer_tolerance = table.need_if(table.has("layers"), "tolerance_mm", tolerance_mm());
  std::vector<std::pair<std::string, Place>> names;
  for (const auto& layer : fill.layers) names.emplace_back(layer.name, layer.place);
  need_different_names(names, table.faults());
  fill.lift_log = table.may("lift_log", file());
  fill.tests = table.may("tests", file());
  s.density_ratio =
      table.need_if(table.has("tests"), "density_ratio_percent", percent({0, 120, Ends::Above}));
  s.density_standard =
      table.need_if(table.has("density_ratio_percent"), "density_standard",
                    one_of<fill::DensityStandard>({{"standard", fill::DensityStandard::Standard},
                                                   {"modified", fill::DensityStandard::Modified}}));
  for (const auto& [key, asked] :
       {std::pair{"density_mean_percent", &s.density_mean},
        std::pair{"density_characteristic_percent", &s.density_characteristic}}) {
    *asked = table.may(key, percent({0, 120, Ends::Above}));
    if (*asked && !table.has("density_ratio_percent") && !table.has("tests"))
      table.faults().add(table.place_of(key),
                         "fill." + std::string(key) + " without density_ratio_percent",
                         "the least ratio of a single test beside it", "add density_ratio_percent");
  }
}

}  // namespace

void read_fill(TableReader& root, Job& job) {
  const Node* node = root.table("fill");
  if (!node) return;
  TableReader table(*node, root.faults());
  auto& fill = job.fill.emplace();
  auto& s = fill.settings;
  s.place = table.place();
  s.side_lift = table.need("side_lift_mm", millimetres(kSomeThickness));
  s.special_height = table.need("special_height", metres({0, 100}));
  s.capping = table.need("capping", list_of(millimetres(kSomeThickness), 0));
  s.capping_beyond = table.need("capping_beyond", metres({0, 100}));
  s.geotextile_lap = table.need("geotextile_lap_mm", millimetres(kThickness));
  s.geogrid_lap = table.need("geogrid_lap_mm", millimetres(kThickness));
  s.liner_lap = table.need("liner_lap_mm", millimetres(kThickness));
  s.geogrid_layers = table.need("geogrid_layers", whole_number("layers", {0, 100}));
  read_rolls(table, s);
  read_finish(table, fill);
  s.compacted_per_bank =
      table.need("compacted_per_bank",
                 ratio("compacted volume per volume in the ground", {0, 3, Ends::Above}));
  read_densities(table, s);
  read_layers(table, fill);
  s.least_cover = table.may("least_cover", metres({0, 100}));
  table.finish();
}

void read_water(TableReader& root, Job& job) {
  const Node* node = root.table("water");
  if (!node) return;
  TableReader table(*node, root.faults());
  auto& water = job.water.emplace();
  water.place = table.place();
  water.level = table.need("level", level());
  water.cover_unit_weight =
      table.need("cover_unit_weight_kn_m3",
                 made<UnitWeight>(number("kilonewtons per cubic metre", {0, 50, Ends::Above}),
                                  UnitWeight::kilonewtons_per_cubic_metre));
  water.ratio_wanted = table.need("ratio_wanted", ratio("down over up", {0, 100, Ends::Above}));
  table.finish();
}

}  // namespace squaredig::job
