#include "formats/fill_json.h"

#include "formats/csv_text.h"
#include "formats/json_internal.h"
#include "quantity/day_text.h"

namespace squaredig::formats {
namespace {

Json lifts_json(const fill::FillResult& result) {
  Json lifts = Json::array();
  for (const auto& lift : result.side_fill)
    lifts.push_back({{"lift", lift.lift},
                     {"from_level", number(lift.from.in_metres(), "from_level")},
                     {"to_level", number(lift.to.in_metres(), "to_level")},
                     {"compacted_m3", cubic_metres(lift.placed, "compacted_m3")},
                     {"bank_m3", cubic_metres(lift.in_the_ground, "bank_m3")},
                     {"loose_m3", or_null(lift.loose, cubic_metres<LooseVolume>, "loose_m3")},
                     {"special", lift.special}});
  return lifts;
}

Json capping_json(const fill::FillResult& result) {
  Json layers = Json::array();
  for (const auto& layer : result.capping)
    layers.push_back({{"layer", layer.layer},
                      {"from_level", number(layer.from.in_metres(), "from_level")},
                      {"to_level", number(layer.to.in_metres(), "to_level")},
                      {"area_m2", square_metres(layer.area, "area_m2")},
                      {"compacted_m3", cubic_metres(layer.placed, "compacted_m3")},
                      {"bank_m3", cubic_metres(layer.in_the_ground, "bank_m3")},
                      {"loose_m3", or_null(layer.loose, cubic_metres<LooseVolume>, "loose_m3")}});
  return layers;
}

Json sheet_json(const fill::Sheet& sheet) {
  return {{"net_m2", square_metres(sheet.net, "net_m2")},
          {"with_laps_m2", or_null(sheet.with_laps, square_metres, "with_laps_m2")},
          {"strips", sheet.strips ? Json(*sheet.strips) : Json(nullptr)},
          {"rolls", sheet.rolls ? Json(*sheet.rolls) : Json(nullptr)},
          {"ordered_m2", or_null(sheet.ordered, square_metres, "ordered_m2")},
          {"waste_m2", or_null(sheet.waste, square_metres, "waste_m2")},
          {"laid", sheet.laid}};
}

Json layer_points_json(const fill::LayerBuilt& layer) {
  Json points = Json::array();
  for (const auto& p : layer.points)
    points.push_back({{"point", p.point},
                      {"easting", number(p.at.at.easting.in_metres(), "easting")},
                      {"northing", number(p.at.at.northing.in_metres(), "northing")},
                      {"height", number(p.at.height.in_metres(), "height")},
                      {"thickness_mm", millimetres(p.thickness, "thickness_mm")}});
  return points;
}

Json layers_json(const fill::FillResult& result) {
  Json layers = Json::array();
  for (const auto& layer : result.layers)
    layers.push_back({{"name", layer.name},
                      {"mean_thickness_mm", millimetres(layer.mean_thickness, "mean_thickness_mm")},
                      {"thinnest_mm", millimetres(layer.thinnest, "thinnest_mm")},
                      {"thinnest_at", place_in_array(layer.thinnest_at)},
                      {"thickest_mm", millimetres(layer.thickest, "thickest_mm")},
                      {"thickest_at", place_in_array(layer.thickest_at)},
                      {"planned_mm", or_null(layer.planned, millimetres, "planned_mm")},
                      {"tolerance_mm", or_null(layer.tolerance, millimetres, "tolerance_mm")},
                      {"uncertainty_mm", or_null(layer.uncertainty, millimetres, "uncertainty_mm")},
                      {"area_m2", square_metres(layer.area, "area_m2")},
                      {"wanted_area_m2", square_metres(layer.wanted_area, "wanted_area_m2")},
                      {"volume_m3", cubic_metres(layer.volume, "volume_m3")},
                      {"verdict", words(layer.verdict)},
                      {"points", layer_points_json(layer)}});
  return layers;
}

Json percent(Ratio r, std::string_view name) { return number(r.in_percent(), name); }

Json tested_layers_json(const fill::DensityTests& tests) {
  Json layers = Json::array();
  for (const auto& layer : tests.layers)
    layers.push_back({{"layer", layer.layer},
                      {"count", layer.count},
                      {"mean_percent", percent(layer.mean, "mean_percent")},
                      {"least_percent", percent(layer.least, "least_percent")},
                      {"characteristic_percent",
                       or_null(layer.characteristic, percent, "characteristic_percent")},
                      {"untested_radius_m", metres(layer.untested, "untested_radius_m")},
                      {"untested_at", place_in_array(layer.untested_at)},
                      {"along_ab", metres(layer.along_ab, "along_ab")},
                      {"across_ab", metres(layer.across_ab, "across_ab")},
                      {"verdict", words(layer.verdict)}});
  return layers;
}

Json test_rows_json(const fill::DensityTests& tests) {
  Json rows = Json::array();
  for (const auto& test : tests.tests)
    rows.push_back({{"layer", test.layer},
                    {"easting", number(test.at.easting.in_metres(), "easting")},
                    {"northing", number(test.at.northing.in_metres(), "northing")},
                    {"file", test.place.file},
                    {"line", test.place.line},
                    {"percent", percent(test.ratio, "percent")},
                    {"verdict", words(test.verdict)}});
  return rows;
}

Json tests_json(const fill::FillResult& result) {
  if (!result.tests)
    return {{"mean_percent", nullptr}, {"least_percent", nullptr}, {"verdict", "not asked"}};
  const auto& tests = *result.tests;
  return {
      {"count", tests.count},
      {"wanted_percent", percent(tests.wanted, "wanted_percent")},
      {"wanted_mean_percent", or_null(tests.wanted_mean, percent, "wanted_mean_percent")},
      {"wanted_characteristic_percent",
       or_null(tests.wanted_characteristic, percent, "wanted_characteristic_percent")},
      {"mean_percent", percent(tests.mean, "mean_percent")},
      {"least_percent", percent(tests.least, "least_percent")},
      {"characteristic_percent", or_null(tests.characteristic, percent, "characteristic_percent")},
      {"standard", tests.standard},
      {"rounding", tests.rounding},
      {"failed", tests.failed},
      {"verdict", words(tests.verdict)},
      {"layers", tested_layers_json(tests)},
      {"tests", test_rows_json(tests)}};
}

Json lift_log_json(const fill::FillResult& result) {
  Json steps = Json::array();
  for (const auto& step : result.lift_log)
    steps.push_back({{"lift", step.lift},
                     {"side", step.side},
                     {"date", day_text(step.date)},
                     {"above_underside_m", metres(step.above_underside, "above_underside_m")},
                     {"opposite", step.opposite},
                     {"ahead_m", metres(step.ahead, "ahead_m")},
                     {"too_far", step.too_far}});
  return steps;
}

Json uplift_inputs_json(const fill::FillResult& result) {
  if (!result.uplift_inputs) return nullptr;
  const auto& in = *result.uplift_inputs;
  return {{"water_level", number(in.water.in_metres(), "water_level")},
          {"cover_unit_weight_kn_m3",
           number(in.cover.in_kilonewtons_per_cubic_metre(), "cover_unit_weight_kn_m3")},
          {"ratio_wanted", number(in.wanted.value(), "ratio_wanted")},
          {"empty_weight_kn", number(in.tank.in_kilonewtons(), "empty_weight_kn")}};
}

Json uplift_json(const fill::FillResult& result) {
  Json stages = Json::array();
  for (const auto& stage : result.uplift)
    stages.push_back({{"stage", stage.stage},
                      {"up_kn", number(stage.up.in_kilonewtons(), "up_kn")},
                      {"down_kn", number(stage.down.in_kilonewtons(), "down_kn")},
                      {"ratio", stage.ratio ? number(*stage.ratio, "ratio") : Json(nullptr)}});
  return stages;
}

Json materials_json(const fill::FillResult& result) {
  Json list = Json::array();
  for (const auto& m : result.materials)
    list.push_back({{"material", m.what},
                    {"compacted_m3", cubic_metres(m.placed, "compacted_m3")},
                    {"bank_m3", cubic_metres(m.in_the_ground, "bank_m3")},
                    {"loose_m3", or_null(m.loose, cubic_metres<LooseVolume>, "loose_m3")},
                    {"tonnes", m.tonnes ? number(*m.tonnes, "tonnes") : Json(nullptr)}});
  return list;
}

void put_volumes(Json& json, const fill::FillResult& result) {
  json["bedding_m3"] = cubic_metres(result.bedding, "bedding_m3");
  json["tank_m3"] = cubic_metres(result.tank, "tank_m3");
  json["pipe_m3"] = cubic_metres(result.pipe, "pipe_m3");
  json["side_fill"] = lifts_json(result);
  json["special_m3"] = cubic_metres(result.special, "special_m3");
  json["side_fill_m3"] = cubic_metres(result.special + result.side, "side_fill_m3");
  json["capping"] = capping_json(result);
  json["ramp_m3"] = cubic_metres(result.ramp, "ramp_m3");
  json["sump_m3"] = cubic_metres(result.sump, "sump_m3");
  json["trench_m3"] = cubic_metres(result.trench, "trench_m3");
  json["finish_m3"] = cubic_metres(result.finish, "finish_m3");
  json["fill_to_floor_m3"] = cubic_metres(result.fill_to_floor, "fill_to_floor_m3");
  json["above_ground_m3"] = cubic_metres(result.above_ground, "above_ground_m3");
  json["left_open_m3"] = cubic_metres(result.left_open, "left_open_m3");
  json["closure"] = {{"cut_m3", cubic_metres(result.closure.cut, "cut_m3")},
                     {"sum_m3", cubic_metres(result.closure.sum, "sum_m3")},
                     {"difference_m3", cubic_metres(result.closure.difference, "difference_m3")}};
}

}  // namespace

std::string fill_json(const fill::FillResult& result, std::string_view version) {
  Json json = head_json(result.head, version);
  put_volumes(json, result);
  json["materials"] = materials_json(result);
  json["factors"] = result.factors;
  json["geotextile"] = sheet_json(result.geotextile);
  json["geogrid"] = sheet_json(result.geogrid);
  json["liner"] = sheet_json(result.liner);
  json["layers"] = layers_json(result);
  json["tests"] = tests_json(result);
  json["lift_log"] = lift_log_json(result);
  json["uplift"] = uplift_json(result);
  json["uplift_inputs"] = uplift_inputs_json(result);
  json["uplift_definition"] = result.uplift_definition;
  json["cover_wanted_m"] = or_null(result.cover_wanted, metres, "cover_wanted_m");
  json["least_cover_wanted_m"] = or_null(result.least_cover_wanted, metres, "least_cover_wanted_m");
  json["least_cover_found_m"] = or_null(result.least_cover_found, metres, "least_cover_found_m");
  return json_text(json);
}

std::string quantities_csv(const fill::FillResult& result) {
  CsvText csv({"item", "compacted_m3", "bank_m3", "loose_m3", "tonnes", "net_m2", "with_laps_m2",
               "strips", "rolls"});
  const auto loose = [](const std::optional<LooseVolume>& v) {
    return v ? std::optional(v->in_cubic_metres()) : std::nullopt;
  };
  for (const auto& m : result.materials) {
    csv.word(m.what).number(m.placed.in_cubic_metres()).number(m.in_the_ground.in_cubic_metres());
    csv.number(loose(m.loose)).number(m.tonnes).blank().blank().blank().blank().end_row();
  }
  const auto sheet = [&](const char* name, const fill::Sheet& s) {
    csv.word(name).blank().blank().blank().blank().number(s.net.in_square_metres());
    if (!s.with_laps) return csv.blank().blank().blank().end_row();
    csv.number(s.with_laps->in_square_metres()).count(*s.strips).count(*s.rolls).end_row();
  };
  sheet("geotextile", result.geotextile);
  sheet("geogrid", result.geogrid);
  sheet("liner", result.liner);
  return csv.take();
}

}  // namespace squaredig::formats
