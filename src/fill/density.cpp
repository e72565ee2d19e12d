#include "fill/density.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "fill/proof_internal.h"
#include "fill/untested_internal.h"
#include "quantity/number_text.h"

namespace squaredig::fill {
namespace {

std::optional<Ratio> characteristic_of(const std::vector<CompactionTest>& tests, Ratio mean) {
  if (tests.size() < 6) return std::nullopt;
  double squares = 0;
  for (const auto& test : tests)
    squares += std::pow(relative_compaction(test).value() - mean.value(), 2);
  const double n = static_cast<double>(tests.size());
  return Ratio::of(mean.value() - 0.92 * std::sqrt(squares / (n - 1)));
}

Verdict verdict_of(const DensityAnswer& answer) {
  return answer.failed.empty() ? Verdict::Conforms : Verdict::DoesNotConform;
}

void tell_untested(const TestedLayer& layer, ResultHead& head) {
  head.cautions.push_back(
      "Layer " + quoted(layer.layer) + ": no test within " + fixed(layer.untested.in_metres(), 2) +
      " m of " + fixed(layer.along_ab.in_metres(), 2) + " m along A-B, " +
      fixed(layer.across_ab.in_metres(), 2) + " m in, the largest untested area.");
}

TestedLayer judged_layer(const std::string& name, const std::vector<CompactionTest>& tests,
                         Ratio wanted, const design::Excavation& pit) {
  const auto answer = judge_densities(tests, wanted);
  TestedLayer layer;
  layer.layer = name;
  layer.count = tests.size();
  layer.mean = answer.mean;
  layer.least = answer.least;
  layer.characteristic = answer.characteristic;
  layer.verdict = verdict_of(answer);
  std::vector<geometry::Point2> points;
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
    told.layers.push_back(judged_layer(name, by_layer[name], told.wanted, pit));
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
  const double n = static_cast<double>(tests.size());
  double sum = 0, least = relative_compaction(tests.front()).value();
  for (std::size_t i = 0; i < tests.size(); ++i) {
    const double ratio = relative_compaction(tests[i]).value();
    sum += ratio;
    least = std::min(least, ratio);
    if (ratio < wanted.value() * (1 - 1e-12)) answer.failed.push_back(i);
  }
  answer.mean = Ratio::of(sum / n);
  answer.least = Ratio::of(least);
  answer.characteristic = characteristic_of(tests, answer.mean);
  return answer;
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
  if (input.density_standard)
    told.standard = *input.density_standard == DensityStandard::Standard ? "standard" : "modified";
  told.rounding =
      "Nothing is rounded before it is compared: 94.96 percent is less than 95. A quotient exactly "
      "on the limit passes.";
  told.verdict = verdict_of(answer);
  for (const auto& test : *input.tests)
    told.tests.push_back(
        {test.layer, test.at, test.place, relative_compaction(test), Verdict::Conforms});
  for (const std::size_t i : answer.failed) {
    told.tests[i].verdict = Verdict::DoesNotConform;
    told.failed.push_back(failure((*input.tests)[i], told));
    result.head.findings.push_back({"density", told.failed.back() + "."});
  }
  add_layers_tested(*input.tests, context.pit, told);
  for (const auto& layer : told.layers) tell_untested(layer, result.head);
  result.tests = std::move(told);
}

}  // namespace squaredig::fill
