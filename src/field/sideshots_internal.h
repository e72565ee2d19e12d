// Points of an adjusted part: those it adjusted, and its sideshots with their covariances.
#pragma once

#include "field/net_build_internal.h"

namespace squaredig::field {

struct PartPoints {
  std::vector<ReducedPoint> points;
  std::vector<PointWithheld> withheld;
  std::vector<Finding> findings;
};

PartPoints points_of(const Net& part, const NetFit& fit, double unit, const Shape& shape,
                     const BuiltNet& built);
// Of an adjusted point; zero where it is held fixed.
Covariance covariance_of(const NetFit& fit, std::size_t point, double unit);
GridPoint on_grid(const NetPoint& point, GridPoint origin);

}  // namespace squaredig::field
