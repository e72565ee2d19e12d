#include "fill/density.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "fill/proof_internal.h"
#include "geometry/polygon.h"
#include "quantity/number_text.h"

namespace squaredig::fill {
namespace {

// The largest circle over the toe without a test of the layer.
void tell_untested(const std::string& layer, const std::vector<GridPoint>& tested,
                   const FillContext& context, FillResult& result) {
  std::vector<geometry::Point2> points;
  for (const GridPoint p : tested) points.push_back(context.pit.frame.to_site(p));
  const auto circle = geometry::largest_empty_circle(context.pit.pit.toe, points);
  const GridPoint at = context.pit.frame.to_grid(circle.centre);
  result.head.cautions.push_back(
      "Layer " + quoted(layer) + ": no test within " + fixed(circle.radius, 2) + " m of " +
      fixed(context.pit.tank.along_ab(at).in_metres(), 2) + " m along A-B, " +
      fixed(context.pit.tank.across_ab(at).in_metres(), 2) + " m in, the largest untested area.");
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
  if (tests.size() >= 6) {
    double squares = 0;
    for (const auto& test : tests)
      squares += std::pow(relative_compaction(test).value() - answer.mean.value(), 2);
    answer.characteristic = Ratio::of(answer.mean.value() - 0.92 * std::sqrt(squares / (n - 1)));
  }
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
  if (input.density_standard)
    told.standard = *input.density_standard == DensityStandard::Standard ? "standard" : "modified";
  told.verdict = answer.failed.empty() ? Verdict::Conforms : Verdict::DoesNotConform;
  std::map<std::string, std::vector<GridPoint>> by_layer;
  for (const auto& test : *input.tests) by_layer[test.layer].push_back(test.at);
  for (const std::size_t i : answer.failed) {
    const auto& test = (*input.tests)[i];
    told.failed.push_back(test.place.file + " line " + std::to_string(test.place.line) +
                          ", layer " + quoted(test.layer) + ": " +
                          fixed(relative_compaction(test).in_percent(), 2) + " percent of the " +
                          told.standard + " density, wanted " +
                          shortest(input.density_ratio->in_percent()));
    result.head.findings.push_back({"density", told.failed.back() + "."});
  }
  for (const auto& [layer, points] : by_layer) tell_untested(layer, points, context, result);
  result.tests = std::move(told);
}

}  // namespace squaredig::fill
