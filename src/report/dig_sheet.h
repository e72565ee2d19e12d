// The dig sheet: what the operator holds in the cab.
//
// What: one A3 page with plan, sections, quantities and cautions; then A4 pages: the plan for the
//   cab in as many windows as its figures need to be read, and the list of cells with staff
//   readings.
// Laws: dig_sheet.1  every figure is a field of the result; dig_sheet.2  the same bytes every time;
//   dig_sheet.3  every cell of the pit stands with its cut on the A4 pages, in 9 points or more.
// Source: contents common practice, no source.
#pragma once

#include "report/pit_plan.h"
#include "report/sheet.h"

namespace squaredig::report {

std::string dig_sheet_pdf(const PitPlan& plan, const SheetHead& head);

}  // namespace squaredig::report
