// What is printed on every page of the hand-over pack: from the table [job], as checked.
#pragma once

#include <chrono>
#include <optional>
#include <string>

namespace squaredig::record {

struct RecordInput {
  std::optional<std::chrono::year_month_day> date;
  std::optional<std::string> revision;
  std::optional<std::string> drawing;
  std::optional<std::string> prepared_by;
};

}  // namespace squaredig::record
