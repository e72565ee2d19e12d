// The dig as a page for a tablet: the plan to tap, a cell's figures, staff entry, marks of what is
// done.
//
// Laws: dig_page.1  every figure in it is a field of the result, rounded by the page alone.
// Source: contents common practice, no source.
#pragma once

#include "report/pit_plan.h"
#include "report/sheet.h"

namespace squaredig::report {

std::string dig_page(const PitPlan& plan, const SheetHead& head);

}  // namespace squaredig::report
