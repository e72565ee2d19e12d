// Least squares: linear observation equations in; estimates, covariances and outlier tests out.
//
// What: minimises sum ((a.x - l) / sigma)^2. Callers linearise, and repeat where they must.
// Frame and units: the caller's; corrections have the unknowns' units, residuals the observations'.
//   A residual is adjusted less observed, v = a.x - l.
// Requires: sigmas above zero and finite; unknown numbers below `unknowns`.
// Laws: adjust.1  redundancy numbers sum to the degrees of freedom; adjust.2  the estimates do not
//   depend on the order of the equations beyond rounding; adjust.3  scaling all sigmas changes
//   neither estimates nor residuals; adjust.4  with one gross error in otherwise perfect
//   observations, `gross_error` of that one is the error.
// Accuracy: orthogonal triangles in extended precision; against NIST StRD: Norris and Longley to
//   1e-11, Filip to 1e-7 relative, tests/published/adjust_*.
// Errors: nothing where the equations do not fix the unknowns.
// Source: weighted QR decomposition; data snooping with redundancy numbers after Baarda (from
//   memory), see checks of distribution constants in the tests.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace squaredig::adjust {

struct Term {
  std::size_t unknown = 0;
  double coefficient = 0;
};

struct Equation {
  std::vector<Term> terms;
  double observed = 0;  // l, or observed less computed
  double sigma = 1;
};

// What one observation says about the others, and they about it.
struct Tested {
  double residual = 0;
  double redundancy = 0;  // 0: nothing checks it; 1: the others fix it wholly
  // Residual over its standard deviation; nothing where nothing checks it.
  std::optional<double> normalised;
  // Observed less what the others say; nothing where nothing checks it.
  std::optional<double> gross_error;
};

class Estimates {
 public:
  std::vector<double> unknowns;
  std::vector<Tested> observations;
  std::size_t freedom = 0;
  double sum_of_squares = 0;  // of residual over sigma
  // A-posteriori standard deviation of unit weight; nothing without redundancy.
  std::optional<double> sigma0() const;
  // Of unknowns i and j, for the sigmas as given.
  double covariance(std::size_t i, std::size_t j) const {
    return cofactors[i * unknowns.size() + j];
  }
  std::vector<double> cofactors;
};

std::optional<Estimates> least_squares(std::size_t unknowns, std::span<const Equation> equations);

// The observation with the greatest normalised residual above `critical`; the first of equals.
std::optional<std::size_t> most_suspect(const Estimates& estimates, double critical);

}  // namespace squaredig::adjust
