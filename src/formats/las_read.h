// LAS in: the points of a laser scan or an aerial survey, version 1.0 to 1.4, as ground points.
//
// What: easting, northing and height of every point of formats 0 to 10; its class as its code, in
//   decimal ("2" is ground); its number in the file, from 1, as its line. Points marked withheld
//   are set aside; points above another return of their pulse are counted, where all are taken.
//   Extra bytes and waveforms are passed over. LAZ is refused.
// Frame and units: the file's coordinate system and units, from GeoTIFF keys or WKT, made the
//   job's (stated_crs.h).
// Requires: nothing; the file may be anything.
// Laws: las.1 a point's position is scale x number + offset, rounded as written; las.2 memory is
//   one chunk of the file and the points kept.
// Accuracy: two roundings per coordinate, one more where the unit is not the metre.
// Errors: a Refusal of all faults of the header, of the coordinate system, and of points that are
//   not finite; a box or coordinates at odds with the header are told.
// Source: ASPRS LAS specification 1.0 to 1.4 R15.
#pragma once

#include "formats/points_csv.h"

namespace squaredig::formats {

PointsFile read_las_points(const SourceFile& source, const PointsWanted& wanted = {},
                           PointTable before = {});

}  // namespace squaredig::formats
