// Distributions that tests of observations need: normal quantiles; chi-square and F both ways.
//
// Frame and units: plain numbers. Requires: probabilities in (0, 1); degrees of freedom from 1 on.
// Laws: distributions.1 a quantile put into its distribution gives the probability back.
// Accuracy: quantiles to 1e-10 relative; against printed tables in tests/published/adjust_*.
// Errors: none.
// Source: normal by the error function of the standard library; incomplete gamma and beta functions
//   by series and continued fractions (Abramowitz and Stegun, 6.5.29, 6.5.31, 26.5.8, from memory).
#pragma once

namespace squaredig::adjust {

double normal_quantile(double p);
double chi_square_probability(double x, double freedom);
double chi_square_quantile(double p, double freedom);
double fisher_probability(double x, double freedom_above, double freedom_below);
double fisher_quantile(double p, double freedom_above, double freedom_below);

}  // namespace squaredig::adjust
