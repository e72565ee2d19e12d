// Where two lines of given bearings meet.
//
// Frame and units: the grid.
// Laws: intersection.1 the point lies on both bearings; it may lie behind a station.
// Accuracy: one rounding of each step; weak where the lines meet under a small angle.
// Errors: nothing where the lines meet under less than 0.06 degrees.
// Source: two lines in the plane; worked examples in tests/published/field_coordinates_test.cpp.
#pragma once

#include <optional>

#include "quantity/angle.h"

namespace squaredig::field {

std::optional<GridPoint> intersection(GridPoint a, Bearing from_a, GridPoint b, Bearing from_b);

}  // namespace squaredig::field
