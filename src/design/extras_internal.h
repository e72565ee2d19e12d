// Ramps, sumps and trenches as convex cuts.
#pragma once

#include "design/cut_builder_internal.h"

namespace squaredig::design {

// What the extras are tied to: the tank, its floor and toe in the site frame.
struct PitBase {
  const DesignInput& input;
  const Tank& tank;
  const geometry::SiteFrame& frame;
  geometry::Plane floor;
  SideRing toe;
};

void add_ramps(const PitBase& base, PitCuts& pit);
void add_trenches(const PitBase& base, PitCuts& pit);
void add_sumps(const PitBase& base, PitCuts& pit);

}  // namespace squaredig::design
