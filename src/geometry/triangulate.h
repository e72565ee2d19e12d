// Constrained Delaunay triangulation of points, strings and an outline.
//
// Frame and units: site frame, metres; never rotated, so that cocircular ties, which CGAL settles
// by
//   the points alone, fall the same way in a part as in the whole.
// Requires: finite coordinates.
// Laws: triangulate.1 every input position is a vertex, once; doubled positions are told, a
// string's
//   height wins over a point's, then the first given; triangulate.2 every string segment is a chain
//   of edges, to a nanometre; triangulate.3 triangles off the strings are Delaunay; triangulate.4
//   the same input in another order gives the same triangles (heights of doubled points aside).
// Accuracy: predicates exact; a crossing of two segments is rounded once. A string that passes a
//   string's vertex within a nanometre goes through it.
// Errors: none thrown; fewer than three points not on a line give an empty surface.
// Source: CGAL 5.5 2D Triangulations manual, constrained triangulations with exact predicates.
#pragma once

#include "geometry/surface.h"

namespace squaredig::geometry {

// A string to be honoured: vertices in order, each a number into Input::points.
enum class StringKind { Breakline, Outline };
struct Constraint {
  std::vector<Index> vertices;
  Index string = 0;                         // the caller's number, given back in crossings
  StringKind kind = StringKind::Breakline;  // triangles inside an outline's sides are no rim
};

struct TriangulationInput {
  std::vector<Point3> points;           // survey points first, string vertices among them or after
  std::vector<Constraint> constraints;  // breaklines and outline alike
  std::vector<Polygon> keep;  // closed outlines: triangles outside all of them are left out
  double longest_edge = 0;    // above 0: rim triangles with a longer side are left out
};

// A position given twice: the later point is not used. `height_difference` = later less kept.
struct Doubled {
  Index kept = kNone;
  Index dropped = kNone;
  double height_difference = 0;
};

// Two strings meeting where neither has a vertex; the mean of both heights is taken there. Or, in
// `touches`, a vertex of string_a lying on a segment of string_b between its ends: the vertex keeps
// its height, and string_b bends to it.
struct StringCrossing {
  Index string_a = 0;
  Index string_b = 0;
  Point2 at;
  double height_a = 0;
  double height_b = 0;
};

struct Triangulated {
  Surface surface;
  // The input point of each vertex; kNone for the vertex of a crossing.
  std::vector<Index> source;
  std::vector<Doubled> doubled;
  std::vector<StringCrossing> crossings;
  std::vector<StringCrossing> touches;
  std::size_t rim_triangles_removed = 0;
};

// The input's points are given back as soon as they are placed: move in what is large.
Triangulated triangulate(TriangulationInput input);

}  // namespace squaredig::geometry
