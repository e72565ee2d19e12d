// A convex cut, and the lower envelope of several: the surface that is left when each has been
// taken.
//
// What: a convex cut is a convex toe polygon on a floor plane with faces that rise outward, each a
//   plane through a side of the toe; a vertical side is a half-plane that bounds the cut's domain
//   instead. The cut's surface is the greatest of floor and faces: convex over its domain. Of
//   several cuts the lowest counts.
// Frame and units: site frame, metres.
// Requires: each face rises faster than the floor, outward.
// Laws: envelope.1 the facets tile the union of the domains within the box, without overlap;
//   envelope.2 over each facet no cut is lower than the facet; envelope.3 the order of the cuts
//   changes the surface nowhere.
// Accuracy: facet corners are rounded once per line that cuts them; slivers below 1e-12 m2 are left
//   out. Facets are kept convex by splitting against one cut at a time, so that no arrangement has
//   to be triangulated afterwards; see docs/decisions. Errors: none.
// Source: definition of the lower envelope.
#pragma once

#include "geometry/split.h"
#include "geometry/surface.h"

namespace squaredig::geometry {

struct CutFace {
  Plane plane;
  Index side = kNone;  // the caller's number of the side, kept in facets
};

struct CutBound {
  HalfPlane inside;
  Index side = kNone;
};

struct ConvexCut {
  Polygon toe;
  Plane floor;
  std::vector<CutFace> faces;
  std::vector<CutBound> bounds;
  Index part = 0;       // the caller's number of the part it belongs to
  bool reaches = true;  // ground above it counts as dug even where no other cut touches it
};

enum class FacetKind { Floor, Face };

struct Facet {
  Polygon outline;
  Plane plane;
  Index cut = kNone;
  Index side = kNone;  // of a face
  FacetKind kind = FacetKind::Floor;
};

// Ordered by cut; the floor of each cut before its faces.
std::vector<Facet> lower_envelope(const std::vector<ConvexCut>& cuts, const Box2& box);

// The height of one cut's surface; nothing outside its domain.
bool in_domain(const ConvexCut& cut, Point2 p);
double height_of(const ConvexCut& cut, Point2 p);

}  // namespace squaredig::geometry
