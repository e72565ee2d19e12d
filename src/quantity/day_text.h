// Calendar days as text: "2026-03-20".
// Accuracy: exact. Errors: none.
// Source: ISO 8601, extended format.
#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>

namespace squaredig {

std::string day_text(std::chrono::year_month_day day);
// The day of the job's files: 1970-01-01 where the job has no date.
std::string day_text(const std::optional<std::chrono::year_month_day>& day);
// Nothing for any other form, and for a day that is none.
std::optional<std::chrono::year_month_day> parse_day(std::string_view text);

}  // namespace squaredig
