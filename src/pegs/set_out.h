// set_out: everything the surveyor sets out for one tank, on the real ground.
//
// What: corners, two reference pegs for each corner on the produced side lines, sides and
// diagonals,
//   scale, polar schedules, pipes and shafts; and the check of pegs as set and of taped lengths.
// Frame and units: the job's grid.
// Requires: the excavation of the same design on the same survey.
// Laws: set_out.1  a peg stands on its string: across it by less than 1e-6 m; set_out.2  a peg
// stands
//   at the larger of the offset and crest + setback along its string, beyond the influence line
//   where that is further out, and never in the pit; set_out.3  pegs measured exactly where they
//   were designed give zero everywhere; set_out.4  turning or moving the job changes no distance.
// Accuracy: one rounding of each coordinate; the crest as the excavation has it.
// Errors: Refusal for easting and northing swapped against the grid's area of use, and for
// stations,
//   backsights and laser marks that are not in the control file. Findings for the rest.
// Source: produced side lines with two pegs per corner are common practice, no source; the strength
//   of a re-made corner by propagation of variances.
#pragma once

#include "design/excavation.h"
#include "geodesy/factors.h"
#include "pegs/pegs_input.h"
#include "pegs/pegs_result.h"

namespace squaredig::pegs {

// The grid the job is on, and the factor the job states; neither for a local grid.
struct OnGrid {
  std::optional<geodesy::Grid> grid;
  std::optional<Ratio> stated_factor;  // grid over ground
};

PegsResult set_out(const PegsInput& input, const design::DesignInput& design,
                   const design::Excavation& pit, ground::Survey& survey, const OnGrid& on = {});

}  // namespace squaredig::pegs
