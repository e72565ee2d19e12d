#include "formats/pegs_json.h"

#include "formats/json_internal.h"

namespace squaredig::formats {
namespace {

using pegs::Check;
using pegs::NamedLength;
using pegs::PegsResult;

template <class Items, class AsJson>
Json list(const Items& items, AsJson as_json) {
  Json array = Json::array();
  for (const auto& item : items) array.push_back(as_json(item));
  return array;
}

Json level(Elevation v, std::string_view name) { return number(v.in_metres(), name); }
Json ratio(Ratio v, std::string_view name) { return number(v.value(), name); }
Json degrees(Angle v, std::string_view name) { return number(v.in_degrees(), name); }

void put_geographic(Json& object, const std::optional<pegs::LatLong>& at) {
  if (!at) return;
  object["latitude_deg"] = degrees(at->latitude, "latitude_deg");
  object["longitude_deg"] = degrees(at->longitude, "longitude_deg");
}

Json grid_lengths(const std::vector<NamedLength>& lengths, std::string_view name) {
  return list(lengths, [&](const NamedLength& l) { return metres(l.grid, name); });
}

Json named_lengths(const std::vector<NamedLength>& lengths) {
  return list(lengths, [](const NamedLength& l) {
    return Json{{"name", l.name},
                {"grid_m", metres(l.grid, "grid_m")},
                {"ground_m", metres(l.ground, "ground_m")}};
  });
}

Json corner_json(const pegs::Corner& c) {
  Json object{{"name", c.name}};
  put(object, c.at);
  object["dig_level"] = level(c.dig_level, "dig_level");
  object["interior_angle_deg"] = degrees(c.interior_angle, "interior_angle_deg");
  object["crossing_angle_deg"] = degrees(c.crossing_angle, "crossing_angle_deg");
  object["sigma_per_peg_sigma"] = or_null(c.sigma_per_peg_sigma, ratio, "sigma_per_peg_sigma");
  object["recovery"] = list(c.recovery, [](const pegs::Corner::Recovery& r) {
    return Json{{"peg", r.peg},
                {"grid_m", metres(r.grid, "grid_m")},
                {"ground_m", metres(r.ground, "ground_m")}};
  });
  put_geographic(object, c.geographic);
  return object;
}

Json peg_json(const pegs::ReferencePeg& p) {
  Json object{{"name", p.name}};
  put(object, p.at);
  object["ground_height"] = or_null(p.ground, level, "ground_height");
  object["string_line"] = p.string_line;
  object["beyond_corner_m"] = metres(p.beyond_corner, "beyond_corner_m");
  object["clear_of_crest_m"] = metres(p.clear_of_crest, "clear_of_crest_m");
  object["nearest_crest_m"] = metres(p.nearest_crest, "nearest_crest_m");
  object["corner"] = p.corner;
  object["side"] = p.side;
  object["placed_by"] = pegs::words(p.placed_by);
  object["cut_to_dig_level_m"] = or_null(p.cut, metres, "cut_to_dig_level_m");
  object["staff_reading_m"] = or_null(p.staff_reading, metres, "staff_reading_m");
  put_geographic(object, p.geographic);
  return object;
}

Json scale_json(const PegsResult& result) {
  const pegs::ScaleHere& s = result.scale;
  Json object{{"grid", s.grid_name},
              {"combined", ratio(s.combined, "combined")},
              {"point_scale", or_null(s.point_scale, ratio, "point_scale")},
              {"elevation_factor", or_null(s.elevation, ratio, "elevation_factor")},
              {"mean_radius_m", or_null(s.mean_radius, metres, "mean_radius_m")},
              {"convergence_deg", or_null(s.convergence, degrees, "convergence_deg")},
              {"words", s.words},
              {"operation", nullptr}};
  if (const auto& way = result.geographic_way)
    object["operation"] = {{"name", way->operation},
                           {"accuracy_m", metres(way->accuracy, "accuracy_m")},
                           {"software", way->software}};
  return object;
}

Json pipe_json(const pegs::PipePoint& p) {
  Json object{{"name", p.name}};
  put(object, p.at);
  object["invert"] = level(p.invert, "invert");
  object["side"] = p.side;
  object["along_m"] = metres(p.along, "along_m");
  object["obvert"] = level(p.obvert, "obvert");
  object["above_base_m"] = metres(p.above_base, "above_base_m");
  object["from_peg"] = p.peg;
  object["along_string_m"] = metres(p.along_string, "along_string_m");
  return object;
}

Json shaft_json(const pegs::ShaftPoint& s) {
  Json object{{"name", s.name}};
  put(object, s.at);
  object["cover_level"] = level(s.cover_level, "cover_level");
  object["above_top_m"] = metres(s.above_top, "above_top_m");
  object["from_peg"] = s.peg;
  object["along_string_m"] = metres(s.along_string, "along_string_m");
  object["square_to_string_m"] = metres(s.square_to_string, "square_to_string_m");
  return object;
}

Json polar_json(const pegs::PolarRow& r) {
  return {{"station", r.station},
          {"backsight", r.backsight.empty() ? Json(nullptr) : Json(r.backsight)},
          {"point", r.point},
          {"bearing_deg", number(r.bearing.in_degrees(), "bearing_deg")},
          {"turn_deg", or_null(r.turn, degrees, "turn_deg")},
          {"distance_m", metres(r.ground_distance, "distance_m")},
          {"grid_distance_m", metres(r.grid_distance, "grid_distance_m")},
          {"height_difference_m", or_null(r.height_difference, metres, "height_difference_m")},
          {"check_from", r.check_from.empty() ? Json(nullptr) : Json(r.check_from)},
          {"check_distance_m", or_null(r.check_distance, metres, "check_distance_m")},
          {"staff_reading_m", or_null(r.staff_reading, metres, "staff_reading_m")}};
}

Json checks_json(const std::vector<Check>& checks) {
  return list(checks, [](const Check& c) {
    return Json{{"name", c.name},
                {"verdict", words(c.verdict)},
                {"value_mm", millimetres(c.value, "value_mm")},
                {"limit_mm", or_null(c.limit, millimetres, "limit_mm")},
                {"uncertainty_mm", or_null(c.uncertainty, millimetres, "uncertainty_mm")}};
  });
}

Json delta_json(const pegs::PegDelta& d) {
  Json object{{"name", d.name}};
  put(object, d.measured);
  object["delta_e_mm"] = millimetres(d.delta_e, "delta_e_mm");
  object["delta_n_mm"] = millimetres(d.delta_n, "delta_n_mm");
  object["along_mm"] = millimetres(d.along, "along_mm");
  object["across_mm"] = millimetres(d.across, "across_mm");
  return object;
}

Json remade_json(const pegs::RemadeCorner& c) {
  Json object{{"name", c.name}};
  put(object, c.at);
  object["delta_e_mm"] = millimetres(c.delta_e, "delta_e_mm");
  object["delta_n_mm"] = millimetres(c.delta_n, "delta_n_mm");
  object["off_mm"] = millimetres(c.off, "off_mm");
  return object;
}

Json as_set_json(const pegs::AsSetResult& r) {
  const auto seconds = [](Angle a, std::string_view name) { return number(a.in_seconds(), name); };
  const auto move = [](const pegs::PegMove& m) {
    return Json{{"name", m.name},
                {"along_mm", millimetres(m.along, "along_mm")},
                {"across_mm", millimetres(m.across, "across_mm")}};
  };
  return {{"verdict", words(r.verdict)},
          {"points", list(r.points, delta_json)},
          {"corners", list(r.corners, remade_json)},
          {"sides_m", grid_lengths(r.sides, "sides_m")},
          {"diagonals_m", grid_lengths(r.diagonals, "diagonals_m")},
          {"sides", named_lengths(r.sides)},
          {"diagonals", named_lengths(r.diagonals)},
          {"diagonal_difference_mm",
           or_null(r.diagonal_difference, millimetres, "diagonal_difference_mm")},
          {"out_of_square_sec", or_null(r.out_of_square, seconds, "out_of_square_sec")},
          {"move", list(r.moves, move)},
          {"move_words", r.moves_words},
          {"checks", checks_json(r.checks)}};
}

Json tape_json(const pegs::TapeResult& r) {
  const auto maybe = [](const std::optional<Length>& l) {
    return or_null(l, metres, "taped length");
  };
  const auto line = [](const pegs::TapedLine& l) {
    return Json{{"name", l.name},
                {"taped_m", metres(l.taped, "taped_m")},
                {"horizontal_m", metres(l.horizontal, "horizontal_m")},
                {"design_m", metres(l.design, "design_m")},
                {"by_the_others_m", or_null(l.by_the_others, metres, "by_the_others_m")}};
  };
  return {{"verdict", words(r.verdict)},
          {"sides_m", list(r.sides, maybe)},
          {"diagonals_m", list(r.diagonals, maybe)},
          {"diagonal_difference_mm",
           or_null(r.diagonal_difference, millimetres, "diagonal_difference_mm")},
          {"likely_wrong", r.likely_wrong ? Json(*r.likely_wrong) : Json(nullptr)},
          {"likely_wrong_by_mm", or_null(r.likely_wrong_by, millimetres, "likely_wrong_by_mm")},
          {"words", r.words},
          {"lines", list(r.lines, line)},
          {"checks", checks_json(r.checks)}};
}

}  // namespace

std::string pegs_json(const PegsResult& result, std::string_view version) {
  Json object = head_json(result.head, version);
  object["corners"] = list(result.corners, corner_json);
  object["reference"] = list(result.reference, peg_json);
  object["sides_m"] = grid_lengths(result.sides, "sides_m");
  object["diagonals_m"] = grid_lengths(result.diagonals, "diagonals_m");
  object["sides"] = named_lengths(result.sides);
  object["diagonals"] = named_lengths(result.diagonals);
  object["combined_scale_factor"] = ratio(result.scale.combined, "combined_scale_factor");
  object["scale"] = scale_json(result);
  object["pipes"] = list(result.pipes, pipe_json);
  object["shafts"] = list(result.shafts, shaft_json);
  object["backsight_check"] = list(result.backsight_checks, polar_json);
  object["polar"] = list(result.polar, polar_json);
  object["as_set"] = result.as_set ? as_set_json(*result.as_set) : Json(nullptr);
  object["tape"] = result.tape ? tape_json(*result.tape) : Json(nullptr);
  return json_text(object);
}

}  // namespace squaredig::formats
