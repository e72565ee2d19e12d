// The peg sheet and page: what the surveyor sets out, how each corner is found again, and how
// square it came out.
//
// Laws: pegs_sheet.1  every figure is a field of the result.
// Source: contents common practice, no source.
#pragma once

#include "pegs/pegs_result.h"
#include "report/sheet.h"

namespace squaredig::report {

std::string pegs_sheet_pdf(const pegs::PegsResult& pegs, const SheetHead& head);
std::string pegs_page(const pegs::PegsResult& pegs, const SheetHead& head);

}  // namespace squaredig::report
