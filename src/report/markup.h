// Text as it may stand in HTML and SVG: whatever it says, it stays text.
//
// Laws: markup.1  no text opens or closes an element, an attribute or a script; markup.2  what is
//   not UTF-8 or not allowed in a document, or turns the direction of what follows, becomes U+FFFD.
// Source: HTML living standard, XML 1.0 (characters allowed), RFC 3629 (UTF-8), Unicode UAX 9.
#pragma once

#include <string>
#include <string_view>

namespace squaredig::report {

// Valid UTF-8 without control characters; line breaks become blanks.
std::string clean_text(std::string_view text);
// Clean, and with & < > " ' written as character references.
std::string escaped(std::string_view text);

}  // namespace squaredig::report
