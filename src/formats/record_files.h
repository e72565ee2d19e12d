// record.gpkg: what was designed and what was built, for other programs.
//
// What: layers tank (as designed, and as built where the base was surveyed), toe, crest and faces
// of
//   the design, pegs, pegs_as_set, base_points with their deviations, layers (each surveyed
//   point with the thickness under it) and tests of compaction; those of a stage the job does not
//   have are left out. Styles are left to the reader.
// Frame and units: the job's grid; the unit stands in a field's name, metres where none does.
// Laws: record_files.1  the same results give the same bytes; record_files.2  another program reads
//   the layers and values that the results hold.
// Accuracy: coordinates and numbers keep every bit.
// Errors: NaN and infinity are refused.
// Source: OGC GeoPackage 1.2.
#pragma once

#include "base/base_result.h"
#include "dig/dig_result.h"
#include "fill/fill_result.h"
#include "formats/geopackage_write.h"
#include "pegs/pegs_result.h"
#include "record/record_result.h"

namespace squaredig::formats {

// Null: the job has no such stage.
struct RecordParts {
  const record::RecordResult& record;
  const pegs::PegsResult* pegs = nullptr;
  const dig::DigResult* dig = nullptr;
  const base::BaseResult* base = nullptr;
  const fill::FillResult* fill = nullptr;
};

// `out` brings date and reference system.
std::string record_gpkg(const RecordParts& parts, GpkgOut out);

}  // namespace squaredig::formats
