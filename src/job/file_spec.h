// A file the job file names, as written there.
//
// Errors: none.
// Source: paths are relative to the folder of the job file; a file's contents are read elsewhere.
#pragma once

#include <optional>
#include <string>

#include "quantity/problem.h"

namespace squaredig::job {

enum class FileUnits { Metres, Feet, UsSurveyFeet };

struct FileSpec {
  std::string path;                    // as written
  std::optional<std::string> columns;  // of a file without header: "point,easting,northing,height"
  std::optional<FileUnits> units;      // nothing: as the file says, or metres
  std::optional<std::string> layer;    // of a drawing or GeoPackage; nothing: all, or the only one
  std::optional<std::string> name;     // of a surface in a LandXML document; nothing: the only one
  Place place;                         // of the path in the job file
};

}  // namespace squaredig::job
