#include <algorithm>
#include <cmath>

#include "design/extras_internal.h"
#include "geometry/polygon.h"
#include "quantity/number_text.h"

namespace squaredig::design {
namespace {

using geometry::Plane;
using geometry::Point2;
using geometry::Point3;

// The trench floor under each vertex of the pipe's line.
std::vector<Point3> floor_line(const PitBase& base, const Trench& trench) {
  std::vector<Point3> line;
  for (const GridPosition& p : trench.line) {
    const Elevation floor = p.height - trench.wall - trench.bedding;
    line.push_back(base.frame.to_site(GridPosition{p.at, floor}));
  }
  for (std::size_t i = 1; i < line.size(); ++i)
    if (std::hypot(line[i].x - line[i - 1].x, line[i].y - line[i - 1].y) < 1e-3)
      refuse(trench.place, "two trench vertices in one place", "vertices at least 1 mm apart",
             "leave out the repeated vertex");
  return line;
}

Point2 direction(const Point3& from, const Point3& to) {
  const Point2 d = to.plan() - from.plan();
  return (1 / std::hypot(d.x, d.y)) * d;
}

// How far the straights on both sides of a bend run past it, so that their outer edges meet.
double past_bend(const Trench& trench, const std::vector<Point3>& line, std::size_t i,
                 double width) {
  if (i == 0 || i + 1 == line.size()) return 0;
  const Point2 in = direction(line[i - 1], line[i]), out = direction(line[i], line[i + 1]);
  const double turn = std::abs(std::atan2(cross(in, out), dot(in, out)));
  if (turn > std::numbers::pi / 2 + 1e-9)
    refuse(trench.place,
           "a trench that turns by " + fixed(Angle::radians(turn).in_degrees(), 1) + " degrees",
           "turns of 90 degrees at most", "put a vertex in between or draw two trenches");
  return width / 2 * std::tan(turn / 2);
}

CutSpec straight(const Trench& trench, const Point3& from, const Point3& to, double before,
                 double after, double width) {
  const Point2 u = direction(from, to);
  const Point2 left{-u.y, u.x};
  const double run = std::hypot(to.x - from.x, to.y - from.y);
  const double grade = (to.z - from.z) / run;
  const Point2 start = from.plan() - before * u, end = to.plan() + after * u;
  const double half = width / 2;
  return {{{start - half * left, end - half * left, end + half * left, start + half * left},
           {0, 1, 2, 3}},
          Plane{from.plan(), from.z, grade * u.x, grade * u.y},
          std::vector<Batter>(4, trench.batter),
          {"right of the line", "at its end", "left of the line", "at its start"},
          Corners::Mitre,
          Part::Trench,
          trench.place};
}

void add_trench(const PitBase& base, const Trench& trench, PitCuts& pit) {
  const double width = trench.width.in_metres() * base.input.combined_factor.value();
  const auto line = floor_line(base, trench);
  for (std::size_t i = 0; i + 1 < line.size(); ++i)
    pit.cuts.push_back(
        convex_cut(straight(trench, line[i], line[i + 1], past_bend(trench, line, i, width),
                            past_bend(trench, line, i + 1, width), width)));
}

SideRing sump_ring(const PitBase& base, const Sump& sump) {
  SideRing ring;
  for (const GridPoint& p : sump.outline) {
    ring.corners.push_back(base.frame.to_site(p));
    ring.side.push_back(0);
  }
  if (ring.corners.size() < 3 || geometry::self_crossing(ring.corners))
    refuse(sump.place, "a sump outline that crosses itself or has under three corners",
           "a simple polygon", "put the corners in order round the sump");
  if (geometry::signed_area(ring.corners) < 0)
    std::reverse(ring.corners.begin(), ring.corners.end());
  return ring;
}

}  // namespace

void add_trenches(const PitBase& base, PitCuts& pit) {
  for (const Trench& trench : base.input.pit.trenches) add_trench(base, trench, pit);
}

void add_sumps(const PitBase& base, PitCuts& pit) {
  for (const Sump& sump : base.input.pit.sumps) {
    const double level = base.frame.to_site(sump.level);
    for (const auto& ring : covered_by_convex(sump_ring(base, sump)).rings)
      pit.cuts.push_back(convex_cut({ring,
                                     {ring.corners[0], level, 0, 0},
                                     {sump.batter},
                                     {"of the sump"},
                                     Corners::Mitre,
                                     Part::Sump,
                                     sump.place}));
  }
}

}  // namespace squaredig::design
