// The dig sheet: what the operator holds in the cab.
//
// What: one A3 page with plan, sections, quantities and cautions; then A4 pages: the plan alone for
//   the cab, and the list of cells with staff readings.
// Laws: dig_sheet.1  every figure is a field of the result; dig_sheet.2  the same bytes every time.
// Source: contents common practice, no source.
#pragma once

#include "report/pit_plan.h"
#include "report/sheet.h"

namespace squaredig::report {

std::string dig_sheet_pdf(const PitPlan& plan, const SheetHead& head);

// The plan alone, for the page.
std::string pit_plan_svg(const PitPlan& plan, PageSize size);

}  // namespace squaredig::report
