#include "adjust/snooping.h"

#include <algorithm>
#include <cmath>

#include "adjust/distributions.h"

namespace squaredig::adjust {

std::optional<double> correlation(const Estimates& estimates, std::span<const Equation> equations,
                                  std::size_t i, std::size_t j) {
  const Tested& a = estimates.observations[i];
  const Tested& b = estimates.observations[j];
  if (!a.normalised || !b.normalised) return std::nullopt;
  if (i == j) return 1.0;
  double adjusted = 0;
  for (const Term& s : equations[i].terms)
    for (const Term& t : equations[j].terms)
      adjusted += s.coefficient * t.coefficient * estimates.covariance(s.unknown, t.unknown);
  const double r = -adjusted / (equations[i].sigma * equations[j].sigma) /
                   std::sqrt(a.redundancy * b.redundancy);
  return std::clamp(r, -1.0, 1.0);
}

std::vector<std::size_t> alike(const Estimates& estimates, std::span<const Equation> equations,
                               std::size_t i, double least) {
  std::vector<std::size_t> group;
  for (std::size_t j = 0; j < equations.size(); ++j) {
    const auto r = correlation(estimates, equations, i, j);
    if (r && std::abs(*r) >= least) group.push_back(j);
  }
  return group;
}

double non_centrality(double alpha, double power) {
  return normal_quantile(1 - alpha / 2) + normal_quantile(power);
}

std::optional<double> smallest_detectable(const Tested& tested, double sigma,
                                          double non_centrality) {
  if (!tested.normalised) return std::nullopt;
  return sigma * non_centrality / std::sqrt(tested.redundancy);
}

GlobalTest global_test(const Estimates& estimates, double alpha) {
  if (estimates.freedom == 0) return GlobalTest::NothingToTest;
  const double most = chi_square_quantile(1 - alpha, static_cast<double>(estimates.freedom));
  return estimates.sum_of_squares <= most ? GlobalTest::Passed : GlobalTest::Failed;
}

}  // namespace squaredig::adjust
