#include "formats/ground_json.h"

#include "formats/json_internal.h"

namespace squaredig::formats {
namespace {

Json suspect_json(const ground::Suspect& s) {
  Json object = {{"point", s.point},
                 {"why", s.why},
                 {"by_m", metres(s.by, "suspects.by_m")},
                 {"file", s.place.file},
                 {"line", s.place.line}};
  put(object, s.at);
  return object;
}

Json crossing_json(const ground::Crossing& c) {
  Json object = {{"strings", Json::array({c.string_a, c.string_b})}};
  put(object, c.at);
  object["height_difference_m"] = metres(c.height_difference, "crossings.height_difference_m");
  return object;
}

}  // namespace

std::string ground_json(const ground::GroundResult& result, std::string_view version) {
  Json object = head_json(result.head, version);
  object["points"] = result.points;
  object["triangles"] = result.triangles;
  object["plan_area_m2"] = square_metres(result.plan_area, "plan_area_m2");
  object["surface_area_m2"] = square_metres(result.surface_area, "surface_area_m2");
  object["lowest"] = number(result.lowest.in_metres(), "lowest");
  object["highest"] = number(result.highest.in_metres(), "highest");
  object["contour_interval_m"] = or_null(result.contour_interval, metres, "contour_interval_m");
  object["suspects"] = Json::array();
  for (const ground::Suspect& s : result.suspects) object["suspects"].push_back(suspect_json(s));
  object["crossings"] = Json::array();
  for (const ground::Crossing& c : result.crossings)
    object["crossings"].push_back(crossing_json(c));
  return json_text(object);
}

}  // namespace squaredig::formats
