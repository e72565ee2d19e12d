// The ground page: the surface with its contours, what was found in it and where.
//
// Laws: ground_page.1  every figure in it is a field of the result, rounded by the page alone.
// Source: contents common practice, no source.
#pragma once

#include "ground/ground_result.h"
#include "report/sheet.h"

namespace squaredig::report {

std::string ground_page(const ground::GroundResult& ground, const SheetHead& head);

}  // namespace squaredig::report
