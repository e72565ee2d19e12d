// Volumes as others may quote them: average end areas, prismoids, and a grid of spot depths.
//
// What: the three formulas of the trade that stand beside the exact volume and are never used.
// Frame and units: as typed; depths positive downward from the ground.
// Requires: one length between each two sections.
// Laws: quoted.1  sections in between of the mean area change nothing; quoted.2  each corner counts
//   once for every cell it belongs to, so the weights over four add up to the number of cells;
//   quoted.3  prismoids are exact where the area is a quadratic of the distance.
// Accuracy: the arithmetic, not the method: end areas may be wrong by many percent. Errors: none.
// Source: V = L (A1 + A2) / 2 (FHWA HEC-22, 4th ed. 2024, eq. 10.18 for storage); grid volume
//   A / 4 times the sum of corner depths, each by the cells that meet there.
#pragma once

#include <array>
#include <span>

#include "quantity/length.h"

namespace squaredig::dig {

// Between sections at unequal distances: lengths[i] lies between sections i and i + 1.
Volume end_area_volume(std::span<const Area> sections, std::span<const Length> lengths);
// The same at equal distances.
Volume end_area_volume(std::span<const Area> sections, Length spacing);

// Simpson's rule: two spans L make L / 3 (A1 + 4 A2 + A3). A last span without a second one is
// taken by its end areas.
Volume prismoidal_volume(std::span<const Area> sections, Length spacing);

// Cells of one size, each with the depths at its corners.
Volume corner_grid_volume(std::span<const std::array<Length, 4>> cells, Area cell);

}  // namespace squaredig::dig
