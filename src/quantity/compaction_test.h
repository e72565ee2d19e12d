// One test of compaction, as a field file gave it.
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

}  // namespace squaredig
