// dig.json: the answer of the dig stage for machines.
// Laws: dig_json.1  every number reads back to the last bit; what was not asked is null.
// Errors: none.
// Source: RFC 8259.
#pragma once

#include <string>
#include <string_view>

#include "dig/dig_result.h"

namespace squaredig::formats {

std::string dig_json(const dig::DigResult& result, std::string_view version);

}  // namespace squaredig::formats
