// The error ellipse of a point in plan.
//
// Frame and units: the grid; half axes for one standard deviation, which hold the point with a
//   probability of 39 percent.
// Laws: ellipse.1 the half axes are the greatest and the least standard deviation of any direction,
//   and the bearing is that of the greatest.
// Accuracy: one rounding of each step. Errors: none.
// Source: characteristic values of the covariance in plan; a worked example in
//   tests/published/field_coordinates_test.cpp.
#pragma once

#include "field/field_result.h"

namespace squaredig::field {

ErrorEllipse error_ellipse(const Covariance& covariance);

}  // namespace squaredig::field
