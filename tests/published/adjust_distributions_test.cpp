// Quantiles of the distributions, and the numbers of data snooping.
// Source: printed tables of the distributions; recomputed by an independent library. Data snooping
// after Baarda: from memory, recomputed.
#include <gtest/gtest.h>

#include <cmath>

#include "adjust/distributions.h"
#include "adjust/snooping.h"

namespace squaredig::adjust {
namespace {

TEST(PublishedDistributions, ChiSquare) {
  const double freedom[] = {1, 2, 3, 5, 10};
  const double p95[] = {3.8415, 5.9915, 7.8147, 11.0705, 18.3070};
  const double p975[] = {5.0239, 7.3778, 9.3484, 12.8325, 20.4832};
  const double p025[] = {0.0010, 0.0506, 0.2158, 0.8312, 3.2470};
  for (std::size_t i = 0; i < 5; ++i) {
    EXPECT_NEAR(chi_square_quantile(0.95, freedom[i]), p95[i], 5.1e-5);
    EXPECT_NEAR(chi_square_quantile(0.975, freedom[i]), p975[i], 5.1e-5);
    EXPECT_NEAR(chi_square_quantile(0.025, freedom[i]), p025[i], 5.1e-5);
  }
}

TEST(PublishedDistributions, NormalAndF) {
  EXPECT_NEAR(normal_quantile(0.975), 1.95996, 5.1e-6);
  EXPECT_NEAR(normal_quantile(0.95), 1.64485, 5.1e-6);
  EXPECT_NEAR(fisher_quantile(0.95, 2, 3), 9.5521, 5.1e-5);
  EXPECT_NEAR(fisher_quantile(0.95, 2, 10), 4.1028, 5.1e-5);
  EXPECT_NEAR(std::sqrt(chi_square_quantile(0.95, 2)), 2.4477, 5.1e-5);
  EXPECT_NEAR(chi_square_probability(1, 2), 0.3935, 5.1e-5);
  EXPECT_NEAR(std::sqrt(chi_square_quantile(0.95, 3)), 2.7955, 5.1e-5);
}

TEST(PublishedDistributions, DataSnooping) {
  const double alpha[] = {0.001, 0.01, 0.05};
  const double critical[] = {3.2905, 2.5758, 1.9600};
  const double off_centre[] = {4.1321, 3.4175, 2.8016};
  const double lambda[] = {17.075, 11.679, 7.849};
  for (std::size_t i = 0; i < 3; ++i) {
    EXPECT_NEAR(normal_quantile(1 - alpha[i] / 2), critical[i], 5.1e-5);
    EXPECT_NEAR(non_centrality(alpha[i], 0.80), off_centre[i], 5.1e-5);
    EXPECT_NEAR(std::pow(non_centrality(alpha[i], 0.80), 2), lambda[i], 5.1e-4);
  }
}

TEST(Distributions, AQuantileGivesItsProbabilityBack_distributions_1) {
  for (const double p : {1e-9, 0.001, 0.3, 0.5, 0.9, 0.999, 1 - 1e-9}) {
    EXPECT_NEAR(std::erfc(-normal_quantile(p) / std::sqrt(2.0)) / 2, p, 1e-14);
    for (const double f : {1.0, 2.0, 7.0, 60.0, 1500.0}) {
      EXPECT_NEAR(chi_square_probability(chi_square_quantile(p, f), f), p, 1e-12) << p << " " << f;
      EXPECT_NEAR(fisher_probability(fisher_quantile(p, f, 9), f, 9), p, 1e-12) << p << " " << f;
    }
  }
}

}  // namespace
}  // namespace squaredig::adjust
