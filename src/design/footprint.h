// The tank's footprint and planes in the site frame, for stages that integrate over them.
//
// Frame and units: site frame.
// Laws: footprint.1  the parts tile the footprint, widened by `beyond` on every side, and no more.
// Accuracy: one rounding per coordinate.
// Errors: Refusal with the job file's line where the widened footprint crosses itself.
// Source: plane geometry.
#pragma once

#include "design/tank.h"
#include "geometry/site_frame.h"

namespace squaredig::design {

geometry::Plane plane_in(const geometry::SiteFrame& frame, const LevelPlane& plane);

// Convex anticlockwise parts that do not overlap.
std::vector<geometry::Polygon> footprint_parts(const Tank& tank, const geometry::SiteFrame& frame,
                                               Length beyond, const Place& place);

}  // namespace squaredig::design
