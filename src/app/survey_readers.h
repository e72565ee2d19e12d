// Which reader takes a field file of points, strings or a surface, by the ending of its name.
//
// Errors: an ending that no reader takes is refused at the job file's place.
#pragma once

#include "app/job_folder.h"
#include "formats/points_csv.h"
#include "formats/strings_csv.h"
#include "formats/surface_file.h"

namespace squaredig::app {

formats::PointsFile points_of_file(const job::FileSpec& file, const formats::SourceFile& source,
                                   const formats::PointsWanted& wanted, PointTable before);
formats::StringsFile strings_of_file(const job::FileSpec& file, const formats::SourceFile& source,
                                     formats::Heights heights);
formats::SurfaceFile surface_of_file(const job::FileSpec& file, const formats::SourceFile& source);

// The ending of a file's name in lower case, ".csv"; refuses, at the job file's place, one that is
// not among those wanted.
std::string ending_of(const job::FileSpec& file, const std::vector<std::string>& wanted,
                      const std::string& what);

}  // namespace squaredig::app
