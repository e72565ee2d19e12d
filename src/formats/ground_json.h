// ground.json: the answer of the ground stage for machines.
//
// What: counts, areas, levels, suspects and crossings; by_m is positive for a point that is high.
// Laws: ground_json.1  every number reads back to the last bit; suspects and crossings keep their
//   order, and names their bytes.
// Errors: NaN and infinity are refused by the field's name.
// Source: RFC 8259.
#pragma once

#include <string>
#include <string_view>

#include "ground/ground_result.h"

namespace squaredig::formats {

std::string ground_json(const ground::GroundResult& result, std::string_view version);

}  // namespace squaredig::formats
