// The hole as columns: convex parts of the plan over which every level is one plane.
#pragma once

#include "design/excavation.h"
#include "fill/fill_input.h"
#include "geometry/locate.h"
#include "geometry/slab.h"

namespace squaredig::fill {

// Where a column stands: under the tank, beside it under the capping, or further out.
enum class Zone { Tank, Beside, Beyond };

struct Column {
  geometry::Polygon outline;
  geometry::Plane bottom;  // of the hole; the floor where the ground lies below it
  // top of what belongs to a ramp, trench or sump: the pit without them, or the ground
  geometry::Plane middle;
  geometry::Plane ground;
  geometry::Plane finish;
  design::Part owner = design::Part::Floor;
  Zone zone = Zone::Beyond;
  bool below_floor = false;  // the ground lies below the floor here
};

struct ColumnSource {
  const design::Excavation& pit;
  const ground::GroundSurface& ground;
  const Finish& finish;
  std::vector<geometry::Polygon> tank;    // convex parts
  std::vector<geometry::Polygon> beside;  // the same, widened
};

std::vector<Column> columns_of(const ColumnSource& source);

}  // namespace squaredig::fill
