// GNSS positions to the grid: projected offline, heights by a geoid file, occupations averaged.
//
// Frame and units: the job's grid; heights on its datum by way of the separation. Without a geoid
//   file heights stay above the ellipsoid, and `heights_are_ellipsoidal` says so: they may only be
//   used after a fit in height.
// Requires: a projected grid.
// Laws: gnss.1 occupations of one point are averaged, weighted where all have sigmas; gnss.2 a
//   position without a fixed solution takes no part, and is told.
// Accuracy: that of the operation, which is named; bilinear separation.
// Errors: Refusal for a local grid, a geoid file that does not cover a point, an operation that is
//   only a ballpark or lacks a grid file.
// Source: quality indicator of NMEA 0183 GGA (from memory): 4 fixed, 5 float.
#pragma once

#include "field/field_input.h"
#include "field/field_result.h"

namespace squaredig::field {

struct GnssReduced {
  std::vector<ReducedPoint> points;
  std::vector<PointWithheld> withheld;
  GnssResult told;
  bool heights_are_ellipsoidal = false;
};

GnssReduced reduce_gnss(const FieldInput& input, ResultHead& head);

}  // namespace squaredig::field
