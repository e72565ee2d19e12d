// What the pegs' sheet and page show: tables from the result.
#pragma once

#include "pegs/pegs_result.h"
#include "report/words.h"

namespace squaredig::report {

// Every table with something in it, in the order they are used on site.
std::vector<Table> peg_tables(const pegs::PegsResult& pegs);
// What was set and taped, and the moves.
std::vector<Table> squareness_tables(const pegs::PegsResult& pegs);
// "as set: conforms", "taped: not proven"
std::vector<std::string> peg_verdicts(const pegs::PegsResult& pegs);

}  // namespace squaredig::report
