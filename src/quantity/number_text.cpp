#include "quantity/number_text.h"

#include <array>
#include <charconv>
#include <cmath>
#include <cstdint>

namespace squaredig {
namespace {

// As much as the shortest text of any double needs, and more.
using NumberRoom = std::array<char, 64>;

// A number with one to four decimals, as most coordinates are: fewer than 16 digits, so that no two
// such texts are the same double and none that is shorter reads back as this one. Nothing for
// others, among them those that are shorter with an exponent.
char* write_decimal(NumberRoom& room, double value) {
  const double scaled = value * 1e4;
  if (!(std::abs(scaled) < 1e15)) return nullptr;
  const auto digits = static_cast<std::int64_t>(scaled + std::copysign(0.5, scaled));
  if (digits % 10000 == 0 || std::abs(digits) < 10 || static_cast<double>(digits) / 1e4 != value)
    return nullptr;
  char* at = room.data();
  if (digits < 0) *at++ = '-';
  const auto size = static_cast<std::uint64_t>(std::abs(digits));
  at = std::to_chars(at, room.data() + room.size(), size / 10000).ptr;
  *at++ = '.';
  auto rest = size % 10000;
  for (std::uint64_t unit = 1000; rest > 0; rest %= unit, unit /= 10)
    *at++ = static_cast<char>('0' + rest / unit);
  return at;
}

constexpr std::array kPowersOfTen{1e0, 1e1, 1e2,  1e3,  1e4,  1e5,  1e6,  1e7,
                                  1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15};

// Up to 15 digits with at most one point among or behind them: a whole number below 2^53 over a
// power of ten, both exact, so that their quotient is rounded once, as from_chars rounds. Nothing
// for anything else.
std::optional<double> parse_decimal(std::string_view text) {
  const bool negative = !text.empty() && text.front() == '-';
  if (negative) text.remove_prefix(1);
  if (text.empty() || text.size() > 16) return std::nullopt;
  std::uint64_t digits = 0;
  std::size_t count = 0, point = text.size() - 1;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto digit = static_cast<unsigned>(text[i]) - '0';
    if (digit > 9) {
      if (text[i] != '.' || count < i) return std::nullopt;
      point = i;
    } else {
      digits = 10 * digits + digit;
      ++count;
    }
  }
  if (count == 0 || count > 15) return std::nullopt;
  const double value = static_cast<double>(digits) / kPowersOfTen[text.size() - 1 - point];
  return negative ? -value : value;
}

}  // namespace

std::optional<double> parse_number(std::string_view text) {
  if (const auto value = parse_decimal(text)) return value;
  text = trimmed(text);
  if (!text.empty() && text.front() == '+') {
    text.remove_prefix(1);
    if (!text.empty() && (text.front() == '-' || text.front() == '+')) return std::nullopt;
  }
  double value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || end != text.data() + text.size()) return std::nullopt;
  if (!std::isfinite(value)) return std::nullopt;
  return value;
}

std::string shortest(double value) {
  NumberRoom room{};
  char* end = write_decimal(room, value);
  if (value == 0) value = 0;  // no minus zero in text
  if (end == nullptr) end = std::to_chars(room.data(), room.data() + room.size(), value).ptr;
  return {room.data(), end};
}

std::string fixed(double value, int decimals) {
  std::array<char, 512> buffer{};
  const auto [end, error] = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value,
                                          std::chars_format::fixed, decimals);
  std::string text(buffer.data(), end);
  if (text.front() == '-' && text.find_first_of("123456789") == std::string::npos) text.erase(0, 1);
  return text;
}

std::string_view trimmed(std::string_view text) {
  const auto first = text.find_first_not_of(" \t\r");
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t\r") - first + 1);
}

}  // namespace squaredig
