// The answer of the ground stage: the surface and what was found while examining it.
#pragma once

#include "quantity/points.h"
#include "quantity/result_head.h"

namespace squaredig::ground {

// A point that hardly can be ground: by how much it departs from its neighbours, and why.
struct Suspect {
  std::string point;
  std::string why;
  Length by;
  Place place;
};

// Two strings that cross in plan, and the difference of their levels there.
struct Crossing {
  std::string string_a;
  std::string string_b;
  GridPoint at;
  Length height_difference;
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
  SurfaceMesh surface;
  std::vector<SurveyString> breaklines;
};

}  // namespace squaredig::ground
