// The base report, on paper and as a page: the verdict, the checks, where, and what to do.
//
// Laws: base_sheet.1  every figure is a field of the result.
// Source: contents common practice, no source.
#pragma once

#include "base/base_result.h"
#include "report/sheet.h"

namespace squaredig::report {

std::string base_sheet_pdf(const base::BaseResult& base, const SheetHead& head);
std::string base_page(const base::BaseResult& base, const SheetHead& head);

}  // namespace squaredig::report
