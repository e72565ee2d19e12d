// Compaction tests: dry density over maximum dry density, against the ratio wanted.
//
// Frame and units: none, ratios. Requires: maximum dry densities above zero.
// Laws: density.1  a ratio exactly on the limit passes; density.2  nothing is rounded before it is
//   compared; density.3  a layer of six tests or more is held against the characteristic value that
//   is asked, one of fewer against the mean that is asked; where only the mean is asked, every
//   layer is, and where only the characteristic value is, a layer of fewer tests is not proven.
// Accuracy: 1e-12 of the ratio forgives the rounding of an exact quotient. Errors: none.
// Source: relative compaction, UFC 3-220-20 eq 3-3; characteristic value mean - 0.92 s over six
// tests
//   or more, s with n - 1, VicRoads Section 173 (formula seen).
#pragma once

#include "fill/fill_input.h"
#include "fill/fill_result.h"

namespace squaredig::fill {

Ratio relative_compaction(const CompactionTest& test);

struct DensityAnswer {
  Ratio mean;
  Ratio least;
  std::optional<Ratio> characteristic;
  std::vector<std::size_t> failed;  // by number
};
// Requires: at least one test.
DensityAnswer judge_densities(const std::vector<CompactionTest>& tests, Ratio wanted);

// What is asked of a layer's tests together.
struct LayerWanted {
  std::optional<Ratio> mean;
  std::optional<Ratio> characteristic;
};
// NotAsked where nothing is.
Verdict judge_layer(const DensityAnswer& answer, const LayerWanted& wanted);

}  // namespace squaredig::fill
