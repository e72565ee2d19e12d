// What `squaredig new` puts into a folder: a commented job file and empty field books.
//
// Laws: new_job.1 the job file is TOML; it lacks every value that nobody may assume, and check
// names
//   each of them; filled in, it is read without fault.
// Errors: none.
// Source: the keys are the house's own, docs/job-file.md.
#pragma once

#include <string>
#include <vector>

namespace squaredig::job {

struct NewFile {
  std::string path;  // relative to the folder
  std::string text;
};

// job.toml first, then the field books in the order they are used.
std::vector<NewFile> new_job_files();

}  // namespace squaredig::job
