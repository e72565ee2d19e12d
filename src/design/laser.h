// The plane a construction laser sweeps, and what a staff reads under it.
//
// What: the plane through the level given at corner A, or read from a mark and proved on a second
//   one; a reading is the plane less the level of what the staff stands on.
// Frame and units: grid; levels of the job's datum.
// Laws: laser.1 the staff read on the mark gives the mark's level back; laser.2 a level plane reads
//   the same above equal levels anywhere; laser.3 without a proven plane there are no readings.
// Accuracy: one rounding per operation.
// Errors: Refusal naming the job file's line for an unknown mark or one without a height. A check
//   mark that disagrees, and readings off the staff, are findings.
// Source: height of instrument = mark + staff on it, definition.
#pragma once

#include "design/site_input.h"
#include "design/tank.h"

namespace squaredig::design {

class Laser {
 public:
  // `control` holds the marks; the plane of `plane_level` passes through it at the tank's corner A.
  static Laser set_up(const LaserInput& input, const Tank& tank, const PointTable& control);

  // Nothing where the check mark disagrees.
  std::optional<Length> staff_reading(GridPosition foot) const;
  // Below 0 or beyond the staff's length.
  bool off_staff(Length reading) const;
  const std::optional<LevelPlane>& plane() const { return plane_; }
  const std::vector<Finding>& findings() const { return findings_; }

 private:
  std::optional<LevelPlane> plane_;
  std::optional<Length> staff_length_;
  std::vector<Finding> findings_;
};

}  // namespace squaredig::design
