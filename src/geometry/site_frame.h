// The site frame: the grid shifted, never turned, by whole metres to near the work.
//
// What: the one place where grid coordinates become kernel coordinates and back.
// Frame and units: grid and site frame, metres. Requires: an origin within kilometres of the work.
// Laws: frame.1 the shift is by whole metres, so a millimetre coordinate keeps its value;
//   frame.2 to_grid(to_site(p)) is p for coordinates below 1e8 m given to the millimetre.
// Accuracy: one rounding of the grid coordinate (below 1 nm at 6 000 000 m). Errors: none.
// Source: definition.
#pragma once

#include "geometry/plane_types.h"
#include "quantity/position.h"

namespace squaredig::geometry {

class SiteFrame {
 public:
  SiteFrame() = default;
  // The frame whose origin is `near`, rounded to whole metres.
  static SiteFrame around(GridPosition near);
  Point2 to_site(GridPoint p) const;
  Point3 to_site(GridPosition p) const;
  double to_site(Elevation h) const;
  GridPoint to_grid(Point2 p) const;
  GridPosition to_grid(Point3 p) const;
  Elevation to_grid_height(double z) const;
  GridPosition origin() const { return origin_; }

 private:
  GridPosition origin_;
};

}  // namespace squaredig::geometry
