// field.json: the answer of the field stage for machines.
//
// What: lengths in metres unless the name says mm; residuals of directions and zenith angles in
//   seconds, of distances in millimetres.
// Laws: field_json.1 every number reads back to the last bit; what was not computed is null.
// Errors: NaN and infinity are refused by the field's name.
// Source: RFC 8259.
#pragma once

#include <string>
#include <string_view>

#include "field/field_result.h"

namespace squaredig::formats {

std::string field_json(const field::FieldResult& result, std::string_view version);

}  // namespace squaredig::formats
