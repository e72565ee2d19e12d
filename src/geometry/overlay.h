// A surface laid over planar facets: every place where a triangle and a facet overlap, and what
// lies between the two.
//
// Frame and units: site frame, metres.
// Requires: facets are convex and anticlockwise; two surfaces are verified.
// Laws: overlay.1 swapping the two surfaces swaps above and below; overlay.2 raising the upper
//   surface by d adds d times the common area to above less below; overlay.3 splitting a facet
//   changes no sum; overlay.4 the overlaps of two surfaces cover where both are, once; overlay.5
//   and give what every pair of their triangles gives.
// Accuracy: exact integration over each convex piece; sums compensated. Errors: none.
// Source: definition; real surfaces in tests/published with volumes found by an independent
// overlay.
#pragma once

#include <functional>

#include "geometry/locate.h"
#include "geometry/split.h"

namespace squaredig::geometry {

struct PlaneFacet {
  Polygon outline;
  Plane plane;
};

// One overlap. `differences` are surface less facet at the corners.
struct Overlap {
  std::span<const Point2> corners;
  std::span<const double> differences;
  Index triangle = kNone;
  std::size_t facet = 0;
};

// Calls `visit` for each overlap of positive area: facets in order, triangles ascending within
// each.
void overlay(const Surface& surface, const Locator& locator, std::span<const PlaneFacet> facets,
             const std::function<void(const Overlap&)>& visit);

// The facets of a triangulated surface, one per triangle.
std::vector<PlaneFacet> facets_of(const Surface& surface);

struct Between {
  double common_area = 0;
  double above = 0;  // volume where the surface is above the facets
  double below = 0;  // volume where it is below, as a positive number
  double area_above = 0;
  double area_below = 0;
  double greatest_above = 0;  // height differences, both positive
  double greatest_below = 0;
};
Between between(const Surface& surface, const Locator& locator, std::span<const PlaneFacet> facets);

// The same as of the other surface's facets, and faster: each overlap is found from those beside
// it, and only the surface's rim is looked for.
Between between(const Surface& surface, const Locator& locator, const Surface& other);

}  // namespace squaredig::geometry
