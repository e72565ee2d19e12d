#include "pegs/set_out.h"

#include <set>

#include "pegs/parts_internal.h"
#include "quantity/label.h"

namespace squaredig::pegs {
namespace {

Work work_of(const PegsInput& input, const design::DesignInput& design,
             const design::Excavation& pit, const OnGrid& on) {
  Work work{input, design, pit, on, std::nullopt};
  if (input.laser) work.laser = design::Laser::set_up(*input.laser, pit.tank, design.control);
  return work;
}

// Names that the tables carry with an apostrophe in front, so that a spreadsheet keeps them as
// text.
void tell_formulas(const PegsResult& result, ResultHead& head) {
  std::set<std::string> names;
  const auto add = [&](const std::string& name) {
    if (spreadsheet_would_run(name)) names.insert(name);
  };
  for (const PipePoint& pipe : result.pipes) add(pipe.name);
  for (const ShaftPoint& shaft : result.shafts) add(shaft.name);
  for (const PolarRow& row : result.polar) {
    add(row.station);
    add(row.backsight);
  }
  for (const std::string& name : names)
    head.cautions.push_back("The name " + quoted(name) +
                            " reads as a formula: the CSV files carry it with an apostrophe in "
                            "front, so that a spreadsheet keeps it as text.");
}

}  // namespace

PegsResult set_out(const PegsInput& input, const design::DesignInput& design,
                   const design::Excavation& pit, ground::Survey& survey, const OnGrid& on) {
  const Work work = work_of(input, design, pit, on);
  refuse_swapped(work);
  PegsResult result;
  ResultHead& head = result.head;
  head.assumed = pit.tank.assumed;
  head.findings = pit.tank.findings;
  if (work.laser)
    head.findings.insert(head.findings.end(), work.laser->findings().begin(),
                         work.laser->findings().end());
  result.scale = scale_here(work, head);
  result.reference = place_pegs(work, survey, head);
  result.corners = corners_of(work, result.reference, result.scale.combined);
  result.sides = sides_of(pit.tank.corners, result.scale.combined);
  result.diagonals = diagonals_of(pit.tank.corners, result.scale.combined);
  result.pipes = pipe_points(work, result.reference, head.findings);
  result.shafts = shaft_points(work, result.reference, head.findings);
  add_schedules(work, result);
  tell_formulas(result, head);
  for (const GridPosition& p : pit.toe) result.toe.push_back(p.at);
  for (const auto& ring : pit.crest) result.crest.push_back(ring.corners);
  if (input.as_set) result.as_set = check_as_set(work, result, head);
  if (input.tape) result.tape = check_tape(work, result, head);
  add_geographic(work, result);
  return result;
}

}  // namespace squaredig::pegs
