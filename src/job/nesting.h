// How deep a TOML text nests, told before it is parsed.
//
// Source: TOML 1.0: strings of four kinds, comments, brackets, dotted keys.
#pragma once

#include <optional>
#include <string_view>

#include "quantity/problem.h"

namespace squaredig::job {

// The first place where brackets or dotted keys nest deeper than any job file needs.
std::optional<Place> too_deep(std::string_view text, std::string_view file);

}  // namespace squaredig::job
