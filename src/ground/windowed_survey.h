// The ground of a large survey, triangulated only where it is asked for, and proven there.
//
// What: points in a window round the region are triangulated; every triangle that meets the region
//   must have its whole circumcircle, widened for rounding and cut to the survey's extent, inside
//   the window. No point left unread can then change it. Otherwise the window is widened; a window
//   that holds the whole survey, and any region whose triangles have a side over `longest_edge`
//   (taking rim triangles off is not local), give the whole survey's own surface.
// Frame and units: as WholeSurvey.
// Requires: a loader that gives every point in a window and every string that enters it, whole, in
//   the order of the files.
// Laws: window.1  over the region, triangles are the whole survey's, corner for corner and bit for
//   bit, in the same order.
// Accuracy: none is lost; cocircular ties are settled by the points alone (geometry/triangulate.h).
// Errors: as build_ground.
// Source: a constrained Delaunay triangle depends on the points in its circumcircle and the strings
//   that enter it alone.
#pragma once

#include <functional>

#include "ground/build_ground.h"

namespace squaredig::ground {

// Every point in the region is given, and every string that enters it, whole.
using LoadWindow = std::function<GroundInput(const Region&)>;
// The whole survey's own surface, where somebody builds it anyway.
using WholeGround = std::function<const GroundSurface&()>;

// True where the region's triangles, and its part of the rim, are certain: `window` is what was
// read, `extent` the whole survey's.
bool certified(const GroundSurface& ground, const Region& region, const Region& window,
               const Region& extent, std::optional<Length> longest_edge);

class WindowedSurvey final : public Survey {
 public:
  // `first_window` has been read already and is `input`; `extent` is of all points and strings.
  WindowedSurvey(GroundInput input, const Region& first_window, const Region& extent,
                 LoadWindow load, const geometry::SiteFrame& frame, WholeGround whole = nullptr);
  const geometry::SiteFrame& frame() const override { return frame_; }
  const GroundSurface& surface_for(const Region& region) override;

 private:
  void widen(const Region& region);
  BuiltGround build() const;
  bool holds_all() const;

  GroundInput input_;
  Region window_;
  Region extent_;
  LoadWindow load_;
  WholeGround whole_;
  geometry::SiteFrame frame_;
  std::optional<BuiltGround> built_;
};

}  // namespace squaredig::ground
