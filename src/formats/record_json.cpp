#include "formats/record_json.h"

#include "formats/csv_text.h"
#include "formats/json_internal.h"

namespace squaredig::formats {
namespace {

Json storage_json(const record::Storage& storage) {
  Json table = Json::array();
  for (const auto& row : storage.table)
    table.push_back({number(row.level.in_metres(), "level"),
                     cubic_metres(row.net.value_or(row.gross), "storage")});
  return {
      {"gross_m3", cubic_metres(storage.gross, "gross_m3")},
      {"net_m3", or_null(storage.net, cubic_metres<Volume>, "net_m3")},
      {"void_percent",
       storage.voids ? number(storage.voids->in_percent(), "void_percent") : Json(nullptr)},
      {"lowest_level", number(storage.lowest.in_metres(), "lowest_level")},
      {"highest_level", number(storage.highest.in_metres(), "highest_level")},
      {"outlet_level",
       storage.outlet ? number(storage.outlet->in_metres(), "outlet_level") : Json(nullptr)},
      {"below_outlet_m3", or_null(storage.below_outlet, cubic_metres<Volume>, "below_outlet_m3")},
      {"table_is", storage.net ? "net" : "gross"},
      {"stands_on", storage.stands_on},
      {"table", std::move(table)}};
}

Json figures_json(const std::vector<record::Figure>& figures) {
  Json list = Json::array();
  for (const auto& figure : figures)
    list.push_back({{"what", figure.what},
                    {"value", number(figure.value, "value")},
                    {"unit", figure.unit},
                    {"limit", figure.limit ? number(*figure.limit, "limit") : Json(nullptr)},
                    {"verdict", figure.verdict}});
  return list;
}

Json stage_json(const record::StageVerdict& stage) {
  Json inputs = Json::array();
  for (const auto& input : stage.inputs)
    inputs.push_back({{"file", input.file}, {"sha256", input.sha256}});
  return {{"stage", stage.stage},
          {"done", stage.done},
          {"verdict", stage.verdict},
          {"when", stage.when},
          {"when_is", stage.when_is},
          {"findings", stage.findings},
          {"figures", figures_json(stage.figures)},
          {"inputs", std::move(inputs)}};
}

Json corners_json(const std::vector<GridPosition>& corners) {
  Json list = Json::array();
  for (const auto& corner : corners) list.push_back(place_in_array(corner));
  return list;
}

}  // namespace

std::string record_json(const record::RecordResult& result, std::string_view version) {
  Json json = head_json(result.head, version);
  json["designed"] = figures_json(result.designed);
  Json stages = Json::array();
  for (const auto& stage : result.stages) stages.push_back(stage_json(stage));
  json["stages"] = std::move(stages);
  json["storage"] = storage_json(result.storage);
  json["tank_designed"] = corners_json(result.tank_designed);
  json["tank_built"] = result.tank_built ? corners_json(*result.tank_built) : Json(nullptr);
  return json_text(json);
}

std::string storage_csv(const record::Storage& storage) {
  CsvText csv({"level", "gross_m3", "net_m3"});
  for (const auto& row : storage.table) {
    csv.number(row.level.in_metres()).number(row.gross.in_cubic_metres());
    csv.number(row.net ? std::optional(row.net->in_cubic_metres()) : std::nullopt);
    csv.end_row();
  }
  return csv.take();
}

}  // namespace squaredig::formats
