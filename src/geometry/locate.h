// Where a point lies on a surface, and how high the surface is there.
//
// Frame and units: site frame, metres.
// Laws: locate.1 a point on an edge or vertex is found in one of its triangles; locate.2 height_at
//   at a vertex is the vertex's height.
// A point within a nanometre of a side counts as on it: computed points on an edge are a rounding
// off. Accuracy: plane of the triangle found, evaluated from its nearest corner (below 1e-9 m).
// Errors: nothing outside the surface.
// Source: definition.
#pragma once

#include <optional>

#include "geometry/split.h"
#include "geometry/surface.h"

namespace squaredig::geometry {

// Finds triangles through a bucket grid over the surface. The surface must outlive it.
class Locator {
 public:
  explicit Locator(const Surface& surface);
  std::optional<Index> triangle_at(Point2 p) const;
  std::optional<double> height_at(Point2 p) const;
  // Every triangle that meets the box, ascending, each once; others only where their own box does.
  std::vector<Index> triangles_in(Point2 low, Point2 high) const;
  // The same into a list that is kept.
  void find_triangles(const Box2& box, std::vector<Index>& found) const;

 private:
  struct Grid;
  const Surface* surface_;
  Point2 low_;
  double cell_ = 1;
  Index columns_ = 0;
  Index rows_ = 0;
  std::vector<Index> start_;
  std::vector<Index> entries_;
};

}  // namespace squaredig::geometry
