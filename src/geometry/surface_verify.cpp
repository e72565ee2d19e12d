#include <algorithm>
#include <cmath>

#include "geometry/locate.h"
#include "geometry/surface.h"

namespace squaredig::geometry {
namespace {

using Kind = SurfaceFault::Kind;
using Faults = std::vector<SurfaceFault>;

// Overlaps no deeper than this are rounding.
constexpr double kDepth = 1e-9;

// surface.4
Faults check_arrays(const Surface& s) {
  Faults faults;
  const auto beyond = [](Index i, std::size_t count) {
    return i < 0 || i >= static_cast<Index>(count);
  };
  for (std::size_t v = 0; v < s.vertices.size(); ++v) {
    const Point3& p = s.vertices[v];
    if (!std::isfinite(p.x) || !std::isfinite(p.y) || !std::isfinite(p.z))
      faults.push_back({Kind::NotFinite, kNone, static_cast<Index>(v)});
  }
  for (std::size_t t = 0; t < s.triangles.size(); ++t) {
    const auto& c = s.triangles[t];
    if (beyond(c[0], s.vertices.size()) || beyond(c[1], s.vertices.size()) ||
        beyond(c[2], s.vertices.size()))
      faults.push_back({Kind::OutOfRange, static_cast<Index>(t), kNone});
  }
  if (s.neighbours.size() != s.triangles.size()) faults.push_back({Kind::Neighbours, kNone, kNone});
  return faults;
}

// surface.1
void check_turning(const Surface& s, Faults& faults) {
  for (std::size_t t = 0; t < s.triangles.size(); ++t) {
    const auto [a, b, c] = s.corners(static_cast<Index>(t));
    const double twice_area = orient(a.plan(), b.plan(), c.plan());
    if (!(twice_area > 0))
      faults.push_back(
          {twice_area < 0 ? Kind::Clockwise : Kind::NoArea, static_cast<Index>(t), kNone});
  }
}

// surface.2
void check_neighbours(const Surface& s, const Surface& linked, Faults& faults) {
  for (std::size_t t = 0; t < s.triangles.size(); ++t)
    if (s.neighbours[t] != linked.neighbours[t])
      faults.push_back({Kind::Neighbours, static_cast<Index>(t), kNone});
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

bool at_rim(const Surface& s, Index t) {
  const auto& n = s.neighbours[static_cast<std::size_t>(t)];
  return n[0] == kNone || n[1] == kNone || n[2] == kNone;
}

// surface.3. How often a place is covered is the winding number of all triangles about it, and
// sides shared by neighbours cancel in that sum: it depends on the rim alone. So wherever two
// triangles overlap, some triangle at the rim overlaps another, and only those need be tried.
void check_overlap(const Surface& linked, Faults& faults) {
  const Locator locator(linked);
  for (std::size_t i = 0; i < linked.triangles.size(); ++i) {
    const auto t = static_cast<Index>(i);
    if (!at_rim(linked, t)) continue;
    const auto one = linked.corners(t);
    const auto [left, right] = std::minmax({one[0].x, one[1].x, one[2].x});
    const auto [bottom, top] = std::minmax({one[0].y, one[1].y, one[2].y});
    for (const Index other : locator.triangles_in({left, bottom}, {right, top})) {
      const bool told = other < t && at_rim(linked, other);
      if (other == t || told) continue;
      const auto two = linked.corners(other);
      if (!apart(one, two) && !apart(two, one)) faults.push_back({Kind::Overlap, t, other});
    }
  }
}

std::string in_words(const SurfaceFault& fault) {
  const std::string triangle = "triangle " + std::to_string(fault.triangle);
  switch (fault.kind) {
    case Kind::NotFinite:
      return "vertex " + std::to_string(fault.other) + " has a coordinate that is not finite";
    case Kind::OutOfRange:
      return triangle + " names a vertex that does not exist";
    case Kind::Clockwise:
      return triangle + " runs clockwise";
    case Kind::NoArea:
      return triangle + " has no area in plan";
    case Kind::Overlap:
      return triangle + " overlaps triangle " + std::to_string(fault.other);
    case Kind::Neighbours:
      break;
  }
  return fault.triangle == kNone ? "not every triangle has its neighbours"
                                 : triangle + " does not name the neighbours it has";
}

}  // namespace

std::vector<SurfaceFault> find_faults(const Surface& surface) {
  Faults faults = check_arrays(surface);
  if (!faults.empty()) return faults;
  Surface linked{surface.vertices, surface.triangles, {}};
  link_neighbours(linked);
  check_turning(surface, faults);
  const bool turned = !faults.empty();
  check_neighbours(surface, linked, faults);
  if (!turned) check_overlap(linked, faults);
  return faults;
}

std::vector<std::string> verify(const Surface& surface) {
  std::vector<std::string> words;
  for (const SurfaceFault& fault : find_faults(surface)) words.push_back(in_words(fault));
  return words;
}

}  // namespace squaredig::geometry
