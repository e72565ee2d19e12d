// The hand-over record: what was designed, set out, dug, verified and filled, each with its
// verdict, the date it stands for and the hashes of its files; and the tank's storage.
//
// What: nothing is computed again: figures are taken from the stages' results, verdicts are theirs.
//   The tank as built stands on the best plane of the base as surveyed with the planned bedding
//   over it, its corners where the strings between the pegs as set cross.
// Frame and units: the job's grid.
// Requires: results of one job.
// Laws: record.1  without a surveyed base the storage is that of the design; record.2  the verdict
// of
//   the fill is the worst of its layers, its tests and its lift log.
// Accuracy: as the stages'.
// Errors: none.
// Source: definition; what a hand-over pack holds is common practice, no source.
#pragma once

#include "base/base_result.h"
#include "design/tank.h"
#include "dig/dig_result.h"
#include "fill/fill_result.h"
#include "pegs/pegs_result.h"
#include "record/record_input.h"
#include "record/record_result.h"

namespace squaredig::record {

// The results there are; null: the job does not ask for that stage.
struct RecordSources {
  const design::DesignInput& design;
  const pegs::PegsResult* pegs = nullptr;
  const dig::DigResult* dig = nullptr;
  const base::BaseResult* base = nullptr;
  const fill::FillResult* fill = nullptr;
};

RecordResult record(const RecordInput& input, const RecordSources& sources);

// The stages' figures, in the order of the work.
std::vector<Figure> figures_of(const design::Tank& tank, const design::DesignInput& design);
std::vector<Figure> figures_of(const pegs::PegsResult& result);
std::vector<Figure> figures_of(const dig::DigResult& result);
std::vector<Figure> figures_of(const base::BaseResult& result);
std::vector<Figure> figures_of(const fill::FillResult& result);

}  // namespace squaredig::record
