#include "geometry/site_frame.h"

#include <cmath>

namespace squaredig::geometry {

SiteFrame SiteFrame::around(GridPosition near) {
  SiteFrame frame;
  frame.origin_ =
      grid_position(std::round(near.at.easting.in_metres()),
                    std::round(near.at.northing.in_metres()), std::round(near.height.in_metres()));
  return frame;
}

Point2 SiteFrame::to_site(GridPoint p) const {
  return {(p.easting - origin_.at.easting).in_metres(),
          (p.northing - origin_.at.northing).in_metres()};
}

Point3 SiteFrame::to_site(GridPosition p) const {
  const Point2 plan = to_site(p.at);
  return {plan.x, plan.y, to_site(p.height)};
}

double SiteFrame::to_site(Elevation h) const { return (h - origin_.height).in_metres(); }

GridPoint SiteFrame::to_grid(Point2 p) const {
  return {origin_.at.easting + Length::metres(p.x), origin_.at.northing + Length::metres(p.y)};
}

GridPosition SiteFrame::to_grid(Point3 p) const { return {to_grid(p.plan()), to_grid_height(p.z)}; }

Elevation SiteFrame::to_grid_height(double z) const { return origin_.height + Length::metres(z); }

}  // namespace squaredig::geometry
