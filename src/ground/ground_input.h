// What the ground surface is built from: the [ground] table as checked, with its files read.
// Grid coordinates in the job's frame.
#pragma once

#include <optional>

#include "quantity/points.h"

namespace squaredig::ground {

struct GroundInput {
  PointTable points;
  std::vector<SurveyString> breaklines;
  std::vector<SurveyString> outline;   // closed edge of survey; none: the rim is the hull
  std::optional<SurfaceMesh> surface;  // a ready surface instead of points
  std::optional<Length> longest_edge;  // rim triangles with a longer side are not ground
  std::optional<Length> sigma_height;  // of one ground point
  std::optional<Length> sigma_common;  // shared by all
};

}  // namespace squaredig::ground
