// GeoTIFF keys as LAS files carry them: what they say of the coordinate system and its units.
//
// What: model type, the codes of the projected, geographic and vertical systems, and the units.
//   Keys that are zero or user-defined say nothing.
// Errors: a directory whose entries do not fit its bytes, units that are not metre, foot or US
//   survey foot, and unknown codes go to the list of faults.
// Source: OGC GeoTIFF 1.1 (OGC 19-008), key directory; EPSG unit codes 9001, 9002, 9003.
#pragma once

#include <string_view>

#include "formats/stated_crs.h"

namespace squaredig::formats {

// `directory` is tag 34735: little-endian two-byte numbers.
StatedCrs crs_of_geo_keys(std::string_view directory, const Place& place, FaultList& faults);

}  // namespace squaredig::formats
