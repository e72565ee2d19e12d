// cells.csv: one row for each grid cell that holds some of the cut.
// Laws: cells_csv.1  a cell whose centre is not dug has blank dig level, cut and staff reading.
// Errors: none.
// Source: RFC 4180.
#pragma once

#include <string>

#include "dig/dig_result.h"

namespace squaredig::formats {

std::string cells_csv(const dig::CellGrid& grid);

}  // namespace squaredig::formats
