// Data snooping: what an adjustment can and cannot say of a single gross error.
//
// Frame and units: the observations'.
// Requires: estimates of the same equations.
// Laws: snooping.1 correlations lie in [-1, 1], and are 1 of an observation with itself; snooping.2
//   two observations of which either alone would do have correlation -1 or 1, and their lines
//   cannot be told apart.
// Accuracy: that of the cofactors. Errors: none.
// Source: reliability of observations after Baarda (from memory): at alpha 0.001 and power 0.80 the
//   non-centrality is 4.1321, checked in tests/published/adjust_*.
#pragma once

#include <span>
#include <vector>

#include "adjust/least_squares.h"

namespace squaredig::adjust {

// Of the normalised residuals i and j; nothing where one of them is not checked by any other.
std::optional<double> correlation(const Estimates& estimates, std::span<const Equation> equations,
                                  std::size_t i, std::size_t j);

// Observations whose normalised residuals are correlated with that of `i` by `least` or more, `i`
// among them, in their order.
std::vector<std::size_t> alike(const Estimates& estimates, std::span<const Equation> equations,
                               std::size_t i, double least);

// How far the two-sided test at `alpha` must be off centre to be found with probability `power`.
double non_centrality(double alpha, double power);

// The smallest gross error that is found with the non-centrality; nothing where it is not checked.
std::optional<double> smallest_detectable(const Tested& tested, double sigma,
                                          double non_centrality);

// Whether the sum of squares is no more than chance allows, at one-sided `alpha`.
enum class GlobalTest { Passed, Failed, NothingToTest };
GlobalTest global_test(const Estimates& estimates, double alpha);

}  // namespace squaredig::adjust
