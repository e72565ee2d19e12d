// repair.csv and repair.dxf: where to trim and where to make up, tied to the tank's own lines.
//
// What: the table has one row per patch, its deepest point, then one per point that asks for it;
//   the drawing has the outlines, and each point with its move.
// Frame and units: the job's grid; `move_mm` is the correction: down is negative.
// Laws: repair_files.1  patches stand by number, each patch's row before those of its points.
// Errors: NaN and infinity are refused by the column's name.
// Source: RFC 4180 with LF; DXF Release 12.
#pragma once

#include <string>

#include "base/base_result.h"

namespace squaredig::formats {

std::string repair_csv(const base::BaseResult& result);
std::string repair_dxf(const base::BaseResult& result);

}  // namespace squaredig::formats
