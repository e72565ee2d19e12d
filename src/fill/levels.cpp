#include <algorithm>

#include "design/footprint.h"
#include "fill/levels_internal.h"

namespace squaredig::fill {
namespace {

geometry::Plane raised(geometry::Plane plane, Length by) {
  plane.height += by.in_metres();
  return plane;
}

// The next level above `from`: a whole lift on, but no further than the next limit.
Length next_level(Length from, Length lift, Length special, Length top) {
  const Length grace = Length::metres(1e-9);
  Length to = from + lift;
  if (from < special - grace) to = std::min(to, special);
  to = std::min(to, top);
  return top - to < grace ? top : to;
}

}  // namespace

FillLevels levels_of(const FillInput& input, const design::Excavation& pit) {
  FillLevels levels;
  levels.underside = design::plane_in(pit.frame, pit.tank.underside);
  levels.tank_top = raised(levels.underside, pit.tank.height);
  const Length top = pit.tank.height;
  const Length special = std::min(input.special_height, top);
  for (Length from; from < top - Length::metres(1e-9);) {
    const Length to = next_level(from, input.side_lift, special, top);
    levels.lifts.push_back({raised(levels.underside, from), raised(levels.underside, to), from, to,
                            to <= special + Length::metres(1e-9)});
    from = to;
  }
  Length height = top;
  levels.capping.push_back(levels.tank_top);
  for (const Length layer : input.capping) {
    height += layer;
    levels.capping.push_back(raised(levels.underside, height));
  }
  return levels;
}

}  // namespace squaredig::fill
