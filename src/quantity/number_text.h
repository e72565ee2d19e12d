// Numbers as text and back, the same in every locale.
//
// Laws: number.1  parse_number(shortest(x)) is x to the last bit for every finite x.
// Accuracy: shortest is the shortest text that reads back as the same double; fixed rounds half to
//   even on the exact binary value and never prints "-0.00".
// Errors: parse_number gives nothing for anything but one finite decimal number, whole text used.
// Source: std::to_chars and std::from_chars (ISO C++17, charconv).
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace squaredig {

std::optional<double> parse_number(std::string_view text);
std::string shortest(double value);
std::string fixed(double value, int decimals);
// The text without blanks (space, tab, CR) at both ends.
std::string_view trimmed(std::string_view text);

}  // namespace squaredig
