// The ways from the coordinate systems that field files state to the job's grid.
//
// Laws: crs_ways.1 only a way that loses nothing is taken: a map projection of the grid's own
// datum,
//   or a way whose stated accuracy is zero.
// Errors: the Refusal of a way that is not known, or is less good, at the place of the statement.
#pragma once

#include "formats/source_file.h"
#include "job/job.h"

namespace squaredig::app {

// Empty on a local grid.
std::function<formats::CrsWay(int, const Place&)> crs_ways(const job::Job& job);

}  // namespace squaredig::app
