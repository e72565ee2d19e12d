// The field page: points with their standard deviations, residuals of each set-up, the level book,
// the fit.
//
// Laws: field_page.1  every figure in it is a field of the result.
// Source: contents common practice, no source.
#pragma once

#include "field/field_result.h"
#include "report/sheet.h"

namespace squaredig::report {

std::string field_page(const field::FieldResult& field, const SheetHead& head);

}  // namespace squaredig::report
