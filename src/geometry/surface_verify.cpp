#include <algorithm>
#include <cmath>

#include "geometry/locate.h"
#include "geometry/surface.h"
#include "quantity/number_text.h"

namespace squaredig::geometry {
namespace {

// Overlaps no deeper than this are rounding.
constexpr double kDepth = 1e-9;

std::string triangle_name(std::size_t t) { return "triangle " + std::to_string(t); }

std::string place_text(Point2 p) { return "(" + fixed(p.x, 3) + ", " + fixed(p.y, 3) + ")"; }

// surface.4
std::vector<std::string> check_arrays(const Surface& s) {
  std::vector<std::string> faults;
  const auto count = static_cast<Index>(s.vertices.size());
  const auto triangles = static_cast<Index>(s.triangles.size());
  for (std::size_t v = 0; v < s.vertices.size(); ++v) {
    const Point3& p = s.vertices[v];
    if (!std::isfinite(p.x) || !std::isfinite(p.y) || !std::isfinite(p.z))
      faults.push_back("vertex " + std::to_string(v) + " has a coordinate that is not finite");
  }
  for (std::size_t t = 0; t < s.triangles.size(); ++t)
    for (const Index v : s.triangles[t])
      if (v < 0 || v >= count)
        faults.push_back(triangle_name(t) + " names vertex " + std::to_string(v) + " of " +
                         std::to_string(count));
  if (s.neighbours.size() != s.triangles.size())
    faults.push_back(std::to_string(s.triangles.size()) + " triangles have " +
                     std::to_string(s.neighbours.size()) + " entries of neighbours");
  for (std::size_t t = 0; t < s.neighbours.size(); ++t)
    for (const Index n : s.neighbours[t])
      if (n != kNone && (n < 0 || n >= triangles))
        faults.push_back(triangle_name(t) + " names neighbour " + std::to_string(n) + " of " +
                         std::to_string(triangles));
  return faults;
}

// surface.1
void check_turning(const Surface& s, std::vector<std::string>& faults) {
  for (std::size_t t = 0; t < s.triangles.size(); ++t) {
    const auto [a, b, c] = s.corners(static_cast<Index>(t));
    const double twice_area = orient(a.plan(), b.plan(), c.plan());
    if (twice_area > 0) continue;
    faults.push_back(triangle_name(t) + " at " + place_text(a.plan()) +
                     (twice_area < 0 ? " runs clockwise" : " has no area in plan"));
  }
}

// surface.2
void check_neighbours(const Surface& s, std::vector<std::string>& faults) {
  Surface linked{s.vertices, s.triangles, {}};
  if (!link_neighbours(linked)) faults.push_back("an edge has more than two triangles");
  for (std::size_t t = 0; t < s.triangles.size(); ++t)
    for (std::size_t i = 0; i < 3; ++i)
      if (s.neighbours[t][i] != linked.neighbours[t][i])
        faults.push_back(triangle_name(t) + " names neighbour " +
                         std::to_string(s.neighbours[t][i]) + " across side " + std::to_string(i) +
                         ", where " + std::to_string(linked.neighbours[t][i]) + " lies");
}

// True when all corners of `other` lie beyond one side of `triangle`.
bool apart(const std::array<Point3, 3>& triangle, const std::array<Point3, 3>& other) {
  for (std::size_t i = 0; i < 3; ++i) {
    const Point2 a = triangle[i].plan(), u = triangle[(i + 1) % 3].plan() - a;
    const double grace = kDepth * std::hypot(u.x, u.y);
    const auto beyond = [&](const Point3& c) { return cross(u, c.plan() - a) <= grace; };
    if (beyond(other[0]) && beyond(other[1]) && beyond(other[2])) return true;
  }
  return false;
}

// surface.3. How often a place is covered is the winding number of all triangles about it, and
// sides shared by neighbours cancel in that sum: it depends on the rim alone. So wherever two
// triangles overlap, some triangle at the rim overlaps another, and only those need be tried.
void check_overlap(const Surface& s, std::vector<std::string>& faults) {
  const Locator locator(s);
  for (std::size_t t = 0; t < s.triangles.size(); ++t) {
    const auto& n = s.neighbours[t];
    if (n[0] != kNone && n[1] != kNone && n[2] != kNone) continue;
    const auto here = s.corners(static_cast<Index>(t));
    const auto [left, right] = std::minmax({here[0].x, here[1].x, here[2].x});
    const auto [bottom, top] = std::minmax({here[0].y, here[1].y, here[2].y});
    for (const Index other : locator.triangles_in({left, bottom}, {right, top})) {
      if (other == static_cast<Index>(t)) continue;
      const auto there = s.corners(other);
      if (apart(here, there) || apart(there, here)) continue;
      const auto& back = s.neighbours[static_cast<std::size_t>(other)];
      const bool told =
          static_cast<std::size_t>(other) < t && std::count(back.begin(), back.end(), kNone) > 0;
      if (!told)
        faults.push_back(triangle_name(t) + " at " + place_text(here[0].plan()) +
                         " overlaps triangle " + std::to_string(other));
    }
  }
}

}  // namespace

std::vector<std::string> verify(const Surface& surface) {
  std::vector<std::string> faults = check_arrays(surface);
  if (!faults.empty()) return faults;
  check_turning(surface, faults);
  check_neighbours(surface, faults);
  if (faults.empty()) check_overlap(surface, faults);
  return faults;
}

}  // namespace squaredig::geometry
