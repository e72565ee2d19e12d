// A set-up on the circle through the known points it sees, where their angles are the same anywhere
// on the circle.
#include <algorithm>
#include <cmath>

#include "field/net_internal.h"

namespace squaredig::field {
namespace {

// The known points a set-up sees by angles alone, each once; none where something else places it.
std::vector<const NetPoint*> only_angles_to(const Net& net, std::size_t index) {
  const NetSetup& setup = net.setups[index];
  if (net.points[setup.station].plan_known) return {};
  for (const NetSight& s : net.sights)  // another set-up gives its place
    if (s.target == setup.station && s.setup != index) return {};
  std::vector<const NetPoint*> targets;
  for (const std::size_t i : setup.sights) {
    const NetSight& s = net.sights[i];
    const NetPoint* p = &net.points[s.target];
    if (!p->plan_known) continue;
    if (s.slope) return {};
    if (std::find(targets.begin(), targets.end(), p) == targets.end()) targets.push_back(p);
  }
  return targets;
}

struct Circle {
  double e = 0, n = 0, radius = 0;
};

// Through the first three; none where they are fewer or lie on one line.
std::optional<Circle> circle_through(const std::vector<const NetPoint*>& points) {
  if (points.size() < 3) return std::nullopt;
  const NetPoint& a = *points[0];
  const double bx = points[1]->e - a.e, by = points[1]->n - a.n;
  const double cx = points[2]->e - a.e, cy = points[2]->n - a.n;
  const double d = 2 * (bx * cy - by * cx);
  if (std::abs(d) < 1e-9) return std::nullopt;
  const double ux = (cy * (bx * bx + by * by) - by * (cx * cx + cy * cy)) / d;
  const double uy = (bx * (cx * cx + cy * cy) - cx * (bx * bx + by * by)) / d;
  return Circle{a.e + ux, a.n + uy, std::hypot(ux, uy)};
}

}  // namespace

bool on_danger_circle(const Net& net, std::size_t index) {
  constexpr double kNear = 0.02;  // of the radius
  const NetSetup& setup = net.setups[index];
  const auto targets = only_angles_to(net, index);
  const auto circle = circle_through(targets);
  if (!circle) return false;
  const auto near = [&](const NetPoint& p) {
    return std::abs(std::hypot(p.e - circle->e, p.n - circle->n) - circle->radius) <
           kNear * circle->radius;
  };
  if (!std::all_of(targets.begin(), targets.end(), [&](const NetPoint* p) { return near(*p); }))
    return false;
  if (net.points[setup.station].placed) return near(net.points[setup.station]);
  // no place was found: the angles between the targets are those of the circle
  const auto direction = [&](const NetPoint* p) {
    for (const std::size_t i : setup.sights)
      if (&net.points[net.sights[i].target] == p) return net.sights[i].direction;
    return 0.0;
  };
  const auto same = [&](const NetPoint* a, const NetPoint* b) {
    const double chord = std::hypot(a->e - b->e, a->n - b->n);
    const double by_angle = 2 * circle->radius * std::abs(std::sin(direction(a) - direction(b)));
    return std::abs(chord - by_angle) < kNear * circle->radius;
  };
  return same(targets[0], targets[1]) && same(targets[1], targets[2]) &&
         same(targets[0], targets[2]);
}

}  // namespace squaredig::field
