#include <algorithm>

#include "formats/json_internal.h"
#include "formats/pegs_drawing.h"

namespace squaredig::formats {
namespace {

using pegs::LatLong;

Json position(const LatLong& at) {
  return Json::array({number(at.longitude.in_degrees(), "longitude"),
                      number(at.latitude.in_degrees(), "latitude")});
}

Json feature(Json geometry, Json properties) {
  return {{"type", "Feature"},
          {"geometry", std::move(geometry)},
          {"properties", std::move(properties)}};
}

Json point_feature(std::string_view name, std::string_view kind, const LatLong& at, GridPoint grid,
                   std::optional<Elevation> height) {
  Json properties{{"name", name}, {"kind", kind}};
  put(properties, grid);
  properties["height"] = height ? number(height->in_metres(), "height") : Json(nullptr);
  return feature({{"type", "Point"}, {"coordinates", position(at)}}, std::move(properties));
}

Json peg_feature(const pegs::ReferencePeg& p) {
  Json f = point_feature(p.name, "peg", *p.geographic, p.at, p.ground);
  f["properties"]["string_line"] = p.string_line;
  f["properties"]["beyond_corner_m"] = metres(p.beyond_corner, "beyond_corner_m");
  return f;
}

void add_strings(const std::vector<pegs::ReferencePeg>& pegs, Json& features) {
  for (std::size_t i = 0; i < pegs.size(); ++i)
    for (std::size_t j = i + 1; j < pegs.size(); ++j)
      if (pegs[i].string_line == pegs[j].string_line)
        features.push_back(feature({{"type", "LineString"},
                                    {"coordinates", Json::array({position(*pegs[i].geographic),
                                                                 position(*pegs[j].geographic)})}},
                                   {{"name", pegs[i].string_line}, {"kind", "string line"}}));
}

// The tank's corners run clockwise for people; an exterior ring runs the other way.
Json tank_feature(const std::vector<pegs::Corner>& corners) {
  Json ring = Json::array();
  for (std::size_t i = corners.size(); i-- > 0;) ring.push_back(position(*corners[i].geographic));
  ring.push_back(position(*corners.back().geographic));
  return feature({{"type", "Polygon"}, {"coordinates", Json::array({ring})}},
                 {{"name", "tank"}, {"kind", "tank"}});
}

bool has_positions(const pegs::PegsResult& r) {
  const auto has = [](const auto& item) { return item.geographic.has_value(); };
  return r.geographic_way && !r.corners.empty() &&
         std::all_of(r.corners.begin(), r.corners.end(), has) &&
         std::all_of(r.reference.begin(), r.reference.end(), has) &&
         std::all_of(r.pipes.begin(), r.pipes.end(), has) &&
         std::all_of(r.shafts.begin(), r.shafts.end(), has);
}

}  // namespace

std::optional<std::string> pegs_geojson(const pegs::PegsResult& result, std::string_view crs) {
  if (!has_positions(result)) return std::nullopt;
  Json features = Json::array();
  for (const auto& p : result.reference) features.push_back(peg_feature(p));
  for (const auto& c : result.corners)
    features.push_back(point_feature(c.name, "corner", *c.geographic, c.at.at, c.at.height));
  for (const auto& p : result.pipes)
    features.push_back(point_feature(p.name, "pipe", *p.geographic, p.at, p.invert));
  for (const auto& s : result.shafts)
    features.push_back(point_feature(s.name, "shaft", *s.geographic, s.at, s.cover_level));
  add_strings(result.reference, features);
  features.push_back(tank_feature(result.corners));
  const auto& way = *result.geographic_way;
  return json_text({{"type", "FeatureCollection"},
                    {"projected_in", crs},
                    {"by_operation", way.operation},
                    {"accuracy_m", metres(way.accuracy, "accuracy_m")},
                    {"features", std::move(features)}});
}

}  // namespace squaredig::formats
