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
      {"outlet_level",
       storage.outlet ? number(storage.outlet->in_metres(), "outlet_level") : Json(nullptr)},
      {"below_outlet_m3", or_null(storage.below_outlet, cubic_metres<Volume>, "below_outlet_m3")},
      {"table_is", storage.net ? "net" : "gross"},
      {"stands_on", storage.stands_on},
      {"table", std::move(table)}};
}

}  // namespace

std::string record_json(const record::RecordResult& result, std::string_view version) {
  Json json = head_json(result.head, version);
  json["storage"] = storage_json(result.storage);
  Json stages = Json::array();
  for (const auto& stage : result.stages)
    stages.push_back({{"stage", stage.stage},
                      {"verdict", stage.verdict},
                      {"when", stage.when},
                      {"findings", stage.findings}});
  json["stages"] = std::move(stages);
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
