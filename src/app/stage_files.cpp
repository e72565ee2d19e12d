#include "app/stage_files.h"

#include "app/stages.h"
#include "app/version.h"
#include "formats/base_csv.h"
#include "formats/base_json.h"
#include "formats/cells_csv.h"
#include "formats/dig_json.h"
#include "formats/ground_json.h"
#include "formats/pegs_csv.h"
#include "formats/pegs_json.h"

namespace squaredig::app {

Files files_of(const ground::GroundResult& result) {
  return {{"ground.json", formats::ground_json(result, kVersion)}};
}

Files files_of(const pegs::PegsResult& result) {
  Files files = {{"pegs.csv", formats::pegs_csv(result)},
                 {"pegs.json", formats::pegs_json(result, kVersion)}};
  if (!result.polar.empty()) files["pegs-polar.csv"] = formats::pegs_polar_csv(result);
  return files;
}

Files files_of(const dig::DigResult& result) {
  return {{"cells.csv", formats::cells_csv(result.grid)},
          {"dig.json", formats::dig_json(result, kVersion)}};
}

Files files_of(const base::BaseResult& result) {
  return {{"base.csv", formats::base_csv(result)},
          {"base.json", formats::base_json(result, kVersion)}};
}

std::vector<std::string> file_names(job::Stage stage) {
  switch (stage) {
    case job::Stage::Pegs:
      return {"pegs.csv", "pegs-polar.csv", "pegs.json"};
    case job::Stage::Dig:
      return {"cells.csv", "dig.json"};
    case job::Stage::Base:
      return {"base.csv", "base.json"};
    default:
      return {"ground.json"};
  }
}

}  // namespace squaredig::app
