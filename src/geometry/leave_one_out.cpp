#include "geometry/leave_one_out.h"

#include <cmath>

#include "geometry/triangulate.h"

namespace squaredig::geometry {
namespace {

std::size_t at(Index i) { return static_cast<std::size_t>(i); }

std::size_t corner_of(const Surface& surface, Index triangle, Index vertex) {
  const auto& t = surface.triangles[at(triangle)];
  return t[0] == vertex ? 0 : t[1] == vertex ? 1 : 2;
}

// The far corners of the vertex's triangles, anticlockwise; empty on the rim.
std::vector<Point3> ring_round(const Surface& surface, Index vertex, Index first) {
  std::vector<Point3> ring;
  Index t = first;
  do {
    const std::size_t i = corner_of(surface, t, vertex);
    ring.push_back(surface.vertices[at(surface.triangles[at(t)][(i + 1) % 3])]);
    t = surface.neighbours[at(t)][(i + 2) % 3];  // across the edge that ends in the vertex
  } while (t != kNone && t != first);
  if (t == kNone) return {};
  return ring;
}

TriangulationInput closed(const std::vector<Point3>& ring) {
  TriangulationInput input;
  input.points = ring;
  Constraint outline{{}, 0, StringKind::Outline};
  for (std::size_t i = 0; i <= ring.size(); ++i)
    outline.vertices.push_back(static_cast<Index>(i % ring.size()));
  input.constraints.push_back(std::move(outline));
  return input;
}

std::optional<double> height_in(const Surface& patch, Point2 p) {
  std::optional<double> height;
  double best = -1e-9;
  for (Index t = 0; t < static_cast<Index>(patch.triangles.size()); ++t) {
    const auto c = patch.corners(t);
    double inside = HUGE_VAL;
    for (std::size_t i = 0; i < 3; ++i) {
      const Point2 a = c[i].plan(), u = c[(i + 1) % 3].plan() - a;
      inside = std::min(inside, cross(u, p - a) / std::hypot(u.x, u.y));
    }
    if (inside > best) best = inside, height = patch.plane(t).at(p);
  }
  return height;
}

}  // namespace

std::vector<std::optional<double>> heights_without(const Surface& surface,
                                                   std::span<const Index> vertices) {
  std::vector<Index> some_triangle(surface.vertices.size(), kNone);
  for (std::size_t t = 0; t < surface.triangles.size(); ++t)
    for (const Index v : surface.triangles[t]) some_triangle[at(v)] = static_cast<Index>(t);
  std::vector<std::optional<double>> heights;
  heights.reserve(vertices.size());
  for (const Index v : vertices) {
    heights.emplace_back();
    if (some_triangle[at(v)] == kNone) continue;
    const auto ring = ring_round(surface, v, some_triangle[at(v)]);
    if (ring.size() < 3) continue;
    heights.back() = height_in(triangulate(closed(ring)).surface, surface.vertices[at(v)].plan());
  }
  return heights;
}

}  // namespace squaredig::geometry
