#include "quantity/angle_text.h"

#include <array>
#include <cmath>
#include <vector>

#include "quantity/number_text.h"

namespace squaredig {
namespace {

constexpr std::array<std::string_view, 7> kSigns = {
    "\xC2\xB0", "\xE2\x80\xB2", "\xE2\x80\xB3", "'", "\"", ":", "-"};

std::string with_spaces(std::string_view text) {
  std::string plain(text);
  for (const auto sign : kSigns)
    for (auto at = plain.find(sign, 1); at != std::string::npos; at = plain.find(sign, at + 1))
      // "10 -5 00" is no angle: a dash parts two numbers only where it touches the first
      if (sign != "-" || plain[at - 1] != ' ') plain.replace(at, sign.size(), " ");
  return plain;
}

std::vector<std::string_view> words_of(std::string_view text) {
  std::vector<std::string_view> words;
  while (!(text = trimmed(text)).empty()) {
    const auto end = std::min(text.find_first_of(" \t"), text.size());
    words.push_back(text.substr(0, end));
    text.remove_prefix(end);
  }
  return words;
}

bool whole(std::string_view word) {
  return !word.empty() && word.find_first_not_of("0123456789") == std::string_view::npos;
}

std::optional<Angle> parse_dms(std::string_view text) {
  const std::string plain = with_spaces(trimmed(text));
  auto words = words_of(plain);
  if (words.size() != 3) return std::nullopt;
  const bool negative = words[0].front() == '-';
  if (negative) words[0].remove_prefix(1);
  if (!whole(words[0]) || !whole(words[1])) return std::nullopt;
  const auto d = parse_number(words[0]);
  const auto m = parse_number(words[1]);
  const auto s = parse_number(words[2]);
  if (!d || !m || !s || *m >= 60 || *s >= 60 || *s < 0 || words[2].front() == '+')
    return std::nullopt;
  const double degrees = *d + (*m * 60 + *s) / 3600;
  return Angle::degrees(negative ? -degrees : degrees);
}

}  // namespace

std::optional<Angle> parse_angle(std::string_view text, AngleNotation notation) {
  if (notation == AngleNotation::DegreesMinutesSeconds) return parse_dms(text);
  const auto value = parse_number(text);
  if (!value) return std::nullopt;
  return notation == AngleNotation::Gon ? Angle::gons(*value) : Angle::degrees(*value);
}

std::string dms_text(Angle angle, int decimals) {
  const double unit = std::pow(10.0, decimals);
  double ticks = std::round(std::abs(angle.in_seconds()) * unit);
  const bool negative = angle.in_degrees() < 0 && ticks > 0;
  const double degrees = std::floor(ticks / (3600 * unit));
  ticks -= degrees * 3600 * unit;
  const double minutes = std::floor(ticks / (60 * unit));
  const double seconds = (ticks - minutes * 60 * unit) / unit;
  const auto two = [](const std::string& t) {
    return t.find('.') == 1 || t.size() == 1 ? "0" + t : t;
  };
  return (negative ? "-" : "") + fixed(degrees, 0) + " " + two(fixed(minutes, 0)) + " " +
         two(fixed(seconds, decimals));
}

std::string gon_text(Angle angle, int decimals) {
  return fixed(angle.in_degrees() / 0.9, decimals);
}

}  // namespace squaredig
