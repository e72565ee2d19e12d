// pegs.json: the pegs stage's result, for machines.
//
// Laws: pegs_json.1  corners, pegs, sides and diagonals stand in the order of the tank; lists that
//   were not asked for are empty, objects that were not asked for are null.
// Errors: NaN and infinity are refused by the field's name.
// Source: RFC 8259.
#pragma once

#include <string>
#include <string_view>

#include "pegs/pegs_result.h"

namespace squaredig::formats {

std::string pegs_json(const pegs::PegsResult& result, std::string_view version);

}  // namespace squaredig::formats
