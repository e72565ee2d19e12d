// Level lines of a surface.
//
// What: for each level the lines along which the surface stands at it, chained from triangle to
//   triangle, higher ground on the left. Ground exactly at a level counts as above it, so a flat
//   part at the level has its line along its edge; a single peak that just reaches it has none.
// Frame and units: site frame, metres.
// Requires: a surface with its neighbours linked; levels ascending, at most 65535 of them.
// Laws: contours.1  every corner of a line lies on an edge of the surface, at the level; contours.2
//   an open line begins and ends on the rim, any other closes; contours.3  on a plane the lines are
//   straight and as far apart as level step over slope.
// Accuracy: one linear interpolation along an edge, below 1e-9 m.
// Errors: none.
// Source: definition.
#pragma once

#include <optional>
#include <span>

#include "geometry/surface.h"

namespace squaredig::geometry {

struct LevelLine {
  std::size_t level = 0;  // its number among the levels asked for
  std::vector<Point2> points;
  bool closed = false;  // the last point is then joined to the first
};

// By level, each level's open lines before its rings; nothing where the lines would have more than
// `most` stretches, one for each triangle and level that crosses it.
std::optional<std::vector<LevelLine>> level_lines_within(std::size_t most, const Surface& surface,
                                                         std::span<const double> levels);

// The rim of the surface, chained, the surface on the left.
std::vector<std::vector<Point2>> rim_of(const Surface& surface);

}  // namespace squaredig::geometry
