// GNSS positions: latitude, longitude and ellipsoid height of points, as a receiver gives them.
//
// What: columns point, latitude, longitude, ellipsoid_height, and where they are given code,
//   sigma_plan_mm, sigma_height_mm, fix and antenna_height (of the height given above the mark).
//   A point may stand in several rows: each is one occupation.
// Frame and units: latitudes north positive, longitudes east positive, in decimal degrees
//   or as degrees minutes seconds with blanks or signs between; heights in the file's unit.
// Laws: gnss_csv.1 an angle outside its range never comes through.
// Errors: a Refusal of all faults of the file with line and column; easting and northing are
//   refused by name.
// Source: RFC 4180.
#pragma once

#include <string>
#include <vector>

#include "field/field_input.h"
#include "formats/source_file.h"
#include "quantity/result_head.h"

namespace squaredig::formats {

struct GnssFile {
  std::vector<field::GeodeticPoint> points;
  InputRecord record;
  std::vector<std::string> cautions;
};
GnssFile read_gnss_csv(const SourceFile& source);

}  // namespace squaredig::formats
