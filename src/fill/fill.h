// The fill stage: what goes back into the hole, what to order, and what proves it.
//
// What: volumes of bedding, tank, side fill per lift, capping layers, ramp, trench and sump fill
// and
//   finish, by exact overlay with the real excavation; sheet materials; layers as built;
//   compaction; uplift screening.
// Frame and units: grid; placed (compacted) volumes unless said otherwise.
// Requires: the excavation.
// Laws: fill.1  all fills = cut + fill to floor + above ground - left open; fill.2  lifts sum to
// the
//   side fill; fill.3  a thinner lift changes no total; fill.4  moving the job changes nothing.
// Accuracy: 1e-9 of the cut, printed as closure in every run.
// Errors: Refusal with the job file's line: capping so wide that it crosses itself.
// Source: exact integration over the overlay; take-off rules named beside each test.
#pragma once

#include "design/excavation.h"
#include "fill/fill_input.h"
#include "fill/fill_result.h"

namespace squaredig::fill {

struct FillContext {
  const design::DesignInput& design;
  const design::Excavation& pit;
  std::optional<Ratio> bulking;  // 1 m3 in the ground becomes this much loose
  const WaterInput* water = nullptr;
};

FillResult fill(const FillInput& input, const FillContext& context);

}  // namespace squaredig::fill
