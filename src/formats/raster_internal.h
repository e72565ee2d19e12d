// What the two kinds of raster share.
#pragma once

#include <cstdint>

#include "formats/point_intake.h"

namespace squaredig::formats {

constexpr double kMostCells = 1e9;

// Cells that come one after the other along the rows, each with its place in messages.
class CellIntake {
 public:
  explicit CellIntake(PointIntake& intake) : intake_(intake) {}
  void no_data(const Place& place);
  void height(double east, double north, double up, const Place& place);
  // Faults where a height is none and no value for no data was stated.
  void finish(bool no_data_stated);

 private:
  PointIntake& intake_;
  std::optional<Place> impossible_;  // the first cell of an impossible height
  double impossible_height_ = 0;
};

}  // namespace squaredig::formats
