// What a stage that can be run will leave out, because an optional key is absent.
//
// Errors: none.
// Source: the house's own, docs/job-file.md.
#pragma once

#include "job/job.h"

namespace squaredig::job {

// One phrase each, with the key that would change it: "no loose volume (bulking)".
std::vector<std::string> left_out(Stage stage, const Job& job);

}  // namespace squaredig::job
