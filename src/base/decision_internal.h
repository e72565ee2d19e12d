// Value, uncertainty and limit to one of three verdicts.
//
// What: a value conforms when it is inside the limit with its uncertainty added, does not conform
//   when it is outside with its uncertainty taken off, and is not proven in between.
// Accuracy: the quantile to 1e-14; comparisons forgive 1e-9 of the unit.
// Source: simple acceptance with guard bands, ILAC-G8:09/2019 4.2.3; quantile by definition.
#pragma once

#include "base/base_result.h"

namespace squaredig::base {

// The one-sided normal quantile: 1.645 at 0.95. Requires: one half <= confidence < 1.
double normal_quantile(Ratio confidence);

Verdict at_most(Amount value, Amount limit, Amount uncertainty);
Verdict at_least(Amount value, Amount limit, Amount uncertainty);
// The worse of two: does not conform, not proven, conforms, not asked.
Verdict worse(Verdict a, Verdict b);

enum class Bound { AtMost, AtLeast, BothSides };

// A check decided; not asked where there is no limit, not proven where there is no value.
Check decided(std::string name, Bound bound, std::optional<Amount> value,
              std::optional<Amount> limit, std::optional<Amount> uncertainty);

Verdict overall(const std::vector<Check>& checks);

}  // namespace squaredig::base
