// What convex cuts take out of a surface: exactly, piece by piece, with the boundary of the region.
//
// What: over one triangle the surface is a plane, so what one convex cut removes there is a convex
//   polygon. These polygons, joined across triangle edges and where cuts overlap, are the removed
//   region; laid over the facets of the envelope they become pieces on which the depth is linear.
// Frame and units: site frame, metres, square and cubic metres.
// Requires: a verified surface; cuts as convex_cut.h requires.
// Laws: cut.1  the pieces' areas sum to the area inside the boundary; cut.2  moving or turning
//   everything changes no volume; cut.3  deeper never takes less; cut.4  raising the surface by d
//   adds d times the removed area to first order; cut.5  splitting the surface or repeating a cut
//   changes nothing.
// Accuracy: each piece exact for its rounded corners, sums compensated: below 1e-9 of the volume,
//   see closure.h for the independent second answer.
// Errors: a Refusal where the crest does not close to 0.1 mm. Source: definition.
#pragma once

#include "geometry/convex_cut.h"
#include "geometry/locate.h"

namespace squaredig::geometry {

struct Piece {
  Index triangle = kNone;
  Index facet = kNone;
  std::uint32_t first = 0;  // of its corners in Removed::corners
  std::uint32_t count = 0;
  double area = 0;
  double volume = 0;
  Point2 centroid;
};

// A closed ring with the removed region on its left; heights are the surface's.
struct Ring {
  std::vector<Point3> corners;
  // edge i runs from corner i to the next; true where it is the top of a vertical side
  std::vector<bool> vertical;
  double area = 0;  // above zero for an outer ring, below for an island
};

// A part above the cuts that touches no toe: not removed, but told.
struct Detached {
  Point2 at;
  double area = 0;
  double volume = 0;
};

// Where the removed region runs out of surface.
struct Leaving {
  Point2 from, to;
  double depth = 0;  // greatest depth there
};

struct Removed {
  std::vector<ConvexCut> cuts;
  std::vector<Facet> facets;
  std::vector<Point2> corners;
  std::vector<Piece> pieces;  // by triangle, then facet
  std::vector<Ring> rings;    // outer rings first, greatest first
  std::vector<Detached> detached;
  std::vector<Leaving> leaving;
  double area = 0;
  double volume = 0;
  double deepest = 0;
  Point2 deepest_at;

  std::span<const Point2> outline(const Piece& p) const {
    return std::span(corners).subspan(p.first, p.count);
  }
};

Removed cut(const Surface& surface, const std::vector<ConvexCut>& cuts);
// True where the point is inside the removed region.
bool holds(const Removed& removed, Point2 p);

// Removed volume alone, for cuts taken one after another.
double removed_volume(const Surface& surface, const std::vector<ConvexCut>& cuts);

}  // namespace squaredig::geometry
