// The tank where it will stand: corners on the grid, the floor plane under it, the level ladder.
//
// Frame and units: grid; levels are elevations of the job's datum.
// Laws: tank.1 corners run A, B, C, ... clockwise seen from above; tank.2 the dig level is the
//   underside less the bedding, vertically, at every point; tank.3 turning or moving the tank
//   changes no side, diagonal or level difference.
// Accuracy: one rounding of each coordinate.
// Errors: Refusal naming the job file's line: unknown control point, corner_b that disagrees with
// the
//   length, crossing or repeated outline points, an anticlockwise outline is turned with a finding.
// Source: plane geometry; the ladder's names are common practice, no source.
#pragma once

#include "design/design_input.h"
#include "quantity/result_head.h"

namespace squaredig::design {

// A plane over the grid: its level at a point and how it falls.
struct LevelPlane {
  GridPoint about;
  Elevation level;  // at `about`
  Fall fall;        // drop per run along `downhill`; 0 = level
  Bearing downhill;
  Elevation at(GridPoint p) const;
  LevelPlane lowered(Length by) const;
};

struct Tank {
  std::vector<GridPoint> corners;  // A, B, C, ... clockwise
  LevelPlane underside;            // top of bedding
  LevelPlane dig_level;            // the floor to be dug
  LevelPlane top;
  Bearing ab;
  Length height;
  std::vector<Finding> findings;
  std::vector<std::string> assumed;

  std::size_t sides() const { return corners.size(); }
  // "A", ... "Z", "AA", ...
  static std::string corner_name(std::size_t i);
  // "AB", ...
  std::string side_name(std::size_t i) const;
  Bearing side_bearing(std::size_t i) const;
  Length side_length(std::size_t i) const;
  // Distances of a point along A-B from A and, to the right of it, into the tank.
  Length along_ab(GridPoint p) const;
  Length across_ab(GridPoint p) const;
  GridPoint from_a(Length along, Length across) const;
};

Tank place_tank(const DesignInput& input);

}  // namespace squaredig::design
