// convert: the points of a file that stands in another reference system, brought into the job's.
//
// What: a file's system is the job's own, or a way to it is known that is good enough, or it is
//   refused; which way, and how good, is told.
// Frame and units: a Position holds eastward and northward before height: metres for projected
//   systems, degrees (longitude, latitude) for geographic ones. Between systems without a height of
//   their own, heights stay as they are.
// Requires: authority codes.
// Laws: convert.1 points of the same system come back bit for bit; convert.2 there and back is the
//   same point to 1e-6 m where the accuracy is zero; convert.3 nothing comes out by a way that is
//   less accurate than asked for.
// Accuracy: as the register states it, in `used`; zero for map projections of one datum.
// Errors: those of Operation; Refusal where the best way is less accurate than `worst`.
// Source: PJ operation factory contexts, see operation.h.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "geodesy/operation.h"

namespace squaredig::geodesy {

struct Converted {
  std::vector<Position> points;
  std::optional<OperationUsed> used;  // nothing where the file's system is the job's
};

Converted convert(std::vector<Position> points, std::string_view from, std::string_view to,
                  Length worst, const Place& place);

}  // namespace squaredig::geodesy
