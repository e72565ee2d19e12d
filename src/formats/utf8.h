// Text in UTF-8.
//
// Errors: none.
// Source: RFC 3629.
#pragma once

#include <string_view>

namespace squaredig::formats {

// True where the bytes are well-formed UTF-8.
bool is_utf8(std::string_view bytes);
// The number of characters of well-formed UTF-8.
int characters(std::string_view bytes);

}  // namespace squaredig::formats
