// The files a job file names: how they may be written, and which paths are taken.
//
// Rules for paths: relative to the folder of the job file, or absolute; not empty, without control
// characters. The folder `out` lies below the job file's folder: it is not that folder itself, not
// above it, not absolute, and no ".." leads out of it. (Another place is given on the command
// line.)
// Errors: a fault where a name or a path breaks these rules.
// Source: the house's own, docs/job-file.md.
#pragma once

#include "job/table_reader.h"

namespace squaredig::job {

// A name in quotes, or { file = "...", columns = "...", units = "..." }; in the table form a
// drawing or GeoPackage may have its layer = "...", a LandXML document its surface's name = "...".
Rule<FileSpec> file();
// Only a name in quotes: for files whose contents state all that is needed.
Rule<FileSpec> plain_file();
// A list of files, each named once.
Rule<std::vector<FileSpec>> files();
Rule<std::string> out_folder();
// "m", "ft", "us-ft"
Rule<FileUnits> file_units();

}  // namespace squaredig::job
