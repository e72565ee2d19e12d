#include "formats/dig_json.h"

#include "formats/json_internal.h"

namespace squaredig::formats {
namespace {

Json levels_json(const dig::DigResult& result) {
  Json rungs = Json::array();
  for (const auto& rung : result.levels)
    rungs.push_back({{"name", rung.name},
                     {"level", number(rung.level.in_metres(), "level")},
                     {"at", rung.at},
                     {"staff_reading", or_null(rung.staff_reading, metres, "staff_reading")}});
  return rungs;
}

Json closure_json(const dig::VolumeClosure& closure) {
  return {{"cells_sum_m3", cubic_metres(closure.cells_sum, "cells_sum_m3")},
          {"second_method", closure.second_method},
          {"second_method_m3", cubic_metres(closure.second, "second_method_m3")},
          {"difference_m3", cubic_metres(closure.difference, "difference_m3")},
          {"open_m2", square_metres(closure.open, "open_m2")}};
}

Json comparison_json(const dig::Comparison& comparison) {
  return {{"end_area_m3", cubic_metres(comparison.end_area, "end_area_m3")},
          {"end_area_spacing_m", metres(comparison.end_area_spacing, "end_area_spacing_m")},
          {"prismoidal_m3", cubic_metres(comparison.prismoidal, "prismoidal_m3")},
          {"grid_m3", cubic_metres(comparison.grid, "grid_m3")},
          {"grid_spacing_m", metres(comparison.grid_spacing, "grid_spacing_m")}};
}

Json cells_json(const dig::CellGrid& grid) {
  return {{"size_m", metres(grid.size, "size_m")},
          {"count", grid.cells.size()},
          {"columns", grid.columns},
          {"rows", grid.rows},
          {"first_column", grid.first_column},
          {"first_row", grid.first_row},
          {"origin", place_in_array(grid.origin)},
          {"bearing_deg", number(grid.bearing.in_degrees(), "bearing_deg")}};
}

Json nearby_json(const std::vector<dig::Nearby>& all) {
  Json list = Json::array();
  for (const auto& nearby : all) {
    Json one = {{"kind", nearby.kind}, {"string", nearby.string}};
    put(one, nearby.at);
    one["distance_m"] = metres(nearby.distance, "distance_m");
    one["wanted_m"] = or_null(nearby.wanted, metres, "wanted_m");
    one["exposed_m"] = or_null(nearby.exposed, metres, "exposed_m");
    one["level"] = nearby.level ? number(nearby.level->in_metres(), "level") : Json(nullptr);
    list.push_back(std::move(one));
  }
  return list;
}

Json faces_json(const std::vector<dig::VerticalFace>& all) {
  Json list = Json::array();
  for (const auto& face : all) {
    Json one = {{"face", face.name}, {"height_m", metres(face.height, "height_m")}};
    put(one, face.at);
    list.push_back(std::move(one));
  }
  return list;
}

Json batters_json(const std::vector<dig::SideBatter>& all) {
  Json list = Json::array();
  for (const auto& [side, batter] : all)
    list.push_back({{"side", side},
                    {"batter", batter.text()},
                    {"degrees", number(batter.above_horizontal().in_degrees(), "degrees")}});
  return list;
}

Json room_json(const std::vector<dig::SideRoom>& all) {
  Json list = Json::array();
  for (const auto& room : all) {
    Json one = {{"side", room.side},
                {"available_m", or_null(room.available, metres, "available_m")},
                {"needed_m", metres(room.needed, "needed_m")},
                {"string", room.available ? Json(room.string) : Json(nullptr)}};
    put(one, room.at);
    list.push_back(std::move(one));
  }
  return list;
}

Json progress_json(const dig::ProgressResult& survey) {
  Json plan = Json::array();
  for (const auto& cell : survey.over_dig_plan)
    plan.push_back({{"cell", cell.cell},
                    {"over_dig_bank_m3", cubic_metres(cell.volume, "over_dig_bank_m3")},
                    {"area_m2", square_metres(cell.area, "area_m2")}});
  Json json = {{"name", survey.name},
               {"surveyed_m2", square_metres(survey.surveyed, "surveyed_m2")}};
  const auto put_volume = [&](const std::string& what, BankVolume bank,
                              const std::optional<BankVolume>& sigma,
                              const std::optional<LooseVolume>& loose) {
    json[what + "_bank_m3"] = cubic_metres(bank, what);
    json[what + "_bank_sigma_m3"] = or_null(sigma, cubic_metres<BankVolume>, what);
    json[what + "_loose_m3"] = or_null(loose, cubic_metres<LooseVolume>, what);
  };
  put_volume("dug", survey.dug, survey.dug_sigma, survey.dug_loose);
  put_volume("remaining", survey.remaining, survey.remaining_sigma, survey.remaining_loose);
  put_volume("over_dig", survey.over_dig, survey.over_dig_sigma, survey.over_dig_loose);
  json["over_dig_m2"] = square_metres(survey.over_dig_area, "over_dig_m2");
  json["over_dig_deepest_m"] = metres(survey.deepest_over_dig, "over_dig_deepest_m");
  json["over_dig_deepest_at"] =
      survey.deepest_at ? place_in_array(*survey.deepest_at) : Json(nullptr);
  json["over_dig_plan"] = std::move(plan);
  return json;
}

Json ring_json(const std::vector<GridPosition>& ring) {
  Json corners = Json::array();
  for (const auto& corner : ring) corners.push_back(place_in_array(corner));
  return corners;
}

Json rings_json(const std::vector<std::vector<GridPosition>>& all) {
  Json rings = Json::array();
  for (const auto& ring : all) rings.push_back(ring_json(ring));
  return rings;
}

Json spacing_json(const std::optional<dig::SpacingEffect>& spacing) {
  if (!spacing) return nullptr;
  return {{"points", spacing->points},
          {"method", "each point under the dig left out in turn, its height read from the others"},
          {"rms_m", metres(spacing->rms, "rms_m")},
          {"mean_m", metres(spacing->mean, "mean_m")},
          {"effect_m3", cubic_metres(spacing->effect, "effect_m3")}};
}

void put_volumes(Json& json, const dig::DigResult& result) {
  json["cut_bank_m3"] = cubic_metres(result.cut, "cut_bank_m3");
  const auto sigma = [&](auto member) {
    return result.uncertainty ? cubic_metres((*result.uncertainty).*member, "cut_bank_sigma_m3")
                              : Json(nullptr);
  };
  json["cut_bank_sigma_m3"] = sigma(&dig::Uncertainty::sigma);
  json["cut_bank_sigma_points_m3"] = sigma(&dig::Uncertainty::from_points);
  json["cut_bank_sigma_common_m3"] = sigma(&dig::Uncertainty::from_common);
  json["spacing"] = spacing_json(result.spacing);
  json["cut_loose_m3"] = or_null(result.loose, cubic_metres<LooseVolume>, "cut_loose_m3");
  json["hauled_loose_m3"] = or_null(result.hauled, cubic_metres<LooseVolume>, "hauled_loose_m3");
  const auto loads = [](const std::optional<std::int64_t>& n) {
    return n ? Json(*n) : Json(nullptr);
  };
  json["truckloads"] = loads(result.truckloads);
  json["truckloads_by_volume"] = loads(result.truckloads_by_volume);
  json["truckloads_by_mass"] = loads(result.truckloads_by_mass);
  json["topsoil_bank_m3"] = or_null(result.topsoil, cubic_metres<BankVolume>, "topsoil_bank_m3");
  json["fill_to_floor_m3"] = cubic_metres(result.fill_to_floor, "fill_to_floor_m3");
  json["fill_to_floor_area_m2"] = square_metres(result.fill_to_floor_area, "fill_to_floor_area_m2");
}

void put_measures(Json& json, const dig::DigResult& result) {
  json["floor_area_m2"] = square_metres(result.floor_area, "floor_area_m2");
  json["crest_area_m2"] = square_metres(result.crest_area, "crest_area_m2");
  json["crest_length_m"] = metres(result.crest_length, "crest_length_m");
  json["deepest_cut_m"] = metres(result.deepest_cut, "deepest_cut_m");
  json["deepest_at"] = place_in_array(result.deepest_at);
  json["mean_cut_m"] = metres(result.mean_cut, "mean_cut_m");
  json["stop_level_at_a"] = result.stop_level_at_a
                                ? number(result.stop_level_at_a->in_metres(), "stop_level_at_a")
                                : Json(nullptr);
  Json parts = Json::array();
  for (const auto& part : result.by_part)
    parts.push_back({{"part", part.part}, {"cut_bank_m3", cubic_metres(part.cut, "cut_bank_m3")}});
  json["by_part"] = std::move(parts);
}

}  // namespace

std::string dig_json(const dig::DigResult& result, std::string_view version) {
  Json json = head_json(result.head, version);
  json["levels"] = levels_json(result);
  put_volumes(json, result);
  put_measures(json, result);
  json["closure"] = closure_json(result.closure);
  json["comparison"] = comparison_json(result.comparison);
  json["batters"] = batters_json(result.batters);
  json["batter_given_by"] = result.batter_given_by ? Json(*result.batter_given_by) : Json(nullptr);
  json["vertical_faces"] = faces_json(result.vertical_faces);
  json["clashes"] = nearby_json(result.clashes);
  json["nearby"] = nearby_json(result.nearby);
  json["room"] = room_json(result.room);
  json["cells"] = cells_json(result.grid);
  json["toe"] = ring_json(result.toe);
  json["crest"] = rings_json(result.crest);
  json["influence_line"] = rings_json(result.surroundings.influence_line);
  Json progress = Json::array();
  for (const auto& survey : result.progress) progress.push_back(progress_json(survey));
  json["progress"] = std::move(progress);
  return json_text(json);
}

}  // namespace squaredig::formats
