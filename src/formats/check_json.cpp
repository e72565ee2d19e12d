#include "formats/check_json.h"

#include "formats/json_internal.h"

namespace squaredig::formats {

std::string check_json(const ResultHead& head, const std::vector<StageFound>& stages,
                       std::string_view version) {
  Json object = head_json(head, version);
  Json found = Json::array();
  for (const auto& stage : stages)
    found.push_back({{"stage", stage.stage}, {"missing", stage.missing}});
  object["stages"] = std::move(found);
  return json_text(object);
}

}  // namespace squaredig::formats
