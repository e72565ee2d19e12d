// The answer of the ground stage: what the surface is like and what was found while examining it.
#pragma once

#include <optional>

#include "quantity/points.h"
#include "quantity/result_head.h"

namespace squaredig::ground {

// A point that hardly can be ground: by how much it departs from its neighbours, and why.
struct Suspect {
  std::string point;
  std::string why;
  Length by;
  GridPosition at;
  Place place;
};

// Two strings that cross in plan, and the difference of their levels there.
struct Crossing {
  std::string string_a;
  std::string string_b;
  GridPoint at;
  Length height_difference;
};

// Where a finding that is told singly stands.
struct FoundAt {
  Finding finding;
  GridPoint at;
};

// A level line: higher ground lies on its left. A closed one joins its last point to its first.
struct Contour {
  Elevation level;
  std::vector<GridPoint> line;
  bool closed = false;
};

struct GroundResult {
  ResultHead head;
  std::size_t points = 0;
  std::size_t triangles = 0;
  Area plan_area;
  Area surface_area;
  Elevation lowest;
  Elevation highest;
  std::vector<Suspect> suspects;
  std::vector<Crossing> crossings;
  std::vector<FoundAt> found;
  // Drawn with the findings. No interval, and no contours, where the ground is level or so rough
  // that lines would tell nothing.
  std::optional<Length> contour_interval;
  std::vector<Contour> contours;
  std::vector<std::vector<GridPoint>> rim;  // closed, the ground on its left
  // Each vertex in plan, where there are no more than kMostDrawn.
  std::vector<GridPoint> positions;
  std::vector<SurveyString> breaklines;
};

}  // namespace squaredig::ground
