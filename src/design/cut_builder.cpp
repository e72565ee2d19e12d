#include <cmath>

#include "design/cut_builder_internal.h"
#include "quantity/number_text.h"

namespace squaredig::design {
namespace {

using geometry::Plane;
using geometry::Point2;

Point2 unit(Point2 d) { return (1 / std::hypot(d.x, d.y)) * d; }
Point2 right_of(Point2 u) { return {u.y, -u.x}; }

// The plane through the floor at `toe` that keeps the floor's grade along `along` and rises 1 / run
// to the right of it.
Plane face_plane(const Plane& floor, Point2 toe, Point2 along, double run) {
  const Point2 out = right_of(along);
  const double grade = floor.slope_x * along.x + floor.slope_y * along.y;
  return {toe, floor.at(toe), grade * along.x + out.x / run, grade * along.y + out.y / run};
}

void require_rising(const CutSpec& spec, std::size_t side, double grade) {
  const Batter batter = spec.batters[side];
  if (batter.vertical() || 1 / batter.run_per_rise() > grade + 1e-9) return;
  refuse(spec.place,
         "batter " + batter.text() + " of side " + spec.side_names[side] +
             " rises no faster than the floor it leaves (" + fixed(100 * grade, 2) + " percent)",
         "a batter steeper than the floor's own rise", "steepen the batter or correct the fall");
}

// Round corners are chords of the cone round a toe corner, at most 6 degrees apart.
void add_round_corner(const CutSpec& spec, std::size_t corner, geometry::ConvexCut& cut) {
  const std::size_t n = spec.toe.corners.size(), before = (corner + n - 1) % n;
  const std::size_t side_in = spec.toe.side[before], side_out = spec.toe.side[corner];
  const Batter in = spec.batters[side_in], out = spec.batters[side_out];
  if (in.vertical() || out.vertical()) return;
  const Point2 at = spec.toe.corners[corner];
  const Point2 u = unit(at - spec.toe.corners[before]);
  const Point2 v = unit(spec.toe.corners[(corner + 1) % n] - at);
  const double turn = std::atan2(cross(u, v), dot(u, v));
  const int steps = static_cast<int>(std::ceil(turn / (6 * std::numbers::pi / 180) - 1e-9));
  for (int k = 1; k < steps; ++k) {
    const double share = static_cast<double>(k) / steps;
    const double c = std::cos(share * turn), s = std::sin(share * turn);
    const Point2 along{u.x * c - u.y * s, u.x * s + u.y * c};
    const double run = in.run_per_rise() + share * (out.run_per_rise() - in.run_per_rise());
    cut.faces.push_back(
        {face_plane(spec.floor, at, along, run), static_cast<geometry::Index>(side_in)});
  }
}

}  // namespace

double outward_grade(const Plane& floor, Point2 from, Point2 to) {
  const Point2 out = right_of(unit(to - from));
  return floor.slope_x * out.x + floor.slope_y * out.y;
}

geometry::ConvexCut convex_cut(const CutSpec& spec) {
  geometry::ConvexCut cut;
  cut.toe = spec.toe.corners;
  cut.floor = spec.floor;
  cut.part = static_cast<geometry::Index>(spec.part);
  const std::size_t n = cut.toe.size();
  for (std::size_t i = 0; i < n; ++i) {
    const Point2 a = cut.toe[i], b = cut.toe[(i + 1) % n];
    const std::size_t side = spec.toe.side[i];
    const auto number = static_cast<geometry::Index>(side);
    if (spec.batters[side].vertical()) {
      cut.bounds.push_back({geometry::HalfPlane::left_of(a, b), number});
      continue;
    }
    require_rising(spec, side, outward_grade(spec.floor, a, b));
    cut.faces.push_back(
        {face_plane(spec.floor, a, unit(b - a), spec.batters[side].run_per_rise()), number});
  }
  if (spec.corners == Corners::Round)
    for (std::size_t i = 0; i < n; ++i) add_round_corner(spec, i, cut);
  return cut;
}

}  // namespace squaredig::design
