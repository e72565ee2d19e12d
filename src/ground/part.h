// The part of a ground surface that a piece of work needs, kept as its own value.
//
// Frame and units: the ground's.
// Laws: part.1  every vertex keeps its source and its sigmas.
// Accuracy: exact. Errors: none.
// Source: geometry/patch.h.
#pragma once

#include "geometry/patch.h"
#include "ground/survey.h"

namespace squaredig::ground {

// What hangs together with the seeds inside the region.
GroundSurface part_of(const GroundSurface& ground, std::span<const geometry::Point2> seeds,
                      const Region& region);

}  // namespace squaredig::ground
