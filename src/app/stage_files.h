// The files of each stage's result, as bytes by name.
#pragma once

#include <chrono>
#include <map>
#include <optional>
#include <string>

#include "base/base_result.h"
#include "dig/dig_result.h"
#include "field/field_result.h"
#include "fill/fill_result.h"
#include "formats/file_pieces.h"
#include "ground/ground_result.h"
#include "pegs/pegs_result.h"
#include "record/record_result.h"

namespace squaredig::app {

struct StageResults;
using Files = std::map<std::string, std::string>;

// What files say of the job beside the result.
struct FileContext {
  std::optional<std::chrono::year_month_day> date;
  std::string crs;                             // "EPSG:2157" or "local"
  std::string heights;                         // the same of heights
  std::string revision, drawing, prepared_by;  // empty: not given
};

Files files_of(const field::FieldResult& result, const FileContext& context);
Files files_of(const ground::GroundResult& result, const FileContext& context);
// ground.xml, which can be large: the surface goes into it.
formats::FilePieces ground_xml(const ground::GroundResult& result, SurfaceMesh surface,
                               const FileContext& context);
Files files_of(const pegs::PegsResult& result, const FileContext& context);
Files files_of(const dig::DigResult& result, const FileContext& context);
// dig.gpkg, which holds the reference pegs too.
Files dig_map(const dig::DigResult& result, const std::vector<pegs::ReferencePeg>& pegs,
              const FileContext& context);
Files files_of(const fill::FillResult& result, const FileContext& context);
Files files_of(const record::RecordResult& result, const FileContext& context);
// record.gpkg, which holds what each stage laid out and measured.
Files record_map(const record::RecordResult& result, const StageResults& stages,
                 const FileContext& context);
Files files_of(const base::BaseResult& result, const FileContext& context);

}  // namespace squaredig::app
