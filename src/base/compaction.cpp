#include "base/checks_internal.h"
#include "base/decision_internal.h"
#include "quantity/number_text.h"

namespace squaredig::base {

CompactionAnswer judge_compaction(const BaseInput& input) {
  CompactionAnswer answer;
  const std::optional<Amount> limit =
      input.density_ratio ? std::optional<Amount>(*input.density_ratio) : std::nullopt;
  answer.check.name = "compaction";
  answer.check.words = "no compaction test was given";
  if (!input.tests) return answer;
  if (input.tests->empty()) {
    answer.check = decided("compaction", Bound::AtLeast, std::nullopt, limit, std::nullopt);
    answer.check.words = "the file of compaction tests has no test";
    return answer;
  }
  std::size_t least = 0;
  for (const CompactionTest& test : *input.tests) {
    const Ratio ratio = Ratio::of(test.dry / test.maximum_dry);
    const Verdict verdict =
        decided("compaction", Bound::AtLeast, ratio, limit, std::nullopt).verdict;
    answer.outcomes.push_back({test.layer, test.at, test.place, ratio, verdict});
    if (ratio < answer.outcomes[least].ratio) least = answer.outcomes.size() - 1;
  }
  const CompactionOutcome& worst = answer.outcomes[least];
  answer.check = decided("compaction", Bound::AtLeast, worst.ratio, limit, std::nullopt);
  answer.check.at = worst.at;
  answer.check.words = "the least of " + std::to_string(answer.outcomes.size()) + " tests, line " +
                       std::to_string(worst.place.line) + " of " + worst.place.file;
  return answer;
}

}  // namespace squaredig::base
