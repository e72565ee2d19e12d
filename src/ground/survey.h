// The ground as stages get it: through Survey alone, for the region they need.
//
// Frame and units: site frame of the run; sigma in metres.
// Laws: survey.1 a surface given for a region equals the whole survey's there, triangle for
// triangle.
// Accuracy: the same to the last bit.
// Errors: a Refusal where the ground cannot be built, as build_ground.
// Source: a Delaunay triangle depends on the points in its circle alone.
#pragma once

#include "geometry/site_frame.h"
#include "geometry/surface.h"
#include "ground/ground_input.h"

namespace squaredig::ground {

// A box in plan on the grid.
struct Region {
  GridPoint low;
  GridPoint high;
};

struct GroundSurface {
  geometry::SiteFrame frame;
  geometry::Surface surface;
  // For each vertex the point it came from, in the input's table; geometry::kNone for none.
  std::vector<geometry::Index> source;
  // For each vertex the standard deviation of its height, where the job gives one.
  std::vector<Length> sigma_height;
  // The same of its position in plan, zero where its point gives none; empty where no point does.
  std::vector<Length> sigma_plan;
  std::optional<Length> sigma_common;
};

class Survey {
 public:
  virtual ~Survey() = default;
  virtual const geometry::SiteFrame& frame() const = 0;
  // The ground over the region and at least one triangle beyond it. Valid until the next call.
  virtual const GroundSurface& surface_for(const Region& region) = 0;
};

}  // namespace squaredig::ground
