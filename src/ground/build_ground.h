// The existing ground as one triangulated surface, from points, breaklines and an outline, or from
// a ready surface.
//
// Frame and units: grid coordinates in, the given site frame out.
// Requires: every coordinate finite.
// Laws: ground.1 each point's position is a vertex, once, unless it is in no triangle that is left;
//   ground.2 a ready surface keeps its faces and their order, each turned anticlockwise; ground.3 a
//   vertex takes its own point's sigma, else the job's; where a vertex has neither, none are given.
// Accuracy: exact on what is stored; a crossing of two strings is rounded once.
// Errors: a Refusal that names every point and breakline vertex without a height, every outline
// that
//   is no simple polygon, every faulty face of a ready surface; and one for fewer than three
//   positions, for positions on one line, and for a rim that leaves nothing.
// Source: constrained Delaunay triangulation, see geometry/triangulate.h.
#pragma once

#include "geometry/triangulate.h"
#include "ground/survey.h"

namespace squaredig::ground {

// Rows of the input are numbered: the points of the table first, then the vertices of each
// breakline, then those of each outline, in order.
struct BuiltGround {
  GroundSurface ground;
  std::vector<geometry::Index> row;  // of each vertex: the row it came from; kNone for a crossing
  std::vector<geometry::Doubled> doubled;           // by row
  std::vector<geometry::StringCrossing> crossings;  // strings: breaklines first, then outlines
  std::vector<geometry::StringCrossing> touches;
  std::size_t rim_triangles_removed = 0;
  std::vector<std::string> cautions;
};

BuiltGround build_ground(const GroundInput& input, const geometry::SiteFrame& frame);
// The same of a part of a survey: points that make no triangle give an empty surface.
BuiltGround build_part(const GroundInput& input, const geometry::SiteFrame& frame);

}  // namespace squaredig::ground
