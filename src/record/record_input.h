// What is printed on every sheet of the hand-over pack: from the table [job], as checked.
#pragma once

#include <chrono>
#include <optional>
#include <string>

#include "quantity/position.h"
#include "quantity/tolerance.h"

namespace squaredig::record {

struct RecordInput {
  std::string job;
  std::optional<std::chrono::year_month_day> date;
  std::optional<std::string> revision;
  std::optional<std::string> drawing;
  std::optional<std::string> prepared_by;
  std::optional<Ratio> voids;  // of the tank, for the storage table
};

}  // namespace squaredig::record
