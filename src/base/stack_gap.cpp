// How the joints between stacks open. A unit stands on the plane that fits its patch of the surface
// best, by area: over a rectangle the slopes of that plane are the first moments of the height over
// the second moments of the rectangle, so each slope is a sum of the measured heights.
#include <algorithm>
#include <cmath>
#include <map>

#include "base/checks_internal.h"
#include "base/decision_internal.h"
#include "quantity/number_text.h"

namespace squaredig::base {
namespace {

using geometry::Point2;
using Weights = std::map<std::size_t, double>;  // judged point -> share

struct Unit {
  int column = 0;
  int row = 0;
  Point2 centre;
  Weights along;  // slope along A-B
  Weights into;   // slope into the tank
};

struct Layout {
  TankAxes axes;
  double unit_along = 0, unit_into = 0;  // size of a unit

  Point2 at(double u, double v) const { return axes.at(u, v); }
  geometry::Polygon rectangle(int column, int row) const {
    const double u = column * unit_along, v = row * unit_into;
    // anticlockwise: `into` is to the right of `along`
    return {at(u, v), at(u, v + unit_into), at(u + unit_along, v + unit_into),
            at(u + unit_along, v)};
  }
};

Layout layout_of(const PlannedBase& planned, const Floor& floor) {
  return {axes_of(planned, floor), planned.module->first.in_metres(),
          planned.module->second.in_metres()};
}

double covered(const geometry::Polygon& unit, const std::vector<geometry::PlaneFacet>& tank) {
  double area = 0;
  for (const geometry::PlaneFacet& part : tank)
    area += geometry::signed_area(geometry::clip_convex(unit, part.outline));
  return area;
}

// Whole units in straight rows from A.
std::vector<Unit> units_of(const Layout& layout, const Floor& floor) {
  constexpr double kShort = 0.001;  // metres a unit may stand over
  double u0 = 0, u1 = 0, v0 = 0, v1 = 0;
  for (const Point2 p : floor.footprint) {
    const double u = layout.axes.along_of(p), v = layout.axes.in_of(p);
    u0 = std::min(u0, u), u1 = std::max(u1, u), v0 = std::min(v0, v), v1 = std::max(v1, v);
  }
  const auto first = [](double low, double size) {
    return static_cast<int>(std::ceil((low - kShort) / size));
  };
  const auto last = [](double high, double size) {
    return static_cast<int>(std::floor((high + kShort) / size));
  };
  const auto tank = parts_of(floor.footprint);
  const double whole = layout.unit_along * layout.unit_into;
  const double least = whole - kShort * (layout.unit_along + layout.unit_into);
  std::vector<Unit> units;
  for (int r = first(v0, layout.unit_into); r < last(v1, layout.unit_into); ++r)
    for (int c = first(u0, layout.unit_along); c < last(u1, layout.unit_along); ++c) {
      const geometry::Polygon rectangle = layout.rectangle(c, r);
      if (covered(rectangle, tank) >= least)
        units.push_back({c, r, rectangle[0] + 0.5 * (rectangle[2] - rectangle[0]), {}, {}});
    }
  return units;
}

// Shares of a triangle's corners at a place.
std::array<double, 3> shares_at(const std::array<geometry::Point3, 3>& t, Point2 p) {
  const double whole = geometry::orient(t[0].plan(), t[1].plan(), t[2].plan());
  return {geometry::orient(p, t[1].plan(), t[2].plan()) / whole,
          geometry::orient(t[0].plan(), p, t[2].plan()) / whole,
          geometry::orient(t[0].plan(), t[1].plan(), p) / whole};
}

// Adds the first moments of one overlap. The integrand is quadratic, for which the three mid-points
// of a triangle's sides are exact.
void add_moments(Unit& unit, const Layout& layout, const DugSurface& dug,
                 const geometry::Overlap& o) {
  const double whole = layout.unit_along * layout.unit_into;
  const double along2 = whole * layout.unit_along * layout.unit_along / 12;
  const double into2 = whole * layout.unit_into * layout.unit_into / 12;
  const auto corners = dug.surface.corners(o.triangle);
  const auto& ids = dug.surface.triangles[static_cast<std::size_t>(o.triangle)];
  for (std::size_t i = 2; i < o.corners.size(); ++i) {
    const std::array<Point2, 3> fan{o.corners[0], o.corners[i - 1], o.corners[i]};
    const double third = geometry::orient(fan[0], fan[1], fan[2]) / 6;
    for (std::size_t k = 0; k < 3; ++k) {
      const Point2 middle = fan[k] + 0.5 * (fan[(k + 1) % 3] - fan[k]);
      const double u = geometry::dot(middle - unit.centre, layout.axes.along);
      const double v = geometry::dot(middle - unit.centre, layout.axes.into);
      const auto share = shares_at(corners, middle);
      for (std::size_t j = 0; j < 3; ++j) {
        const std::size_t point = dug.source[static_cast<std::size_t>(ids[j])];
        unit.along[point] += third * u * share[j] / along2;
        unit.into[point] += third * v * share[j] / into2;
      }
    }
  }
}

void stand_on(std::vector<Unit>& units, const Layout& layout, const DugSurface& dug) {
  std::vector<geometry::PlaneFacet> patches;
  patches.reserve(units.size());
  for (const Unit& unit : units) patches.push_back({layout.rectangle(unit.column, unit.row), {}});
  const geometry::Locator locator(dug.surface);
  geometry::overlay(dug.surface, locator, patches, [&](const geometry::Overlap& o) {
    add_moments(units[o.facet], layout, dug, o);
  });
}

double slope(const Weights& weights, const Floor& floor) {
  double sum = 0;
  for (const auto& [point, share] : weights) sum += share * floor.points[point].deviation;
  return sum;
}

// A hump tilts the two away from each other: the joint opens at the top by the difference of their
// slopes across it times the height.
struct JointSum {
  Joint joint;
  double length = 0;
  std::vector<std::pair<std::size_t, double>> coefficients;
};

// The side they share: the near end of `b`'s first side, along A-B or into the tank.
std::pair<GridPoint, GridPoint> shared_side(const Layout& layout, const Floor& floor, const Unit& b,
                                            bool beside) {
  const double u = b.column * layout.unit_along, v = b.row * layout.unit_into;
  const Point2 far =
      beside ? layout.at(u, v + layout.unit_into) : layout.at(u + layout.unit_along, v);
  return {floor.frame.to_grid(layout.at(u, v)), floor.frame.to_grid(far)};
}

JointSum joint_between(const Layout& layout, const Unit& a, const Unit& b, double height,
                       const Floor& floor) {
  const bool beside = a.row == b.row;
  const Weights& from = beside ? a.along : a.into;
  const Weights& to = beside ? b.along : b.into;
  JointSum sum;
  sum.length = height * (slope(from, floor) - slope(to, floor));
  const auto [start, end] = shared_side(layout, floor, b, beside);
  sum.joint = {a.column + 1, a.row + 1, b.column + 1, b.row + 1, Length::metres(sum.length),
               start,        end};
  Weights difference = from;
  for (const auto& [point, share] : to) difference[point] -= share;
  for (const auto& [point, share] : difference)
    sum.coefficients.emplace_back(point, height * share);
  return sum;
}

std::string unit_name(int column, int row) {
  return "column " + std::to_string(column) + " row " + std::to_string(row);
}

Check judged(const BaseInput& input, const PlannedBase& planned, const Floor& floor,
             const StackGap& gap, const JointSum& sum) {
  const auto limit =
      input.stack_gap_tolerance ? std::optional<Amount>(*input.stack_gap_tolerance) : std::nullopt;
  Check check = decided("stack gap", Bound::AtMost, abs(sum.joint.opening), limit,
                        Length::metres(floor.expanded(sum.coefficients)));
  const Joint& j = sum.joint;
  const Point2 start = floor.frame.to_site(j.from), end = floor.frame.to_site(j.to);
  check.at = floor.frame.to_grid(start + 0.5 * (end - start));
  check.words = "between " + unit_name(j.column, j.row) + " and " +
                unit_name(j.to_column, j.to_row) + ", " + tied(planned.tank, *check.at) +
                (j.opening > Length{} ? ", open at the top; on " : ", open at the bottom; on ") +
                gap.on + to_settle(check, floor, {1, "each point under the two units"});
  return check;
}

std::vector<Finding> remainder(const Layout& layout, const Floor& floor, std::size_t units) {
  const double whole = geometry::signed_area(floor.footprint);
  const double stood = static_cast<double>(units) * layout.unit_along * layout.unit_into;
  // a millimetre of length either way is no remainder
  if (std::abs(whole - stood) <= 0.001 * 2 * std::sqrt(whole)) return {};
  return {{"stack_remainder", "whole units of " + fixed(layout.unit_along, 3) + " by " +
                                  fixed(layout.unit_into, 3) + " m leave " +
                                  fixed(whole - stood, 3) + " m2 of the tank uncovered"}};
}

// Those worth a look, widest first.
StackGap with_list(StackGap gap, const std::optional<Length>& tolerance) {
  gap.listed_over = tolerance.value_or(abs(gap.widest->opening) / 2);
  const Length over = gap.listed_over + Length::metres(1e-9);
  for (const Joint& joint : gap.joints)
    if (abs(joint.opening) > over) gap.listed.push_back(joint);
  if (gap.listed.empty()) gap.listed.push_back(*gap.widest);
  std::stable_sort(gap.listed.begin(), gap.listed.end(),
                   [](const Joint& a, const Joint& b) { return abs(a.opening) > abs(b.opening); });
  return gap;
}

Check without_value(const BaseInput& input, const char* why) {
  const auto limit =
      input.stack_gap_tolerance ? std::optional<Amount>(*input.stack_gap_tolerance) : std::nullopt;
  Check check = decided("stack gap", Bound::AtMost, std::nullopt, limit, std::nullopt);
  check.words = why;
  return check;
}

// Every joint between units side by side, in a row or in a column, and the widest of them.
JointSum add_joints(const std::vector<Unit>& units, const Layout& layout, double height,
                    const Floor& floor, StackGap& gap) {
  std::map<std::pair<int, int>, const Unit*> by_place;
  for (const Unit& unit : units) by_place[{unit.row, unit.column}] = &unit;
  JointSum widest;
  for (const Unit& unit : units) {
    gap.columns = std::max(gap.columns, unit.column + 1);
    gap.rows = std::max(gap.rows, unit.row + 1);
    for (const auto& next : {std::pair(unit.row, unit.column + 1), {unit.row + 1, unit.column}}) {
      const auto found = by_place.find(next);
      if (found == by_place.end()) continue;
      JointSum sum = joint_between(layout, unit, *found->second, height, floor);
      gap.joints.push_back(sum.joint);
      if (gap.joints.size() == 1 || std::abs(sum.length) > std::abs(widest.length))
        widest = std::move(sum);
    }
  }
  return widest;
}

}  // namespace

StackAnswer judge_stack(const BaseInput& input, const PlannedBase& planned, const Floor& floor,
                        const std::optional<DugSurface>& dug, const std::string& on) {
  StackAnswer answer;
  answer.check = without_value(
      input, planned.module ? "it takes three points that are not on one line"
                            : "the plan size of a unit, module, is not given in [tank]");
  if (!planned.module || !dug) return answer;
  const Layout layout = layout_of(planned, floor);
  std::vector<Unit> units = units_of(layout, floor);
  answer.findings = remainder(layout, floor, units.size());
  stand_on(units, layout, *dug);
  StackGap gap;
  gap.on = on;
  const JointSum widest = add_joints(units, layout, planned.tank.height.in_metres(), floor, gap);
  if (gap.joints.empty()) {
    answer.check = without_value(input, "no two units stand side by side");
    return answer;
  }
  gap.widest = widest.joint;
  answer.check = judged(input, planned, floor, gap, widest);
  answer.gap = with_list(std::move(gap), input.stack_gap_tolerance);
  return answer;
}

}  // namespace squaredig::base
