#include "formats/json_internal.h"

#include <cmath>

namespace squaredig::formats {
namespace {

Json input_json(const InputRecord& input) {
  Json set_aside = Json::array();
  for (const SetAside& row : input.set_aside)
    set_aside.push_back({{"line", row.line}, {"why", row.why}});
  return {{"file", input.file},
          {"sha256", input.sha256},
          {"read", input.read},
          {"used", input.used},
          {"set_aside", std::move(set_aside)}};
}

}  // namespace

Json number(double value, std::string_view name) {
  if (!std::isfinite(value))
    refuse({"result"}, "no finite number for " + std::string(name), "a finite number",
           "this is a fault of the program: please report it with the job");
  return value == 0 ? 0.0 : value;
}

void put(Json& object, GridPoint at) {
  object["easting"] = number(at.easting.in_metres(), "easting");
  object["northing"] = number(at.northing.in_metres(), "northing");
}

void put(Json& object, GridPosition at) {
  put(object, at.at);
  object["height"] = number(at.height.in_metres(), "height");
}

Json place_in_array(GridPoint at) {
  return Json::array(
      {number(at.easting.in_metres(), "easting"), number(at.northing.in_metres(), "northing")});
}

Json place_in_array(GridPosition at) {
  Json place = place_in_array(at.at);
  place.push_back(number(at.height.in_metres(), "height"));
  return place;
}

Json head_json(const ResultHead& head, std::string_view version) {
  Json inputs = Json::array();
  for (const InputRecord& input : head.inputs) inputs.push_back(input_json(input));
  Json findings = Json::array();
  for (const Finding& finding : head.findings)
    findings.push_back({{"code", finding.code}, {"text", finding.text}});
  return {{"tool", "squaredig"},
          {"version", version},
          {"job", head.job},
          {"inputs", std::move(inputs)},
          {"assumed", head.assumed},
          {"cautions", head.cautions},
          {"findings", std::move(findings)}};
}

std::string json_text(const Json& object) {
  return object.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace squaredig::formats
