// One convex cut from a convex toe ring on a floor plane, with a batter for each side.
#pragma once

#include <string>

#include "design/footprint.h"
#include "design/pit_cuts.h"
#include "design/ring_internal.h"

namespace squaredig::design {

struct CutSpec {
  SideRing toe;
  geometry::Plane floor;
  std::vector<Batter> batters;  // by side number
  std::vector<std::string> side_names;
  Corners corners = Corners::Mitre;
  Part part = Part::Floor;
  Place place;
};

geometry::ConvexCut convex_cut(const CutSpec& spec);

// How fast the floor rises toward the outside of an edge.
double outward_grade(const geometry::Plane& floor, geometry::Point2 from, geometry::Point2 to);

// The tank's outline in the site frame, anticlockwise.
SideRing tank_ring(const Tank& tank, const geometry::SiteFrame& frame);

}  // namespace squaredig::design
