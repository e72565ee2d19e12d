// pegs.csv: every point that is set out, as a points file that instruments and this program read;
// pegs-polar.csv: the schedules of all stations, each begun by its backsight check.
//
// Frame and units: the job's grid, metres; heights: ground at a peg, underside at a corner, invert
//   of a pipe, cover of a shaft. Bearings and turns in degrees, `distance` on the ground.
// Laws: pegs_csv.1  read as a points file, each point has its name and place to the last bit.
// Errors: NaN and infinity are refused by the column's name.
// Source: RFC 4180.
#pragma once

#include <string>

#include "pegs/pegs_result.h"

namespace squaredig::formats {

std::string pegs_csv(const pegs::PegsResult& result);
std::string pegs_polar_csv(const pegs::PegsResult& result);

}  // namespace squaredig::formats
