// Straight profiles of the surveyed surface, and how far a rule laid on one stands open.
//
// Frame and units: site frame, metres; heights are deviations.
// Laws: profile.1 a longer stretch of a profile never opens less; profile.2 the opening does not
// feel
//   a line added to the profile.
// Accuracy: the profile is exact for the surface: a knot at every edge it crosses.
// Source: definition; the opening is the greatest vertical thickness of the convex hull of the
//   profile, which is where the rule of least greatest opening leaves it.
#pragma once

#include "base/floor_internal.h"

namespace squaredig::base {

struct Knot {
  double s = 0;  // along the line
  double z = 0;
};

// The rule touches at two places and stands farthest off (or rocks, on a hump) at the third.
struct Opening {
  double width = 0;
  double touch_from = 0;
  double touch_to = 0;
  double worst = 0;
};

// Requires: knots by rising s.
Opening opening_of(std::span<const Knot> knots);

class Profiles {
 public:
  Profiles(const DugSurface& dug, geometry::Polygon toe);

  // How far the line through `at` stays on the surveyed floor, behind and ahead; nothing where `at`
  // itself is off it. `direction` has length one.
  std::optional<std::pair<double, double>> stretch(geometry::Point2 at,
                                                   geometry::Point2 direction) const;
  // The knots of the line between two places on it, both with their heights where the surface has
  // them. Valid until the next call.
  std::span<const Knot> between(geometry::Point2 at, geometry::Point2 direction, double from,
                                double to);
  // The same in no order and without the two ends.
  std::span<const Knot> crossings(geometry::Point2 at, geometry::Point2 direction, double from,
                                  double to);
  // The judged points the height at a place is made of.
  std::vector<std::pair<std::size_t, double>> shares_at(geometry::Point2 p) const;
  double spacing() const { return cell_; }

 private:
  struct Edge {
    geometry::Point3 a, b;
  };
  template <class Visit>
  void cells_along(geometry::Point2 a, geometry::Point2 b, const Visit& visit) const;
  void lay_grid();
  void gather(geometry::Point2 at, geometry::Point2 direction, double from, double to);

  geometry::Surface surface_;
  std::vector<std::size_t> source_;
  geometry::Locator locator_;
  geometry::Polygon toe_;
  geometry::Polygon rim_;
  std::vector<Edge> edges_;
  geometry::Point2 low_;
  double cell_ = 1;
  int columns_ = 0, rows_ = 0;
  std::vector<std::uint32_t> start_, entries_;  // the edges of each cell
  std::vector<std::uint32_t> seen_;             // by edge: the last query that met it
  std::uint32_t query_ = 0;
  std::vector<Knot> knots_;
};

}  // namespace squaredig::base
