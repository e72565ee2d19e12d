#include <cmath>
#include <numbers>

#include "base/decision_internal.h"

namespace squaredig::base {
namespace {

constexpr double kSlack = 1e-9;

double plain(Amount a) {
  if (const auto* length = std::get_if<Length>(&a)) return length->in_metres();
  if (const auto* fall = std::get_if<Fall>(&a)) return fall->drop_per_run();
  return std::get<Ratio>(a).value();
}

Verdict decide(double excess, double uncertainty) {
  if (excess + uncertainty <= kSlack) return Verdict::Conforms;
  if (excess - uncertainty > kSlack) return Verdict::DoesNotConform;
  return Verdict::NotProven;
}

int rank(Verdict v) {
  switch (v) {
    case Verdict::NotAsked:
      return 0;
    case Verdict::Conforms:
      return 1;
    case Verdict::NotProven:
      return 2;
    case Verdict::DoesNotConform:
      break;
  }
  return 3;
}

}  // namespace

double normal_quantile(Ratio confidence) {
  // Newton on the tail q = erfc(x / sqrt 2) / 2, in logarithms, where it is nearly a parabola
  const double tail = 1 - confidence.value();
  double x = 0;
  for (int i = 0; i < 60; ++i) {
    const double q = std::erfc(x / std::numbers::sqrt2) / 2;
    const double density = std::exp(-x * x / 2) / std::sqrt(2 * std::numbers::pi);
    const double step = std::log(q / tail) * q / density;
    x += step;
    if (std::abs(step) < 1e-15 * (1 + x)) break;
  }
  return x;
}

Verdict at_most(Amount value, Amount limit, Amount uncertainty) {
  return decide(plain(value) - plain(limit), plain(uncertainty));
}

Verdict at_least(Amount value, Amount limit, Amount uncertainty) {
  return decide(plain(limit) - plain(value), plain(uncertainty));
}

Verdict worse(Verdict a, Verdict b) { return rank(a) >= rank(b) ? a : b; }

Check decided(std::string name, Bound bound, std::optional<Amount> value,
              std::optional<Amount> limit, std::optional<Amount> uncertainty) {
  Check check;
  check.name = std::move(name);
  check.value = value;
  check.limit = limit;
  check.uncertainty = uncertainty;
  if (!limit) return check;
  if (!value) {
    check.verdict = Verdict::NotProven;
    return check;
  }
  const Amount u = uncertainty.value_or(Length{});
  switch (bound) {
    case Bound::AtMost:
      check.verdict = at_most(*value, *limit, u);
      break;
    case Bound::AtLeast:
      check.verdict = at_least(*value, *limit, u);
      break;
    case Bound::BothSides:
      check.verdict = decide(std::abs(plain(*value)) - plain(*limit), plain(u));
      break;
  }
  return check;
}

Verdict overall(const std::vector<Check>& checks) {
  Verdict verdict = Verdict::Conforms;
  for (const Check& c : checks) {
    const bool coverage = c.name == "coverage";
    const bool fails = c.verdict == Verdict::DoesNotConform;
    if (c.verdict == Verdict::NotAsked) continue;
    verdict = worse(verdict, coverage && fails ? Verdict::NotProven : c.verdict);
  }
  return verdict;
}

}  // namespace squaredig::base
