// points.csv: the reduced points as a points file that this program and others read.
//
// Frame and units: the job's grid, metres; standard deviations in millimetres, of one coordinate in
//   plan, and of the height; blank where none is known.
// Laws: field_points_csv.1 read as a points file, each point has its name, code and place to the
//   last bit.
// Errors: NaN and infinity are refused by the column's name.
// Source: RFC 4180.
#pragma once

#include <string>

#include "field/field_result.h"

namespace squaredig::formats {

std::string field_points_csv(const field::FieldResult& result);

}  // namespace squaredig::formats
