// The excavated surface inside the crest as one triangulated surface.
//
// What: floors and faces as they are left. A triangulated surface is a function of plan position
// and
//   cannot hold a vertical face: there the toe stays, and the face's top edge moves outward by a
//   millimetre.
// Frame and units: the excavation's site frame, metres.
// Requires: an excavation.
// Laws: excavated_surface.1  the surface verifies; excavated_surface.2  the volume between it and
//   the ground is the cut, but for at most half a millimetre times the vertical faces' area;
//   excavated_surface.3  its rim lies on the ground.
// Accuracy: corners within 0.01 mm of one another are one. Errors: none.
// Source: constrained Delaunay triangulation of the envelope's edges and the crest.
#pragma once

#include "design/excavation.h"

namespace squaredig::design {

enum class FaceKind { Floor, Batter, Vertical };
constexpr const char* name_of(FaceKind kind) {
  switch (kind) {
    case FaceKind::Floor:
      return "floor";
    case FaceKind::Batter:
      return "batter";
    default:
      return "vertical face";
  }
}

// How far the top edge of a vertical face moves outward.
constexpr Length kTopEdgeMoves = Length::millimetres(1);

struct ExcavatedSurface {
  geometry::Surface surface;
  std::vector<FaceKind> kinds;  // of each triangle
  std::vector<Part> parts;
};

ExcavatedSurface excavated_surface(const Excavation& pit);

}  // namespace squaredig::design
