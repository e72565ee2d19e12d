// base.json: the answer of the base stage for machines.
//
// What: lengths of checks in metres, falls and density ratios in percent; each check says its unit.
// Laws: base_json.1  every number reads back to the last bit; what was not computed is null and
//   what was not asked is named.
// Errors: NaN and infinity are refused by the field's name.
// Source: RFC 8259.
#pragma once

#include <string>
#include <string_view>

#include "base/base_result.h"

namespace squaredig::formats {

std::string base_json(const base::BaseResult& result, std::string_view version);

}  // namespace squaredig::formats
