#include "adjust/distributions.h"

#include <cmath>
#include <limits>
#include <numbers>

namespace squaredig::adjust {
namespace {

constexpr double kTiny = 1e-300;
constexpr double kEnough = 1e-16;
constexpr int kMostSteps = 10000;

// x^a e^-x / gamma(a)
double gamma_front(double a, double x) { return std::exp(-x + a * std::log(x) - std::lgamma(a)); }

double gamma_series(double a, double x) {
  double term = 1 / a, sum = term;
  for (int n = 1; n < kMostSteps && std::abs(term) > std::abs(sum) * kEnough; ++n) {
    term *= x / (a + n);
    sum += term;
  }
  return sum * gamma_front(a, x);
}

// The complement, by the continued fraction, taken from the front.
double gamma_fraction(double a, double x) {
  double b = x + 1 - a, c = 1 / kTiny, d = 1 / b, h = d;
  for (int n = 1; n < kMostSteps; ++n) {
    const double an = -n * (n - a);
    b += 2;
    d = an * d + b;
    if (std::abs(d) < kTiny) d = kTiny;
    c = b + an / c;
    if (std::abs(c) < kTiny) c = kTiny;
    d = 1 / d;
    h *= d * c;
    if (std::abs(d * c - 1) < kEnough) break;
  }
  return h * gamma_front(a, x);
}

double beta_fraction(double a, double b, double x) {
  double c = 1, d = 1 - (a + b) * x / (a + 1);
  d = 1 / (std::abs(d) < kTiny ? kTiny : d);
  double h = d;
  const auto step = [&](double factor) {
    d = 1 + factor * d;
    d = 1 / (std::abs(d) < kTiny ? kTiny : d);
    c = 1 + factor / c;
    if (std::abs(c) < kTiny) c = kTiny;
    h *= d * c;
  };
  for (int m = 1; m < kMostSteps; ++m) {
    step(m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m)));
    step(-(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1)));
    if (std::abs(d * c - 1) < kEnough) break;
  }
  return h;
}

double beta_probability(double a, double b, double x) {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const double front = std::exp(std::lgamma(a + b) - std::lgamma(a) - std::lgamma(b) +
                                a * std::log(x) + b * std::log1p(-x));
  if (x < (a + 1) / (a + b + 2)) return front * beta_fraction(a, b, x) / a;
  return 1 - front * beta_fraction(b, a, 1 - x) / b;
}

// Where a rising function of x above 0 reaches p: the bracket is halved until nothing is between.
template <class Function>
double reached(Function f, double p) {
  double low = 0, high = 1;
  while (f(high) < p && high < 1e300) high *= 2;
  while (true) {
    const double middle = low + (high - low) / 2;
    if (middle <= low || middle >= high) return middle;
    (f(middle) < p ? low : high) = middle;
  }
}

}  // namespace

double normal_quantile(double p) {
  if (p == 0.5) return 0;
  const double tail = p < 0.5 ? p : 1 - p;
  const double x =
      reached([](double t) { return 1 - std::erfc(t / std::numbers::sqrt2) / 2; }, 1 - tail);
  // one step on the tail itself, where 1 - p has lost digits
  const double density = std::exp(-x * x / 2) / std::sqrt(2 * std::numbers::pi);
  const double better = x + (std::erfc(x / std::numbers::sqrt2) / 2 - tail) / density;
  return p < 0.5 ? -better : better;
}

double chi_square_probability(double x, double freedom) {
  if (x <= 0) return 0;
  const double a = freedom / 2, half = x / 2;
  return half < a + 1 ? gamma_series(a, half) : 1 - gamma_fraction(a, half);
}

double chi_square_quantile(double p, double freedom) {
  return reached([freedom](double x) { return chi_square_probability(x, freedom); }, p);
}

double fisher_probability(double x, double freedom_above, double freedom_below) {
  if (x <= 0) return 0;
  const double scaled = freedom_above * x;
  return beta_probability(freedom_above / 2, freedom_below / 2, scaled / (scaled + freedom_below));
}

double fisher_quantile(double p, double freedom_above, double freedom_below) {
  return reached([=](double x) { return fisher_probability(x, freedom_above, freedom_below); }, p);
}

}  // namespace squaredig::adjust
