// The place where a straightedge on the surveyed base stands most open.
//
// What: any place, any direction, the rule wholly inside the floor, shortened where the floor is
//   shorter; the opening is the minimum zone of the profile, hump and hollow alike.
// Frame and units: site frame, metres; heights are deviations.
// Laws: straightedge.1 the opening reported is that of the profile under the rule reported;
//   straightedge.2 a plane added to the surface changes no opening; straightedge.3 a longer rule
//   never opens less.
// Accuracy: a search, not a proof: a seeded random climb on 200 surfaces finds nothing more than
//   0.05 mm larger (tests/search).
// Source: search over lines through every pair of measured points in reach, then polished in
// position
//   and direction. A pair is left out only where the heights round it cannot open wider than what
//   is already found.
#pragma once

#include "base/profile_internal.h"

namespace squaredig::base {

struct RulePlace {
  geometry::Point2 from, to;  // the ends of the rule
  double width = 0;
  geometry::Point2 touch_from, touch_to, worst;
};

// Nothing where no rule has a profile.
std::optional<RulePlace> widest_opening(const DugSurface& dug, const geometry::Polygon& toe,
                                        double length);

// The rule of that length whose middle is nearest to `middle`, in that direction. Nothing off the
// surveyed floor.
std::optional<RulePlace> lay_rule(Profiles& profiles, geometry::Point2 middle,
                                  geometry::Point2 direction, double length);

}  // namespace squaredig::base
