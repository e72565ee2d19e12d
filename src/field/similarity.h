// Fit to the site grid: a similarity in plan from pairs of points, a shift or a tilted plane in
// height.
//
// Frame and units: E = east + scale (cos r x + sin r y), N = north + scale (-sin r x + cos r y) for
//   a measured easting x and northing y and rotation r clockwise.
// Requires: pairs with measured coordinates.
// Laws: similarity.1 pairs that are similar give their similarity and no residuals; similarity.2 a
//   pair that does not fit is named where the others can tell; similarity.3 the rotation keeps its
//   quadrant.
// Accuracy: computed about the centroid of the pairs; residuals to 1e-9 m.
// Errors: Refusal for fewer than two pairs, or pairs at one place.
// Source: conformal transformation by least squares; worked examples in
//   tests/published/field_coordinates_test.cpp.
#pragma once

#include <span>

#include "field/field_input.h"
#include "field/field_result.h"

namespace squaredig::field {

FitResult fit_to_site(std::span<const PointPair> pairs, const Place& place,
                      std::vector<Finding>& findings);

GridPoint to_site(const FitResult& fit, GridPoint measured);
// `site` is where the point stands on the site grid.
Elevation to_site(const FitResult& fit, GridPoint site, Elevation measured);
Covariance to_site(const FitResult& fit, const Covariance& measured);

}  // namespace squaredig::field
