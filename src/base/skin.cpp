#include <algorithm>
#include <cmath>

#include "base/checks_internal.h"
#include "base/decision_internal.h"
#include "geometry/sum.h"
#include "quantity/number_text.h"

namespace squaredig::base {
namespace {

using geometry::Point2;
using Coefficients = std::vector<std::pair<std::size_t, double>>;

// A place on the surface and its deviation.
struct Spot {
  Point2 at;
  double deviation = 0;
  geometry::Index triangle = geometry::kNone;
};

struct Extremes {
  Spot highest{{}, -HUGE_VAL, geometry::kNone};
  Spot lowest{{}, HUGE_VAL, geometry::kNone};
};

// The deviation is linear on each overlap, so its extremes stand at corners of overlaps.
Extremes extremes_over(const DugSurface& dug, const geometry::Locator& locator,
                       const std::vector<geometry::PlaneFacet>& parts) {
  Extremes found;
  geometry::overlay(dug.surface, locator, parts, [&](const geometry::Overlap& o) {
    for (std::size_t i = 0; i < o.corners.size(); ++i) {
      const Spot spot{o.corners[i], o.differences[i], o.triangle};
      if (spot.deviation > found.highest.deviation) found.highest = spot;
      if (spot.deviation < found.lowest.deviation) found.lowest = spot;
    }
  });
  return found;
}

Area surveyed_part(const DugSurface& dug, const geometry::Locator& locator,
                   const std::vector<geometry::PlaneFacet>& parts) {
  geometry::Sum area;
  geometry::overlay(dug.surface, locator, parts, [&](const geometry::Overlap& o) {
    if (o.triangle < dug.surveyed_triangles) area.add(geometry::signed_area(o.corners));
  });
  return Area::square_metres(area.value());
}

// The judged points a spot's height is made of, and their shares.
Coefficients shares(const DugSurface& dug, const Spot& spot) {
  const auto corners = dug.surface.corners(spot.triangle);
  const auto& ids = dug.surface.triangles[static_cast<std::size_t>(spot.triangle)];
  const double whole = geometry::orient(corners[0].plan(), corners[1].plan(), corners[2].plan());
  Coefficients c;
  for (std::size_t k = 0; k < 3; ++k) {
    const double share =
        geometry::orient(spot.at, corners[(k + 1) % 3].plan(), corners[(k + 2) % 3].plan()) / whole;
    const std::size_t point = dug.source[static_cast<std::size_t>(ids[k])];
    const auto same = std::find_if(c.begin(), c.end(), [&](auto& x) { return x.first == point; });
    if (same == c.end()) {
      c.emplace_back(point, share);
    } else {
      same->second += share;
    }
  }
  return c;
}

std::optional<Amount> amount(const std::optional<Length>& v) {
  return v ? std::optional<Amount>(*v) : std::nullopt;
}

Check skin_check(const char* name, Bound bound, const PlannedBase& planned, const Floor& floor,
                 const DugSurface& dug, const Spot& spot) {
  const Length value = planned.thickness - Length::metres(spot.deviation);
  const auto& limit = bound == Bound::AtLeast ? planned.least : planned.most;
  Check check = decided(name, bound, value, amount(limit),
                        Length::metres(floor.expanded_with_common(shares(dug, spot))));
  check.at = floor.frame.to_grid(spot.at);
  check.words =
      tied(planned.tank, *check.at) + to_settle(check, floor, {1, "each point round it", true});
  return check;
}

std::vector<Check> without_surface(const PlannedBase& planned) {
  std::vector<Check> checks{
      decided("bedding thinnest", Bound::AtLeast, std::nullopt, amount(planned.least),
              std::nullopt),
      decided("bedding thickest", Bound::AtMost, std::nullopt, amount(planned.most), std::nullopt)};
  for (Check& c : checks) c.words = "it takes three points that are not on one line";
  return checks;
}

std::vector<std::string> cautions_of(const BaseInput& input, const PlannedBase& planned) {
  if (!input.level_tolerance) return {};
  const Length thinnest = planned.thickness - input.level_tolerance->high;
  const Length thickest = planned.thickness + input.level_tolerance->low;
  const Length slack = Length::metres(1e-9);
  const bool thin = planned.least && thinnest < *planned.least - slack;
  const bool thick = planned.most && thickest > *planned.most + slack;
  if (!thin && !thick) return {};
  return {"the level tolerances permit a skin of bedding from " + in_mm(thinnest) + " to " +
          in_mm(thickest) + ", outside the least and most wanted"};
}

std::string carried_words(Area floor, Area measured) {
  return fixed((floor - measured).in_square_metres(), 2) + " of " +
         fixed(floor.in_square_metres(), 2) +
         " m2 of the floor lie outside the outermost points: the deviation at the edge of the "
         "survey is carried outward there";
}

// The bedding between the dug surface and the tank's underside.
Skin skin_on(const PlannedBase& planned, const Floor& floor, const DugSurface& dug,
             const Extremes& extremes) {
  Skin skin;
  skin.thinnest = planned.thickness - Length::metres(extremes.highest.deviation);
  skin.thickest = planned.thickness - Length::metres(extremes.lowest.deviation);
  skin.thinnest_at = floor.frame.to_grid(extremes.highest.at);
  skin.thickest_at = floor.frame.to_grid(extremes.lowest.at);
  Shift shift = fitting_shift(planned, skin.thinnest, skin.thickest);
  skin.shift_that_fits = shift.fits;
  skin.shift_words = std::move(shift.words);
  skin.inverts = std::move(shift.inverts);
  SkinPlan plan = plan_skin(planned, floor, dug);
  skin.too_thin = std::move(plan.too_thin);
  skin.too_thick = std::move(plan.too_thick);
  return skin;
}

}  // namespace

SkinAnswer judge_skin(const BaseInput& input, const PlannedBase& planned, const Floor& floor,
                      const std::optional<DugSurface>& dug) {
  SkinAnswer answer;
  answer.cautions = cautions_of(input, planned);
  if (!dug) {
    answer.checks = without_surface(planned);
    return answer;
  }
  const geometry::Locator locator(dug->surface);
  const auto floor_parts = parts_of(floor.toe), tank_parts = parts_of(floor.footprint);
  const geometry::Between whole = geometry::between(dug->surface, locator, floor_parts);
  const geometry::Between under = geometry::between(dug->surface, locator, tank_parts);
  const Area floor_area = Area::square_metres(whole.common_area);
  answer.trim = BankVolume::cubic_metres(whole.above);
  answer.make_up = Volume::cubic_metres(whole.below);
  answer.area_mean = Length::metres((whole.above - whole.below) / whole.common_area);
  answer.measured_area = surveyed_part(*dug, locator, floor_parts);
  if (*answer.measured_area < floor_area * (1 - 1e-9))
    answer.assumed.push_back(carried_words(floor_area, *answer.measured_area));

  const Extremes extremes = extremes_over(*dug, locator, tank_parts);
  Skin skin = skin_on(planned, floor, *dug, extremes);
  skin.volume = Area::square_metres(under.common_area) * planned.thickness -
                Volume::cubic_metres(under.above - under.below);
  skin.wall_to_wall =
      floor_area * planned.thickness - Volume::cubic_metres(whole.above - whole.below);
  answer.findings = skin_findings(planned, skin);
  answer.skin = std::move(skin);
  answer.checks.push_back(
      skin_check("bedding thinnest", Bound::AtLeast, planned, floor, *dug, extremes.highest));
  answer.checks.push_back(
      skin_check("bedding thickest", Bound::AtMost, planned, floor, *dug, extremes.lowest));
  return answer;
}

}  // namespace squaredig::base
