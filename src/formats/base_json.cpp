#include "formats/base_json.h"

#include "formats/json_internal.h"

namespace squaredig::formats {
namespace {

using base::Amount;
using base::Check;

Json amount_json(const Amount& amount, std::string_view name) {
  if (const auto* length = std::get_if<Length>(&amount)) return metres(*length, name);
  if (const auto* fall = std::get_if<Fall>(&amount)) return number(fall->in_percent(), name);
  return number(std::get<Ratio>(amount).in_percent(), name);
}

const char* unit_of(const Check& check) {
  const auto& known = check.value ? check.value : check.limit;
  return known && !std::holds_alternative<Length>(*known) ? "percent" : "m";
}

Json check_json(const Check& check) {
  Json object;
  object["name"] = check.name;
  object["verdict"] = words(check.verdict);
  object["value"] = or_null(check.value, amount_json, check.name);
  object["limit"] = or_null(check.limit, amount_json, check.name);
  object["uncertainty"] = or_null(check.uncertainty, amount_json, check.name);
  object["unit"] = unit_of(check);
  object["at"] = check.at ? place_in_array(*check.at) : Json(nullptr);
  object["words"] = check.words;
  return object;
}

Json checks_json(const std::vector<Check>& all) {
  Json checks = Json::array();
  for (const Check& check : all) checks.push_back(check_json(check));
  return checks;
}

Json not_asked(const base::BaseResult& result) {
  Json names = Json::array();
  for (const Check& check : result.checks)
    if (check.verdict == Verdict::NotAsked) names.push_back(check.name);
  return names;
}

Json deviation_json(const std::optional<base::Deviations>& deviation) {
  if (!deviation) return nullptr;
  const base::Deviations& d = *deviation;
  return {{"mean", millimetres(d.mean, "mean")},
          {"area_mean", or_null(d.area_mean, millimetres, "area_mean")},
          {"rms", millimetres(d.rms, "rms")},
          {"high", millimetres(d.high, "high")},
          {"low", millimetres(d.low, "low")}};
}

Json best_plane_json(const base::BaseResult& result) {
  if (!result.best_plane) return nullptr;
  const base::BestPlane& plane = *result.best_plane;
  return {{"level_at_a", number(plane.level_at_a.in_metres(), "level_at_a")},
          {"fall_percent", number(plane.fall.in_percent(), "fall_percent")},
          {"fall_bearing", number(plane.downhill.in_degrees(), "fall_bearing")}};
}

Json flatness_json(const base::BaseResult& result) {
  if (!result.flatness) return {{"least_squares", nullptr}, {"minimum_zone", nullptr}};
  return {{"least_squares", millimetres(result.flatness->least_squares, "least_squares")},
          {"minimum_zone", millimetres(result.flatness->minimum_zone, "minimum_zone")}};
}

Json shift_json(const std::optional<std::pair<Length, Length>>& shift) {
  if (!shift) return nullptr;
  return Json::array({millimetres(shift->first, "shift_that_fits_mm"),
                      millimetres(shift->second, "shift_that_fits_mm")});
}

Json inverts_json(const base::Skin& skin) {
  Json inverts = Json::array();
  for (const base::ShiftedInvert& invert : skin.inverts)
    inverts.push_back({{"name", invert.name},
                       {"planned", number(invert.planned.in_metres(), "planned")},
                       {"at_from", number(invert.at_from.in_metres(), "at_from")},
                       {"at_to", number(invert.at_to.in_metres(), "at_to")}});
  return inverts;
}

Json outline_json(const std::vector<std::vector<GridPoint>>& rings) {
  Json outline = Json::array();
  for (const auto& ring : rings) {
    Json corners = Json::array();
    for (const GridPoint& corner : ring) corners.push_back(place_in_array(corner));
    outline.push_back(std::move(corners));
  }
  return outline;
}

Json patches_json(const std::vector<base::SkinPatch>& patches, std::string_view) {
  Json list = Json::array();
  for (const base::SkinPatch& patch : patches) {
    Json one;
    one["area_m2"] = square_metres(patch.area, "area_m2");
    one["worst_mm"] = millimetres(patch.worst, "worst_mm");
    one["at"] = place_in_array(patch.at);
    one["along_ab"] = metres(patch.along_ab, "along_ab");
    one["across_ab"] = metres(patch.across_ab, "across_ab");
    one["outline"] = outline_json(patch.rings);
    list.push_back(std::move(one));
  }
  return list;
}

Json bedding_json(const base::BaseResult& result) {
  Json bedding;
  if (!result.skin) {
    for (const char* name :
         {"thinnest_mm", "thickest_mm", "volume_m3", "shift_that_fits_mm", "too_thin", "too_thick"})
      bedding[name] = nullptr;
    return bedding;
  }
  const base::Skin& skin = *result.skin;
  bedding["thinnest_mm"] = millimetres(skin.thinnest, "thinnest_mm");
  bedding["thinnest_at"] = place_in_array(skin.thinnest_at);
  bedding["thickest_mm"] = millimetres(skin.thickest, "thickest_mm");
  bedding["thickest_at"] = place_in_array(skin.thickest_at);
  bedding["volume_m3"] = cubic_metres(skin.volume, "volume_m3");
  bedding["wall_to_wall_m3"] = cubic_metres(skin.wall_to_wall, "wall_to_wall_m3");
  bedding["shift_that_fits_mm"] = shift_json(skin.shift_that_fits);
  bedding["shift_words"] = skin.shift_words;
  bedding["inverts"] = inverts_json(skin);
  bedding["too_thin"] = or_null(skin.too_thin, patches_json, "too_thin");
  bedding["too_thick"] = or_null(skin.too_thick, patches_json, "too_thick");
  return bedding;
}

Json straightedge_json(const base::BaseResult& result) {
  if (!result.straightedge) return nullptr;
  const base::RuleReading& rule = *result.straightedge;
  return {
      {"opening_mm", millimetres(rule.opening, "opening_mm")},
      {"from", place_in_array(rule.from)},
      {"to", place_in_array(rule.to)},
      {"touches", Json::array({place_in_array(rule.touch_from), place_in_array(rule.touch_to)})},
      {"worst", place_in_array(rule.worst)}};
}

Json stack_gap_json(const base::BaseResult& result) {
  if (!result.stack_gap || !result.stack_gap->widest) return nullptr;
  return millimetres(abs(result.stack_gap->widest->opening), "stack_gap_mm");
}

// Units are counted [column, row].
Json joint_json(const base::Joint& joint) {
  return {{"between", Json::array({joint.column, joint.row})},
          {"and", Json::array({joint.to_column, joint.to_row})},
          {"opens", joint.opening > Length{} ? "top" : "bottom"},
          {"from", place_in_array(joint.from)},
          {"to", place_in_array(joint.to)}};
}

Json stack_joint_json(const base::BaseResult& result) {
  if (!result.stack_gap || !result.stack_gap->widest) return nullptr;
  Json json = joint_json(*result.stack_gap->widest);
  json["columns"] = result.stack_gap->columns;
  json["rows"] = result.stack_gap->rows;
  json["on"] = result.stack_gap->on;
  return json;
}

Json stack_joints_json(const base::BaseResult& result) {
  if (!result.stack_gap || !result.stack_gap->widest) return nullptr;
  Json joints = Json::array();
  for (const base::Joint& joint : result.stack_gap->listed) {
    Json one = joint_json(joint);
    one["gap_mm"] = millimetres(abs(joint.opening), "gap_mm");
    joints.push_back(std::move(one));
  }
  return {{"over_mm", millimetres(result.stack_gap->listed_over, "over_mm")},
          {"of", result.stack_gap->joints.size()},
          {"joints", std::move(joints)}};
}

Json compaction_json(const base::BaseResult& result) {
  Json tests = Json::array();
  for (const base::CompactionOutcome& outcome : result.compaction) {
    Json test;
    test["layer"] = outcome.layer;
    put(test, outcome.at);
    test["percent"] = number(outcome.ratio.in_percent(), "percent");
    test["verdict"] = words(outcome.verdict);
    tests.push_back(std::move(test));
  }
  return tests;
}

Json hole_json(const base::HoleInSurvey& hole, std::string_view) {
  Json one;
  put(one, hole.at);
  one["along_ab"] = metres(hole.along_ab, "along_ab");
  one["across_ab"] = metres(hole.across_ab, "across_ab");
  one["radius"] = metres(hole.radius, "radius");
  return one;
}

Json holes_json(const base::BaseResult& result) {
  Json holes = Json::array();
  for (const base::HoleInSurvey& hole : result.holes) holes.push_back(hole_json(hole, "hole"));
  return holes;
}

Json patch_json(const base::RepairPatch& patch) {
  Json one;
  one["patch"] = patch.number;
  one["work"] = patch.work == base::Work::Trim ? "trim" : "make up";
  one["by"] = patch.by_hand ? "hand" : "machine";
  one["area_m2"] = square_metres(patch.area, "area_m2");
  one["beyond_m2"] = square_metres(patch.beyond, "beyond_m2");
  one["volume_m3"] = cubic_metres(patch.volume, "volume_m3");
  one["along_ab_from"] = metres(patch.along_ab.first, "along_ab_from");
  one["along_ab_to"] = metres(patch.along_ab.second, "along_ab_to");
  one["across_ab_from"] = metres(patch.across_ab.first, "across_ab_from");
  one["across_ab_to"] = metres(patch.across_ab.second, "across_ab_to");
  one["point"] = patch.deepest.point;
  one["along_ab"] = metres(patch.deepest.along_ab, "along_ab");
  one["across_ab"] = metres(patch.deepest.across_ab, "across_ab");
  one["move_mm"] = millimetres(patch.deepest.move, "move_mm");
  one["note"] = patch.note;
  return one;
}

Json repair_json(const base::BaseResult& result) {
  Json patches = Json::array();
  for (const base::RepairPatch& patch : result.repair) patches.push_back(patch_json(patch));
  return patches;
}

Json coverage_json(const base::BaseResult& result) {
  if (!result.reach) return nullptr;
  Json corners = Json::array(), sides = Json::array(), parts = Json::array();
  for (const base::CornerSeen& corner : result.reach->corners) {
    Json one{{"name", corner.name}};
    put(one, corner.at);
    one["nearest_m"] = metres(corner.nearest, "nearest_m");
    one["seen"] = corner.seen;
    corners.push_back(std::move(one));
  }
  for (const base::SideSeen& side : result.reach->sides)
    sides.push_back({{"name", side.name},
                     {"length_m", metres(side.length, "length_m")},
                     {"unseen_m", metres(side.unseen, "unseen_m")},
                     {"unseen_from", metres(side.from, "unseen_from")},
                     {"unseen_to", metres(side.to, "unseen_to")},
                     {"seen", side.unseen == Length{}}});
  for (const base::FarPart& part : result.reach->far_parts) {
    Json one{{"area_m2", square_metres(part.area, "area_m2")}};
    put(one, part.at);
    one["along_ab"] = metres(part.along_ab, "along_ab");
    one["across_ab"] = metres(part.across_ab, "across_ab");
    one["distance_m"] = metres(part.distance, "distance_m");
    parts.push_back(std::move(one));
  }
  return {{"limit_m", metres(result.reach->limit, "limit_m")},
          {"corners", std::move(corners)},
          {"sides", std::move(sides)},
          {"beyond_spacing", std::move(parts)}};
}

Json outliers_json(const base::BaseResult& result) {
  Json outliers = Json::array();
  for (const base::Outlier& outlier : result.outliers)
    outliers.push_back({{"point", outlier.point},
                        {"file", outlier.place.file},
                        {"line", outlier.place.line},
                        {"by_mm", millimetres(outlier.by, "by_mm")},
                        {"contradicted_by", outlier.contradicted_by}});
  return outliers;
}

Json before_json(const base::BaseResult& result) {
  if (!result.before) return nullptr;
  const base::BeforeRepair& before = *result.before;
  Json json;
  json["surveyed"] = before.surveyed ? Json(*before.surveyed) : Json(nullptr);
  json["verdict"] = words(before.verdict);
  json["checks"] = checks_json(before.checks);
  json["deviation_mm"] = deviation_json(before.deviation);
  json["trim_m3"] = or_null(before.trim, cubic_metres<BankVolume>, "trim_m3");
  json["make_up_m3"] = or_null(before.make_up, cubic_metres<Volume>, "make_up_m3");
  json["fixed"] = before.fixed;
  json["not_fixed"] = before.not_fixed;
  json["spoiled"] = before.spoiled;
  json["repair"] = Json::array();
  for (const base::PatchAfter& after : before.patches) {
    Json one = patch_json(after.patch);
    one["after"] = after.verdict ? Json{{"verdict", words(*after.verdict)},
                                        {"point", after.point},
                                        {"deviation_mm", millimetres(after.deviation, "after")}}
                                 : Json(nullptr);
    json["repair"].push_back(std::move(one));
  }
  return json;
}

}  // namespace

std::string base_json(const base::BaseResult& result, std::string_view version) {
  Json json = head_json(result.head, version);
  json["surveyed"] = result.surveyed ? Json(*result.surveyed) : Json(nullptr);
  json["verdict"] = words(result.verdict);
  json["not_asked"] = not_asked(result);
  json["checks"] = checks_json(result.checks);
  json["points_judged"] = result.points.size();
  json["points_set_aside"] = result.aside.size();
  json["deviation_mm"] = deviation_json(result.deviation);
  json["bedding_top_mm"] = deviation_json(result.bedding_top);
  json["best_plane"] = best_plane_json(result);
  json["flatness_mm"] = flatness_json(result);
  json["bedding"] = bedding_json(result);
  json["floor_area_m2"] = square_metres(result.floor_area, "floor_area_m2");
  json["measured_area_m2"] = or_null(result.measured_area, square_metres, "measured_area_m2");
  json["trim_m3"] = or_null(result.trim, cubic_metres<BankVolume>, "trim_m3");
  json["make_up_m3"] = or_null(result.make_up, cubic_metres<Volume>, "make_up_m3");
  json["largest_hole_m"] = or_null(result.largest_hole, metres, "largest_hole_m");
  json["largest_hole"] = or_null(result.widest_hole, hole_json, "largest_hole");
  json["coverage"] = coverage_json(result);
  json["straightedge"] = straightedge_json(result);
  json["stack_gap_mm"] = stack_gap_json(result);
  json["stack_joint"] = stack_joint_json(result);
  json["stack_joints"] = stack_joints_json(result);
  json["compaction"] = compaction_json(result);
  json["measure_here"] = holes_json(result);
  json["repair"] = repair_json(result);
  json["outliers"] = outliers_json(result);
  json["verdict_without_outliers"] = result.verdict_without_outliers
                                         ? Json(words(*result.verdict_without_outliers))
                                         : Json(nullptr);
  json["before"] = before_json(result);
  return json_text(json);
}

}  // namespace squaredig::formats
