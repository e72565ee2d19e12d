#include <cmath>

#include "design/extras_internal.h"
#include "quantity/number_text.h"

namespace squaredig::design {
namespace {

using geometry::Plane;
using geometry::Point2;

struct RampLine {
  Point2 start;    // on the toe, on the centre line
  Point2 outward;  // unit
  Point2 onward;   // unit, along the side from its first corner
};

std::size_t side_number(const PitBase& base, const Ramp& ramp) {
  for (std::size_t i = 0; i < base.tank.sides(); ++i)
    if (base.tank.side_name(i) == ramp.side) return i;
  refuse(ramp.place, "a ramp on side " + quoted(ramp.side) + ", which the tank has not",
         "sides " + base.tank.side_name(0) + " to " + base.tank.side_name(base.tank.sides() - 1),
         "correct the side's name");
}

RampLine line_of(const PitBase& base, const Ramp& ramp) {
  const std::size_t side = side_number(base, ramp);
  const double along = ramp.along.in_metres() * base.input.combined_factor.value();
  const double half = ramp.width.in_metres() * base.input.combined_factor.value() / 2;
  const double length = base.tank.side_length(side).in_metres();
  if (along - half < -1e-9 || along + half > length + 1e-9)
    refuse(ramp.place, "a ramp that reaches past the end of side " + ramp.side,
           "the whole width between the side's corners, " + fixed(length, 3) + " m apart",
           "move or narrow the ramp");
  const Point2 corner = base.frame.to_site(base.tank.corners[side]);
  const Point2 next = base.frame.to_site(base.tank.corners[(side + 1) % base.tank.sides()]);
  const Point2 onward = (1 / std::hypot(next.x - corner.x, next.y - corner.y)) * (next - corner);
  const Point2 outward{-onward.y, onward.x};  // the tank runs clockwise
  const double gap =
      gaps_of(base.input.pit, base.tank)[side].in_metres() * base.input.combined_factor.value();
  return {corner + along * onward + gap * outward, outward, onward};
}

// A face through the line that runs along `unit`, keeping the ramp's own grade there.
Plane face(const Plane& ramp, Point2 at, Point2 unit, Point2 out, double run) {
  const double grade = ramp.slope_x * unit.x + ramp.slope_y * unit.y;
  return {at, ramp.at(at), grade * unit.x + out.x / run, grade * unit.y + out.y / run};
}

void add_edge(const Ramp& ramp, const Plane& floor, Point2 at, Point2 unit, Point2 out,
              geometry::ConvexCut& cut) {
  if (ramp.batter.vertical())
    cut.bounds.push_back({{-out.x, -out.y, dot(out, at)}, geometry::kNone});
  else
    cut.faces.push_back({face(floor, at, unit, out, ramp.batter.run_per_rise()), geometry::kNone});
}

geometry::ConvexCut ramp_cut(const PitBase& base, const Ramp& ramp) {
  const RampLine line = line_of(base, ramp);
  const double rise = 1 / ramp.slope.run_per_rise();
  const double floor_rise =
      base.floor.slope_x * line.outward.x + base.floor.slope_y * line.outward.y;
  if (rise <= floor_rise + 1e-9)
    refuse(ramp.place, "ramp slope " + ramp.slope.text() + " rises no faster than the floor",
           "a ramp that climbs out of the pit", "steepen the ramp or put it on another side");
  geometry::ConvexCut cut;
  cut.part = static_cast<geometry::Index>(Part::Ramp);
  cut.reaches = false;  // it counts where it is joined to the pit
  cut.floor = {line.start, base.floor.at(line.start), rise * line.outward.x, rise * line.outward.y};
  const double half = ramp.width.in_metres() * base.input.combined_factor.value() / 2;
  const Point2 first = line.start - half * line.onward, last = line.start + half * line.onward;
  // seen outward, the side's first corner is on the left
  add_edge(ramp, cut.floor, first, line.outward, -1 * line.onward, cut);
  add_edge(ramp, cut.floor, last, line.outward, line.onward, cut);
  add_edge(ramp, cut.floor, line.start, line.onward, -1 * line.outward, cut);
  cut.toe = {last, last + line.outward, first + line.outward, first};
  return cut;
}

}  // namespace

void add_ramps(const PitBase& base, PitCuts& pit) {
  for (const Ramp& ramp : base.input.pit.ramps) pit.cuts.push_back(ramp_cut(base, ramp));
}

}  // namespace squaredig::design
