// Best planes through points: least squares and minimum zone, residuals measured vertically.
//
// Frame and units: site frame, metres.
// Requires: at least three points, not all on one line in plan.
// Laws: fit.1 residuals of the least-squares plane sum to zero; fit.2 the minimum-zone width is
//   never above the least-squares range; fit.3 adding one plane to all heights changes no residual.
// Accuracy: coordinates are reduced to their mean first; NIST StRD and docs/accuracy.md measure it.
// Errors: nothing when the requirement does not hold.
// Source: normal equations about the centroid; minimum zone as the linear programme min w with
//   |z - plane| <= w/2, by exchange of the four extreme points.
#pragma once

#include <optional>
#include <span>

#include "geometry/surface.h"

namespace squaredig::geometry {

struct FittedPlane {
  Plane plane;                    // `about` is the centroid
  std::vector<double> residuals;  // point less plane, in order
  double range = 0;               // greatest less least residual
  double rms = 0;                 // root of the mean square, divided by n
  // Covariance of (height, slope_x, slope_y) for unit variance of one height: the first is 1/n, the
  // other two entries form [xx xy; xy yy].
  double var_height = 0, var_xx = 0, var_xy = 0, var_yy = 0;
};
std::optional<FittedPlane> fit_least_squares(std::span<const Point3> points);

struct MinimumZone {
  Plane plane;  // the middle of the zone
  double width = 0;
  // Extreme points with the weight each has in width = sum weight_i z_i (upper ones positive).
  std::vector<Index> extreme;
  std::vector<double> weight;
};
// Three points leave no width, and no weights.
std::optional<MinimumZone> fit_minimum_zone(std::span<const Point3> points);

}  // namespace squaredig::geometry
