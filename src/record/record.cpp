#include "record/record.h"

#include <algorithm>

#include "quantity/day_text.h"
#include "record/storage.h"

namespace squaredig::record {
namespace {

// Where the tank stands: on the base as surveyed, else as designed.
StorageInput storage_input(const design::Tank& tank, const RecordSources& sources) {
  const auto& design = sources.design;
  StorageInput input{tank, tank.underside, "the underside as designed", design.tank.voids,
                     design.tank.outlet_level};
  if (!sources.base || !sources.base->best_plane) return input;
  const auto& plane = *sources.base->best_plane;
  input.underside = {tank.corners[0], plane.level_at_a + design.bedding.thickness, plane.fall,
                     plane.downhill};
  input.stands_on =
      "the best plane of the base as surveyed, and the bedding's planned thickness over it";
  return input;
}

std::vector<GridPosition> corners_on(const std::vector<GridPoint>& corners,
                                     const design::LevelPlane& underside) {
  std::vector<GridPosition> standing;
  standing.reserve(corners.size());
  for (const GridPoint p : corners) standing.push_back({p, underside.at(p)});
  return standing;
}

// The corners where the strings between the pegs as set cross, if all could be re-made.
std::vector<GridPoint> corners_built(const design::Tank& tank, const pegs::PegsResult* pegs) {
  std::vector<GridPoint> built = tank.corners;
  if (!pegs || !pegs->as_set) return built;
  for (const auto& corner : pegs->as_set->corners)
    for (std::size_t i = 0; i < built.size(); ++i)
      if (design::Tank::corner_name(i) == corner.name) built[i] = corner.at;
  return built;
}

template <class Result>
StageVerdict told(std::string stage, std::string done, const Result& result) {
  StageVerdict verdict;
  verdict.stage = std::move(stage);
  verdict.done = std::move(done);
  verdict.findings = result.head.findings.size();
  verdict.figures = figures_of(result);
  for (const auto& file : result.head.inputs) verdict.inputs.push_back({file.file, file.sha256});
  return verdict;
}

void date_of_job(const RecordInput& input, StageVerdict& verdict) {
  if (!input.date) return;
  verdict.when = day_text(*input.date);
  verdict.when_is = "date of the job file";
}

StageVerdict of_pegs(const pegs::PegsResult& result) {
  StageVerdict verdict = told("pegs", "set out", result);
  if (result.as_set) verdict.verdict = std::string("as set ") + words(result.as_set->verdict);
  if (result.tape)
    verdict.verdict +=
        std::string(verdict.verdict.empty() ? "" : ", ") + "taped " + words(result.tape->verdict);
  if (verdict.verdict.empty()) verdict.verdict = "not measured after setting out";
  return verdict;
}

StageVerdict of_dig(const dig::DigResult& result) {
  StageVerdict verdict = told("dig", "dug", result);
  verdict.verdict = verdict.findings == 0 ? "no findings" : "findings for a person";
  return verdict;
}

StageVerdict of_base(const base::BaseResult& result) {
  StageVerdict verdict = told("base", "verified", result);
  verdict.verdict = words(result.verdict);
  if (result.surveyed) verdict.when = *result.surveyed, verdict.when_is = "survey of the base";
  return verdict;
}

Verdict worst_of(const fill::FillResult& result) {
  std::vector<Verdict> all;
  for (const auto& layer : result.layers) all.push_back(layer.verdict);
  if (result.tests) all.push_back(result.tests->verdict);
  for (const auto& step : result.lift_log)
    all.push_back(step.too_far ? Verdict::DoesNotConform : Verdict::Conforms);
  for (const Verdict worst : {Verdict::DoesNotConform, Verdict::NotProven, Verdict::Conforms})
    if (std::find(all.begin(), all.end(), worst) != all.end()) return worst;
  return Verdict::NotAsked;
}

StageVerdict of_fill(const fill::FillResult& result) {
  StageVerdict verdict = told("fill", "filled", result);
  verdict.verdict = words(worst_of(result));
  if (!result.lift_log.empty()) {
    verdict.when = day_text(result.lift_log.back().date);
    verdict.when_is = "last line of the lift log";
  }
  return verdict;
}

}  // namespace

RecordResult record(const RecordInput& input, const RecordSources& sources) {
  const design::Tank tank = design::place_tank(sources.design);
  RecordResult result;
  result.designed = figures_of(tank, sources.design);
  if (sources.pegs) result.stages.push_back(of_pegs(*sources.pegs));
  if (sources.dig) result.stages.push_back(of_dig(*sources.dig));
  if (sources.base) result.stages.push_back(of_base(*sources.base));
  if (sources.fill) result.stages.push_back(of_fill(*sources.fill));
  for (auto& stage : result.stages)
    if (stage.when.empty()) date_of_job(input, stage);
  const StorageInput storage = storage_input(tank, sources);
  result.storage = storage_of(storage);
  result.tank_designed = corners_on(tank.corners, tank.underside);
  if (sources.base && sources.base->best_plane)
    result.tank_built = corners_on(corners_built(tank, sources.pegs), storage.underside);
  return result;
}

}  // namespace squaredig::record
