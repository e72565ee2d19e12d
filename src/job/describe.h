// The job in words: what was found in its tables, a line each.
//
// Errors: none.
// Source: the house's own.
#pragma once

#include "job/job.h"

namespace squaredig::job {

std::vector<std::string> described(const Job& job);

}  // namespace squaredig::job
