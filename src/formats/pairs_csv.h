// Pairs of points: known in the measured frame and on the site grid.
//
// What: columns point, easting, northing (on the site grid), and where they are given height,
//   measured_easting, measured_northing, measured_height, sigma_plan_mm. Without measured
//   coordinates the pair takes those that the field books give its point.
// Frame and units: lengths in the file's unit.
// Laws: pairs_csv.1 measured easting and northing come together or not at all.
// Errors: a Refusal of all faults of the file with line and column; a point that stands twice.
// Source: RFC 4180.
#pragma once

#include <string>
#include <vector>

#include "field/field_input.h"
#include "formats/source_file.h"
#include "quantity/result_head.h"

namespace squaredig::formats {

struct PairsFile {
  std::vector<field::PointPair> pairs;
  InputRecord record;
  std::vector<std::string> cautions;
};
PairsFile read_pairs_csv(const SourceFile& source);

}  // namespace squaredig::formats
