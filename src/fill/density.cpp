#include "fill/density.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "fill/proof_internal.h"
#include "fill/untested_internal.h"
#include "quantity/number_text.h"

namespace squaredig::fill {
namespace {

constexpr double kRounding = 1e-12;  // of an exact quotient

std::optional<Ratio> characteristic_of(const std::vector<CompactionTest>& tests, Ratio mean) {
  if (tests.size() < 6) return std::nullopt;
  double squares = 0;
  for (const auto& test : tests)
    squares += std::pow(relative_compaction(test).value() - mean.value(), 2);
  const auto n = static_cast<double>(tests.size());
  return Ratio::of(mean.value() - 0.92 * std::sqrt(squares / (n - 1)));
}

Verdict held_against(Ratio found, Ratio wanted) {
  return found.value() < wanted.value() * (1 - kRounding) ? Verdict::DoesNotConform
                                                          : Verdict::Conforms;
}

// Of the tests one by one and of the layer as a whole the worse.
Verdict verdict_of(const DensityAnswer& answer, Verdict layer) {
  if (!answer.failed.empty() || layer == Verdict::DoesNotConform) return Verdict::DoesNotConform;
  return layer == Verdict::NotProven ? layer : Verdict::Conforms;
}

// What a layer as a whole misses, in words; empty where it misses nothing.
std::string missed(const TestedLayer& layer, const DensityTests& told, Verdict verdict) {
  const std::string of = "layer " + quoted(layer.layer) + ", " + std::to_string(layer.count) +
                         (layer.count == 1 ? " test: " : " tests: ");
  if (verdict == Verdict::NotProven)
    return of + "a characteristic value takes six; take more tests";
  if (verdict != Verdict::DoesNotConform) return "";
  const bool by_characteristic = layer.characteristic && told.wanted_characteristic;
  const Ratio found = by_characteristic ? *layer.characteristic : layer.mean;
  const Ratio wanted = by_characteristic ? *told.wanted_characteristic : *told.wanted_mean;
  return of + (by_characteristic ? "characteristic value " : "mean ") +
         fixed(found.in_percent(), 2) + " percent of the " + told.standard + " density, wanted " +
         shortest(wanted.in_percent());
}

void tell_untested(const TestedLayer& layer, ResultHead& head) {
  head.cautions.push_back(
      "Layer " + quoted(layer.layer) + ": no test within " + fixed(layer.untested.in_metres(), 2) +
      " m of " + fixed(layer.along_ab.in_metres(), 2) + " m along A-B, " +
      fixed(layer.across_ab.in_metres(), 2) + " m in, the largest untested area.");
}

TestedLayer judged_layer(const std::string& name, const std::vector<CompactionTest>& tests,
                         const design::Excavation& pit, DensityTests& told) {
  const auto answer = judge_densities(tests, told.wanted);
  const Verdict whole = judge_layer(answer, {told.wanted_mean, told.wanted_characteristic});
  TestedLayer layer;
  layer.layer = name;
  layer.count = tests.size();
  layer.mean = answer.mean;
  layer.least = answer.least;
  layer.characteristic = answer.characteristic;
  layer.verdict = verdict_of(answer, whole);
  if (const auto words = missed(layer, told, whole); !words.empty()) told.failed.push_back(words);
  std::vector<geometry::Point2> points;
  points.reserve(tests.size());
  for (const auto& test : tests) points.push_back(pit.frame.to_site(test.at));
  const auto circle = largest_untested(pit, points);
  layer.untested = Length::metres(circle.radius);
  layer.untested_at = pit.frame.to_grid(circle.centre);
  layer.along_ab = pit.tank.along_ab(layer.untested_at);
  layer.across_ab = pit.tank.across_ab(layer.untested_at);
  return layer;
}

// By layer, in the order of the register.
void add_layers_tested(const std::vector<CompactionTest>& tests, const design::Excavation& pit,
                       DensityTests& told) {
  std::vector<std::string> names;
  std::map<std::string, std::vector<CompactionTest>> by_layer;
  for (const auto& test : tests) {
    if (!by_layer.contains(test.layer)) names.push_back(test.layer);
    by_layer[test.layer].push_back(test);
  }
  for (const auto& name : names)
    told.layers.push_back(judged_layer(name, by_layer[name], pit, told));
}

Verdict worst_of(const std::vector<TestedLayer>& layers) {
  Verdict worst = Verdict::Conforms;
  for (const auto& layer : layers)
    if (layer.verdict == Verdict::DoesNotConform || worst == Verdict::Conforms)
      worst = layer.verdict;
  return worst;
}

std::string failure(const CompactionTest& test, const DensityTests& told) {
  return test.place.file + " line " + std::to_string(test.place.line) + ", layer " +
         quoted(test.layer) + ": " + fixed(relative_compaction(test).in_percent(), 2) +
         " percent of the " + told.standard + " density, wanted " +
         shortest(told.wanted.in_percent());
}

}  // namespace

Ratio relative_compaction(const CompactionTest& test) {
  return Ratio::of(test.dry / test.maximum_dry);
}

DensityAnswer judge_densities(const std::vector<CompactionTest>& tests, Ratio wanted) {
  DensityAnswer answer;
  const auto n = static_cast<double>(tests.size());
  double sum = 0, least = relative_compaction(tests.front()).value();
  for (std::size_t i = 0; i < tests.size(); ++i) {
    const double ratio = relative_compaction(tests[i]).value();
    sum += ratio;
    least = std::min(least, ratio);
    if (held_against(Ratio::of(ratio), wanted) != Verdict::Conforms) answer.failed.push_back(i);
  }
  answer.mean = Ratio::of(sum / n);
  answer.least = Ratio::of(least);
  answer.characteristic = characteristic_of(tests, answer.mean);
  return answer;
}

Verdict judge_layer(const DensityAnswer& answer, const LayerWanted& wanted) {
  if (wanted.characteristic && answer.characteristic)
    return held_against(*answer.characteristic, *wanted.characteristic);
  if (wanted.mean) return held_against(answer.mean, *wanted.mean);
  return wanted.characteristic ? Verdict::NotProven : Verdict::NotAsked;
}

void add_density_tests(const FillInput& input, const FillContext& context, FillResult& result) {
  if (!input.tests || input.tests->empty() || !input.density_ratio) return;
  const auto answer = judge_densities(*input.tests, *input.density_ratio);
  DensityTests told;
  told.count = input.tests->size();
  told.mean = answer.mean;
  told.least = answer.least;
  told.characteristic = answer.characteristic;
  told.wanted = *input.density_ratio;
  told.wanted_mean = input.density_mean;
  told.wanted_characteristic = input.density_characteristic;
  if (input.density_standard)
    told.standard = *input.density_standard == DensityStandard::Standard ? "standard" : "modified";
  told.rounding =
      "Nothing is rounded before it is compared: 94.96 percent is less than 95. A quotient exactly "
      "on the limit passes.";
  for (const auto& test : *input.tests)
    told.tests.push_back(
        {test.layer, test.at, test.place, relative_compaction(test), Verdict::Conforms});
  for (const std::size_t i : answer.failed) {
    told.tests[i].verdict = Verdict::DoesNotConform;
    told.failed.push_back(failure((*input.tests)[i], told));
  }
  add_layers_tested(*input.tests, context.pit, told);
  told.verdict = worst_of(told.layers);
  for (const auto& failed : told.failed) result.head.findings.push_back({"density", failed + "."});
  for (const auto& layer : told.layers) tell_untested(layer, result.head);
  result.tests = std::move(told);
}

}  // namespace squaredig::fill
