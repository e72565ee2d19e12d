// JSON of results: helpers that every STAGE_json.cpp of this room builds on.
//
// What: objects keep the order in which they are filled; numbers carry full double precision; text
//   that is not UTF-8 has its bad bytes replaced by U+FFFD.
// Laws: json.1  a number written is read back to the last bit;
//       json.2  neither NaN nor infinity is ever written: number() refuses them by name.
// Source: RFC 8259.
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>

#include "quantity/angle.h"
#include "quantity/position.h"
#include "quantity/result_head.h"

namespace squaredig::formats {

using Json = nlohmann::ordered_json;

// The number, never "-0.0". `name` is the field's, for the refusal.
Json number(double value, std::string_view name);
inline Json metres(Length v, std::string_view name) { return number(v.in_metres(), name); }
inline Json millimetres(Length v, std::string_view name) {
  return number(v.in_millimetres(), name);
}
inline Json square_metres(Area v, std::string_view name) {
  return number(v.in_square_metres(), name);
}
template <class AnyVolume>
Json cubic_metres(AnyVolume v, std::string_view name) {
  return number(v.in_cubic_metres(), name);
}

// What `as_json(*value, name)` gives, or null where there is no value.
template <class Value, class AsJson>
Json or_null(const std::optional<Value>& value, AsJson as_json, std::string_view name) {
  return value ? as_json(*value, name) : Json(nullptr);
}

// Adds "easting", "northing" (and "height") to an object.
void put(Json& object, GridPoint at);
void put(Json& object, GridPosition at);
// [e, n] and [e, n, h]
Json place_in_array(GridPoint at);
Json place_in_array(GridPosition at);

// tool, version, job, inputs, assumed, cautions, findings: what every result says first.
Json head_json(const ResultHead& head, std::string_view version);

// The file's bytes: indented by two blanks, one line feed at the end.
std::string json_text(const Json& object);

}  // namespace squaredig::formats
