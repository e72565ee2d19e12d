// fill.json: the answer of the fill stage for machines; quantities.csv: what to order.
// Laws: fill_json.1  every number reads back to the last bit; what was not asked is null.
// Errors: none.
// Source: RFC 8259, RFC 4180.
#pragma once

#include <string>
#include <string_view>

#include "fill/fill_result.h"

namespace squaredig::formats {

std::string fill_json(const fill::FillResult& result, std::string_view version);
std::string quantities_csv(const fill::FillResult& result);

}  // namespace squaredig::formats
