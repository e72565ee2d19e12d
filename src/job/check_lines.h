// What `squaredig check` prints: what was found, what is missing, stage by stage. Nothing is
// computed.
//
// Laws: check_lines.1 every stage is named once, with each table it lacks.
// Errors: none.
// Source: the house's own.
#pragma once

#include "job/job.h"
#include "quantity/result_head.h"

namespace squaredig::job {

// What reading the files of the job gave: a record of each file, and what their readers want said.
struct FilesFound {
  std::vector<InputRecord> files;
  std::vector<std::string> cautions;
};

// Plain lines without line breaks, in the order they are printed.
std::vector<std::string> check_lines(const Job& job, const FilesFound& found);

}  // namespace squaredig::job
