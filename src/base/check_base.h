// The as-dug base against what was planned: a verdict of three, check by check.
//
// What: points inside the toe are judged by their vertical deviation from the dig level; level,
// mean,
//   flatness, fall, coverage and the skin of bedding are checked, each with its uncertainty; what
//   to trim and to make up is measured on the triangulated surface of the judged points.
// Frame and units: grid; lengths of `planned` in the job's grid.
// Requires: a toe polygon that does not cross itself; confidence from one half to below one.
// Laws: base.1 adding one plane to the planned levels and to every point changes no value;
//   base.2 moving or turning the job changes no value; base.3 what is not asked is shown and never
//   counted; base.4 raising every point by d raises high, low and mean by d, lowers the skin by d
//   and changes neither flatness nor fall; base.5 trim less make-up is the area mean of the
//   deviation times the floor; base.6 a smaller uncertainty never turns a proven check into its
//   opposite; base.7 a bedding check fails its limit where, and only where, a patch of the
//   footprint is too thin or too thick, and its worst is the check's value.
// Accuracy: each value is exact for the points given, up to rounding below 1e-9 m. A value within
//   1e-9 m of its limit counts as on it, and on it is inside.
// Errors: Refusal when no point of the file lies inside the toe.
// Source: the decision rule with guard bands after JCGM 106:2012 and ILAC-G8:09/2019; definitions
//   of the checks in docs/base.md.
#pragma once

#include "base/base_input.h"
#include "base/base_result.h"
#include "design/tank.h"

namespace squaredig::base {

// A pipe stub of the tank.
struct PlannedInvert {
  std::string name;
  Elevation invert;
};

// What the base was to be: the tank, the toe line of the floor and the skin wanted.
struct PlannedBase {
  design::Tank tank;
  std::vector<GridPoint> toe;  // clockwise
  Length thickness;            // of bedding
  std::optional<Length> least;
  std::optional<Length> most;
  std::vector<Length> gap;                          // tank face to toe, side by side
  std::optional<std::pair<Length, Length>> module;  // plan size of one unit, first along A-B
  std::vector<PlannedInvert> inverts = {};          // of the pipes that go with the tank
};

// Where a second survey was made after the repair, it is the one that is judged; the first stands
// beside it in `before`.
BaseResult check_base(const BaseInput& input, const PlannedBase& planned);

}  // namespace squaredig::base
