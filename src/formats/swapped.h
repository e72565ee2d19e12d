// Easting and northing changed over, found from where the control lies.
//
// Frame and units: the site grid, metres.
// Laws: swapped.1  points that are near the control as they stand are never refused.
// Errors: none; where it says so, the reader refuses the file.
// Source: the house's own.
#pragma once

#include <limits>
#include <optional>

#include "quantity/points.h"
#include "quantity/problem.h"

namespace squaredig::formats {

// A box in plan round the points added to it.
class Extent {
 public:
  void add(GridPoint at);
  void add(const Extent& other);
  bool empty() const { return low_e_ > high_e_; }
  // Requires of the corners and the middle: not empty.
  GridPoint low() const { return grid_point(low_e_, low_n_); }
  GridPoint high() const { return grid_point(high_e_, high_n_); }
  GridPoint middle() const;
  Length diagonal() const;

 private:
  double low_e_ = std::numeric_limits<double>::infinity();
  double high_e_ = -std::numeric_limits<double>::infinity();
  double low_n_ = std::numeric_limits<double>::infinity();
  double high_n_ = -std::numeric_limits<double>::infinity();
};

// Where a file names its two columns.
struct PlanColumns {
  Place easting;
  Place northing;
};

// The problem where points lie far from the control as they stand, and near it with easting and
// northing changed over; both columns are named. Near is within both diagonals and one kilometre.
std::optional<Problem> swapped(const Extent& points, const Extent& control,
                               const PlanColumns& columns);

// The same, thrown.
void check_swapped(const Extent& points, const PointTable& control, const PlanColumns& columns);

}  // namespace squaredig::formats
