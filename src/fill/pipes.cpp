#include <algorithm>
#include <cmath>
#include <numbers>

#include "fill/quantities_internal.h"
#include "quantity/number_text.h"

namespace squaredig::fill {
namespace {

// The part of a circle's area below a level, as measured from its lowest point.
double segment_area(double radius, double height) {
  const double h = std::clamp(height, 0.0, 2 * radius);
  const double off = radius - h;
  return radius * radius * std::acos(std::clamp(off / radius, -1.0, 1.0)) -
         off * std::sqrt(std::max(0.0, radius * radius - off * off));
}

std::optional<std::size_t> side_of(const design::Tank& tank, const std::string& name) {
  for (std::size_t i = 0; i < tank.sides(); ++i)
    if (tank.side_name(i) == name) return i;
  return std::nullopt;
}

// How far the pipe's centre line runs, square to the tank's face, before it enters the wall of the
// hole or comes out of the ground: found by halving.
double run_in_hole(const FillContext& context, GridPoint start, Bearing outward, Elevation centre) {
  const auto in_hole = [&](double metres) {
    const GridPoint p = ahead(start, outward, Length::metres(metres));
    const auto surface = context.pit.surface_at(p);
    return context.pit.dug_at(p) && surface && *surface < centre;
  };
  if (!in_hole(1e-6)) return 0;
  double low = 1e-6, high = 1;
  while (in_hole(high) && high < 1000) low = high, high *= 2;
  for (int i = 0; i < 60; ++i) {
    const double middle = (low + high) / 2;
    (in_hole(middle) ? low : high) = middle;
  }
  return low;
}

}  // namespace

std::vector<Volume> pipes_by_lift(const FillContext& context, const FillLevels& levels,
                                  std::vector<Finding>& findings) {
  std::vector<Volume> by_lift(levels.lifts.size());
  const auto& tank = context.pit.tank;
  for (const auto& pipe : context.design.tank.pipes) {
    const auto side = side_of(tank, pipe.side);
    if (!side) continue;  // told where the pegs are set out
    const Length along = pipe.along * context.design.combined_factor.value();
    const GridPoint start = ahead(tank.corners[*side], tank.side_bearing(*side), along);
    const double radius = pipe.diameter.in_metres() / 2;
    const double run = run_in_hole(context, start, tank.side_bearing(*side) - Angle::degrees(90),
                                   pipe.invert + pipe.diameter / 2);
    const double invert = context.pit.frame.to_site(pipe.invert);
    const auto at = context.pit.frame.to_site(start);
    for (std::size_t i = 0; i < levels.lifts.size(); ++i) {
      const double slice = segment_area(radius, levels.lifts[i].to.at(at) - invert) -
                           segment_area(radius, levels.lifts[i].from.at(at) - invert);
      by_lift[i] += Volume::cubic_metres(slice * run);
    }
    if (pipe.invert + pipe.diameter > tank.top.at(start))
      findings.push_back({"pipe-above-tank", "Pipe " + quoted(pipe.name) +
                                                 " stands above the tank top; only the part below "
                                                 "it is taken from the side fill."});
  }
  return by_lift;
}

}  // namespace squaredig::fill
