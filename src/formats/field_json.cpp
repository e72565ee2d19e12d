#include "formats/field_json.h"

#include <cmath>

#include "formats/json_internal.h"

namespace squaredig::formats {
namespace {

Json place_text(const Place& place) { return place.file + ":" + std::to_string(place.line); }

Json or_null(std::optional<double> value, std::string_view name) {
  return value ? number(*value, name) : Json(nullptr);
}

Json height_or_null(const std::optional<Elevation>& h) {
  return h ? number(h->in_metres(), "height") : Json(nullptr);
}

Json millimetres_or_null(const std::optional<Length>& v, std::string_view name) {
  return v ? millimetres(*v, name) : Json(nullptr);
}

void put_sigmas(Json& object, const std::optional<field::Covariance>& c, bool with_height) {
  const auto sigma = [&](double field::Covariance::*part, const char* name) {
    return c ? number(std::sqrt((*c).*part) * 1000, name) : Json(nullptr);
  };
  object["sigma_e_mm"] = sigma(&field::Covariance::ee, "sigma_e_mm");
  object["sigma_n_mm"] = sigma(&field::Covariance::nn, "sigma_n_mm");
  object["sigma_h_mm"] = with_height ? sigma(&field::Covariance::hh, "sigma_h_mm") : Json(nullptr);
  object["covariance_en_mm2"] = c ? number(c->en * 1e6, "covariance_en_mm2") : Json(nullptr);
}

Json ellipse_json(const std::optional<field::ErrorEllipse>& e) {
  if (!e) return nullptr;
  return {{"major_mm", millimetres(e->major, "major_mm")},
          {"minor_mm", millimetres(e->minor, "minor_mm")},
          {"bearing_deg", number(e->along.in_degrees(), "bearing_deg")}};
}

Json point_json(const field::ReducedPoint& p) {
  Json object;
  object["point"] = p.point;
  object["code"] = p.code;
  put(object, p.at);
  object["height"] = height_or_null(p.height);
  put_sigmas(object, p.covariance, p.height.has_value());
  object["ellipse"] = ellipse_json(p.ellipse);
  object["from"] = p.from;
  object["sights"] = p.sights;
  object["line"] = place_text(p.place);
  return object;
}

Json residual_json(const field::SightResidual& r) {
  Json lines = Json::array();
  for (const Place& place : r.places) lines.push_back(place_text(place));
  return {{"target", r.target},
          {"reading", words(r.reading)},
          {"unit", r.reading == field::Reading::Distance ? "mm" : "seconds"},
          {"residual", number(r.residual, "residual")},
          {"redundancy", number(r.redundancy, "redundancy")},
          {"normalised", or_null(r.normalised, "normalised")},
          {"smallest_detectable", or_null(r.smallest_detectable, "smallest_detectable")},
          {"greatest_correlation", or_null(r.greatest_correlation, "greatest_correlation")},
          {"left_out", r.left_out},
          {"lines", std::move(lines)}};
}

Json setup_json(const field::SetupResult& s) {
  Json object;
  object["setup"] = s.setup;
  object["station"] = s.station;
  object["kind"] = words(s.kind);
  put(object, s.at);
  object["height"] = height_or_null(s.height);
  put_sigmas(object, s.covariance, s.height.has_value());
  object["ellipse"] = ellipse_json(s.ellipse);
  object["orientation_deg"] = number(s.orientation.in_degrees(), "orientation_deg");
  object["sigma0"] = or_null(s.sigma0, "sigma0");
  object["redundancy"] = number(s.redundancy, "redundancy");
  object["combined_scale_factor"] = number(s.combined_factor.value(), "combined_scale_factor");
  object["faces"] =
      s.faces
          ? Json{{"pairs", s.faces->pairs},
                 {"index_sec", number(s.faces->index.in_seconds(), "index_sec")},
                 {"collimation_sec", number(s.faces->collimation.in_seconds(), "collimation_sec")}}
          : Json(nullptr);
  object["doubts"] = s.doubts;
  object["residuals"] = Json::array();
  for (const field::SightResidual& r : s.residuals) object["residuals"].push_back(residual_json(r));
  return object;
}

Json page_json(const field::LevelPage& p) {
  return {{"sum_backsight", metres(p.sum_backsight, "sum_backsight")},
          {"sum_foresight", metres(p.sum_foresight, "sum_foresight")},
          {"sum_rise", metres(p.sum_rise, "sum_rise")},
          {"sum_fall", metres(p.sum_fall, "sum_fall")},
          {"last_less_first", metres(p.last_less_first, "last_less_first")},
          {"booked_rise_less_fall", p.booked_rise_less_fall
                                        ? metres(*p.booked_rise_less_fall, "booked_rise_less_fall")
                                        : Json(nullptr)},
          {"agrees", p.agrees}};
}

Json run_json(const field::LevelRun& r) {
  return {{"from", r.from},
          {"to", r.to},
          {"setups", r.setups},
          {"distance", r.distance ? metres(*r.distance, "distance") : Json(nullptr)},
          {"rise", metres(r.rise, "rise")},
          {"misclosure_mm", millimetres_or_null(r.misclosure, "misclosure_mm")},
          {"allowed_mm", millimetres_or_null(r.allowed, "allowed_mm")},
          {"verdict", words(r.verdict)},
          {"page", page_json(r.page)},
          {"line", place_text(r.place)}};
}

Json collimation_json(const field::Collimation& c) {
  Json correct = Json::array();
  for (const auto& reading : c.correct)
    correct.push_back({{"setup", reading.setup},
                       {"staff", reading.staff},
                       {"reading", metres(reading.reading, "reading")}});
  return {{"mm_per_m", number(c.slope.value() * 1000, "mm_per_m")},
          {"true_difference", metres(c.true_difference, "true_difference")},
          {"correct_readings", std::move(correct)}};
}

// The run that comes nearest to, or farthest beyond, what is allowed; the largest without limits.
const field::LevelRun* worst_of(const field::LevelResult& levels) {
  const auto share = [](const field::LevelRun& r) {
    const double miss = std::abs(r.misclosure->in_millimetres());
    return r.allowed && *r.allowed > Length{} ? miss / r.allowed->in_millimetres() : miss;
  };
  const field::LevelRun* worst = nullptr;
  for (const field::LevelRun& r : levels.runs)
    if (r.misclosure && (worst == nullptr || share(r) > share(*worst))) worst = &r;
  return worst;
}

Json levels_json(const field::LevelResult& levels) {
  const field::LevelRun* worst = worst_of(levels);
  Json object;
  object["misclosure_mm"] =
      worst != nullptr ? millimetres_or_null(worst->misclosure, "misclosure_mm") : Json(nullptr);
  object["allowed_mm"] =
      worst != nullptr ? millimetres_or_null(worst->allowed, "allowed_mm") : Json(nullptr);
  object["verdict"] = words(worst != nullptr ? worst->verdict : Verdict::NotAsked);
  object["page_check"] = levels.page_check;
  object["sigma0"] = or_null(levels.sigma0, "sigma0");
  object["redundancy"] = levels.redundancy;
  object["runs"] = Json::array();
  for (const field::LevelRun& r : levels.runs) object["runs"].push_back(run_json(r));
  object["points"] = Json::array();
  for (const field::LevelledPoint& p : levels.points)
    object["points"].push_back({{"point", p.point},
                                {"height", number(p.height.in_metres(), "height")},
                                {"sigma_h_mm", millimetres_or_null(p.sigma, "sigma_h_mm")},
                                {"known", p.known},
                                {"line", place_text(p.place)}});
  object["residuals"] = Json::array();
  for (const field::LevelResidual& r : levels.residuals)
    object["residuals"].push_back({{"from", r.from},
                                   {"to", r.to},
                                   {"rise", metres(r.rise, "rise")},
                                   {"residual_mm", millimetres(r.residual, "residual_mm")},
                                   {"redundancy", number(r.redundancy, "redundancy")},
                                   {"normalised", or_null(r.normalised, "normalised")},
                                   {"line", place_text(r.place)}});
  object["collimation"] =
      levels.collimation ? collimation_json(*levels.collimation) : Json(nullptr);
  return object;
}

Json fit_json(const field::FitResult& fit) {
  Json residuals = Json::array();
  for (const field::PairResidual& r : fit.residuals)
    residuals.push_back({{"point", r.point},
                         {"east_mm", millimetres(r.east, "east_mm")},
                         {"north_mm", millimetres(r.north, "north_mm")},
                         {"height_mm", millimetres_or_null(r.height, "height_mm")},
                         {"fits", r.fits},
                         {"line", place_text(r.place)}});
  Json object;
  object["scale"] = number(fit.scale, "scale");
  object["rotation_deg"] = number(fit.rotation.in_degrees(), "rotation_deg");
  object["east"] = metres(fit.east, "east");
  object["north"] = metres(fit.north, "north");
  object["sigma_mm"] = fit.sigma0_m ? number(*fit.sigma0_m * 1000, "sigma_mm") : Json(nullptr);
  object["vertical_shift"] =
      fit.vertical_shift ? metres(*fit.vertical_shift, "vertical_shift") : Json(nullptr);
  object["tilt"] = fit.tilt ? Json{{"east_mm_per_m", number((*fit.tilt)[0] * 1000, "tilt")},
                                   {"north_mm_per_m", number((*fit.tilt)[1] * 1000, "tilt")},
                                   {"about", place_in_array(fit.tilt_about)}}
                            : Json(nullptr);
  object["residuals"] = std::move(residuals);
  return object;
}

Json withheld_json(const std::vector<field::PointWithheld>& points) {
  Json list = Json::array();
  for (const field::PointWithheld& p : points)
    list.push_back({{"point", p.point}, {"why", p.why}, {"line", place_text(p.place)}});
  return list;
}

Json gnss_json(const field::GnssResult& gnss) {
  Json occupations = Json::array();
  for (const field::Occupations& o : gnss.occupations) {
    Json residuals = Json::array();
    for (const auto& r : o.residuals)
      residuals.push_back({{"east_mm", millimetres(r.east, "east_mm")},
                           {"north_mm", millimetres(r.north, "north_mm")},
                           {"height_mm", millimetres(r.height, "height_mm")},
                           {"line", place_text(r.place)}});
    occupations.push_back({{"point", o.point},
                           {"count", o.count},
                           {"spread_plan_mm", millimetres(o.spread_plan, "spread_plan_mm")},
                           {"spread_height_mm", millimetres(o.spread_height, "spread_height_mm")},
                           {"verdict", words(o.verdict)},
                           {"residuals", std::move(residuals)}});
  }
  return {{"operation", gnss.operation},
          {"accuracy_m", metres(gnss.accuracy, "accuracy_m")},
          {"software", gnss.software},
          {"grid_files", gnss.grid_files},
          {"geoid", gnss.geoid ? Json(*gnss.geoid) : Json(nullptr)},
          {"occupations", std::move(occupations)},
          {"left_out", withheld_json(gnss.left_out)}};
}

}  // namespace

std::string field_json(const field::FieldResult& result, std::string_view version) {
  Json json = head_json(result.head, version);
  json["points"] = Json::array();
  for (const field::ReducedPoint& p : result.points) json["points"].push_back(point_json(p));
  json["withheld"] = withheld_json(result.withheld);
  json["setups"] = Json::array();
  for (const field::SetupResult& s : result.setups) json["setups"].push_back(setup_json(s));
  json["levels"] = result.levels ? levels_json(*result.levels) : Json(nullptr);
  json["fit"] = result.fit ? fit_json(*result.fit) : Json(nullptr);
  json["gnss"] = result.gnss ? gnss_json(*result.gnss) : Json(nullptr);
  json["tests"] = {{"alpha", number(result.tests.alpha, "alpha")},
                   {"critical", number(result.tests.critical, "critical")},
                   {"power", number(result.tests.power, "power")},
                   {"alike", number(result.tests.alike, "alike")}};
  return json_text(json);
}

}  // namespace squaredig::formats
