// What `squaredig check` found, for machines: the head every result has, and the lines people read.
//
// Errors: none.
// Source: RFC 8259.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "quantity/result_head.h"

namespace squaredig::formats {

// Which stages the job has the tables for.
struct StageFound {
  std::string stage;
  std::vector<std::string> missing;  // empty: it can be run
};

std::string check_json(const ResultHead& head, const std::vector<StageFound>& stages,
                       std::string_view version);

}  // namespace squaredig::formats
