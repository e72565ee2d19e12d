// The text of the commented job file, in two halves: the work as designed, and what comes later.
//
// Errors: none.
// Source: the house's own, docs/job-file.md.
#pragma once

#include <string_view>

namespace squaredig::job {

extern const std::string_view kTemplateOfDesign;
extern const std::string_view kTemplateOfLater;

}  // namespace squaredig::job
