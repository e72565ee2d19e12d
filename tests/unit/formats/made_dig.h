// A small dig result: a floor of four triangles, two cells, one peg.
#pragma once

#include "dig/dig_result.h"
#include "pegs/pegs_result.h"

namespace squaredig::testing {

inline dig::DigResult made_dig() {
  dig::DigResult result;
  result.head.job = "pit & sons";
  result.cut = BankVolume::cubic_metres(123.456789012345);
  result.fill_to_floor = Volume::cubic_metres(0.5);
  result.toe = {grid_position(715830, 734697, 61.5), grid_position(715830, 734701, 61.5),
                grid_position(715834, 734701, 61.4), grid_position(715834, 734697, 61.4)};
  result.crest = {{grid_position(715828, 734695, 63.5), grid_position(715828, 734703, 63.6),
                   grid_position(715836, 734703, 63.7), grid_position(715836, 734695, 63.8)}};
  auto& mesh = result.excavated.mesh;
  mesh.vertices = result.toe;
  mesh.vertices.push_back(grid_position(715832, 734699, 61.45));
  mesh.faces = {{1, 0, 4}, {2, 1, 4}, {3, 2, 4}, {0, 3, 4}};
  result.excavated.kinds = {"floor", "floor", "batter", "vertical face"};
  result.excavated.parts = {"floor and batters", "floor and batters", "ramps", "sumps"};
  result.excavated.plan_area = Area::square_metres(16);
  result.excavated.surface_area = Area::square_metres(16.01);
  result.grid.size = Length::metres(2);
  result.grid.columns = 2;
  result.grid.rows = 1;
  result.grid.origin = grid_point(715830, 734697);
  result.grid.bearing = Bearing::degrees(90);
  for (int column = 0; column < 2; ++column) {
    dig::Cell cell;
    cell.column = column;
    cell.centre = grid_point(715831 + 2 * column, 734696);
    cell.ground = Elevation::metres(63.5);
    if (column == 0) cell.dig_level = Elevation::metres(61.37);
    if (column == 0) cell.cut_at_centre = Length::metres(2.13);
    cell.mean_cut = Length::metres(2);
    cell.cut = BankVolume::cubic_metres(8);
    cell.area = Area::square_metres(4);
    cell.part = "floor and batters";
    result.grid.cells.push_back(cell);
  }
  return result;
}

inline std::vector<pegs::ReferencePeg> made_reference() {
  pegs::ReferencePeg peg;
  peg.name = "A1";
  peg.string_line = "A1-B2";
  peg.at = grid_point(715820.25, 734690.5);
  peg.ground = Elevation::metres(63.875);
  peg.beyond_corner = Length::metres(3);
  return {peg};
}

}  // namespace squaredig::testing
