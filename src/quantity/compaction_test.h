// One test of compaction, as a field file gave it.
//
// Accuracy: as read. Errors: none.
// Source: layer, place, dry and maximum dry density of a test: docs/fill.md.
#pragma once

#include <string>

#include "quantity/position.h"
#include "quantity/problem.h"
#include "quantity/tolerance.h"

namespace squaredig {

struct CompactionTest {
  std::string layer;
  GridPoint at;
  Density dry;
  Density maximum_dry;
  Place place;
};

// Of soil weighed as it lies, with its water in percent of the dry mass: wet / (1 + w).
// Source: UFC 3-220-20 eq 3-1 (formula seen).
constexpr Density dry_density(Density wet, Ratio water) { return wet / (1 + water.value()); }

}  // namespace squaredig
