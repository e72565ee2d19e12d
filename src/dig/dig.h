// The dig stage: what leaves the ground, how deep at every spot, and what the volume is worth.
//
// What: exact cut of an excavation, its parts, cells, areas, loose volume and loads, its standard
//   deviation, and a second volume by an independent method.
// Frame and units: grid; volumes in the ground unless said otherwise.
// Requires: the excavation and the survey it was made from.
// Laws: dig.1  cells sum to the total; dig.2  parts sum to the total; dig.3  the second method
//   agrees; dig.4  loads are counted up from the unrounded loose volume, and an exact division
//   stays exact; dig.5  of every progress survey, dug so far + remaining - over-dig = cut.
// Accuracy: volumes to 1e-9 relative. The standard deviation is linear in the point heights;
// movement
//   of the crest is of second order.
// Errors: Refusal with the job file's line: unknown mark names. A check mark that fails withholds
// the
//   staff readings with a finding.
// Source: exact integration over the overlay; propagation of variance (JCGM 100); end-area and grid
//   formulas of any surveying text (checked against published examples in tests/published).
#pragma once

#include <cstdint>

#include "design/excavation.h"
#include "dig/dig_input.h"
#include "dig/dig_result.h"

namespace squaredig::dig {

DigResult dig(const DigInput& input, const design::DesignInput& design,
              const design::Excavation& pit, ground::Survey& survey);

// Loads for a loose volume: up to the next whole load, unless it is a whole number within 1e-9.
std::int64_t loads_for(LooseVolume loose, LooseVolume truck);
std::int64_t loads_for(LooseVolume loose, const TruckMass& truck);

}  // namespace squaredig::dig
