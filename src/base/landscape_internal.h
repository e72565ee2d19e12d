// The parts of the base that lie beyond a contour, each connected part by itself.
//
// What: over a part of the plan, the deviation seen with a sign: beyond is above the contour. Two
//   triangles belong together where they share a corner beyond it, on the floor, in the part of
//   the plan or out of it.
// Frame and units: site frame, metres; heights are deviations times the sign.
// Accuracy: exact on the surface.
// Source: definition.
#pragma once

#include <set>

#include "base/floor_internal.h"

namespace squaredig::base {

// A convex piece with the height at its corners.
struct Piece {
  geometry::Polygon corners;
  std::vector<double> height;
};

// One connected part beyond a contour.
struct Region {
  std::set<std::size_t> points;  // judged points in it
  std::vector<Piece> pieces;
  double area = 0;
  double volume = 0;  // of the height, not of what stands above the contour
};

std::vector<geometry::Polygon> outlines(const std::vector<Piece>& pieces);
// The area of what stands above a contour.
double area_above(const Region& region, double contour);

class Landscape {
 public:
  // Over the polygon, for as long as floor and surface last.
  Landscape(const Floor& floor, const DugSurface& dug, const geometry::Polygon& over, double sign);

  double height(std::size_t point) const { return sign_ * floor_.points[point].deviation; }
  std::size_t points() const { return floor_.points.size(); }
  // The region round a point.
  Region region(std::size_t peak, double contour) const;

 private:
  void link_points(const DugSurface& dug);

  const Floor& floor_;
  double sign_;
  std::vector<std::vector<Piece>> pieces_;              // by triangle
  std::vector<std::vector<std::size_t>> triangles_of_;  // by judged point
  std::vector<std::vector<std::size_t>> corners_of_;    // by triangle
};

// Every region beyond the limit, worst first, each by its highest judged point.
struct RegionFound {
  Region region;
  std::size_t peak = 0;
};
std::vector<RegionFound> regions_beyond(const Landscape& land, double limit);

}  // namespace squaredig::base
