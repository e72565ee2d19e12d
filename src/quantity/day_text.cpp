#include "quantity/day_text.h"

#include <charconv>
#include <cstdint>

namespace squaredig {
namespace {

std::string digits(std::int64_t value, std::size_t width) {
  std::string text = std::to_string(value);
  return text.size() < width ? std::string(width - text.size(), '0') + text : text;
}

std::optional<int> whole(std::string_view text) {
  int value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || end != text.data() + text.size() || value < 0) return std::nullopt;
  return value;
}

}  // namespace

std::string day_text(std::chrono::year_month_day day) {
  return digits(static_cast<int>(day.year()), 4) + "-" +
         digits(static_cast<unsigned>(day.month()), 2) + "-" +
         digits(static_cast<unsigned>(day.day()), 2);
}

std::string day_text(const std::optional<std::chrono::year_month_day>& day) {
  return day ? day_text(*day) : "1970-01-01";
}

std::optional<std::chrono::year_month_day> parse_day(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
  const auto year = whole(text.substr(0, 4));
  const auto month = whole(text.substr(5, 2));
  const auto day = whole(text.substr(8, 2));
  if (!year || !month || !day) return std::nullopt;
  const std::chrono::year_month_day date{std::chrono::year(*year),
                                         std::chrono::month(static_cast<unsigned>(*month)),
                                         std::chrono::day(static_cast<unsigned>(*day))};
  return date.ok() ? std::optional(date) : std::nullopt;
}

}  // namespace squaredig
