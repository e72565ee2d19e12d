// A ready surface as a file holds it.
//
// Errors: none.
// Source: the house's own.
#pragma once

#include <string>
#include <vector>

#include "formats/swapped.h"
#include "quantity/points.h"
#include "quantity/result_head.h"

namespace squaredig::formats {

struct SurfaceFile {
  SurfaceMesh mesh;    // all points of the surface, used by a face or not, in file order
  InputRecord record;  // counts faces
  std::vector<std::string> cautions;
  std::vector<std::string> assumed;
  Extent extent;
};

}  // namespace squaredig::formats
