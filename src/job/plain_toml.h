// What a job file may not hold, told before the text is given to the parser.
//
// Why: nesting without end would exhaust the parser's stack; and toml++ 3.3 leaves it open what it
//   does with characters beyond ASCII outside quotes (TOML has none there) and behind a backslash
//   at the end of a line in a text of three quotes.
// Errors: one fault, at the first such place.
// Source: TOML 1.0: strings of four kinds, comments, brackets, dotted keys.
#pragma once

#include <optional>
#include <string_view>

#include "quantity/problem.h"

namespace squaredig::job {

// The first such place, in words.
std::optional<Problem> not_plain(std::string_view text, std::string_view file);

}  // namespace squaredig::job
