// The fill sheet, on paper and as a page: what goes back, what to order, to which level each lift
// is filled, and what the layers as built and the tests prove.
//
// Laws: fill_sheet.1  every figure in it is a field of the result.
// Source: contents common practice, no source.
#pragma once

#include "fill/fill_result.h"
#include "report/sheet.h"

namespace squaredig::report {

std::string fill_sheet_pdf(const fill::FillResult& fill, const SheetHead& head);
std::string fill_page(const fill::FillResult& fill, const SheetHead& head);

}  // namespace squaredig::report
