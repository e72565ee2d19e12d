// Which triangles of a triangulation are left: no foreign library needed.
#include <algorithm>
#include <cmath>

#include "geometry/mesh_internal.h"
#include "geometry/polygon.h"

namespace squaredig::geometry {
namespace {

std::size_t at(Index i) { return static_cast<std::size_t>(i); }

// Sides of polygons filed by slabs of y, so that a point meets only those at its height.
class InsideTest {
 public:
  explicit InsideTest(const std::vector<Polygon>& polygons) {
    std::size_t sides = 0;
    double high = -HUGE_VAL;
    for (const Polygon& p : polygons) {
      sides += p.size();
      for (const Point2 v : p) low_ = std::min(low_, v.y), high = std::max(high, v.y);
    }
    slabs_.resize(std::clamp<std::size_t>(sides, 1, 65536));
    height_ = std::max((high - low_) / static_cast<double>(slabs_.size()), 1e-9);
    for (std::size_t n = 0; n < polygons.size(); ++n)
      for (std::size_t i = 0; i < polygons[n].size(); ++i)
        file({polygons[n][i], polygons[n][(i + 1) % polygons[n].size()], n});
  }

  // True when the point lies inside at least one polygon (even-odd within each).
  bool operator()(Point2 p) const {
    const std::vector<Side>& sides = slabs_[slab(p.y)];
    for (auto s = sides.begin(); s != sides.end();) {
      bool inside = false;
      const std::size_t polygon = s->polygon;
      for (; s != sides.end() && s->polygon == polygon; ++s)
        if (ray_crosses(p, s->a, s->b)) inside = !inside;
      if (inside) return true;
    }
    return false;
  }

 private:
  struct Side {
    Point2 a, b;
    std::size_t polygon;
  };
  std::size_t slab(double y) const {
    const double n = std::floor((y - low_) / height_);
    return static_cast<std::size_t>(std::clamp(n, 0.0, static_cast<double>(slabs_.size() - 1)));
  }
  void file(const Side& s) {
    const std::size_t last = slab(std::max(s.a.y, s.b.y));
    for (std::size_t n = slab(std::min(s.a.y, s.b.y)); n <= last; ++n) slabs_[n].push_back(s);
  }

  double low_ = HUGE_VAL, height_ = 1;
  std::vector<std::vector<Side>> slabs_;
};

// A triangle that is out keeps its place with kNone for its first vertex until the end.
bool is_out(const RawMesh& mesh, Index t) { return mesh.triangles[at(t)][0] == kNone; }

void take_out(RawMesh& mesh, Index t) {
  for (const Index n : mesh.neighbours[at(t)]) {
    if (n == kNone) continue;
    for (Index& back : mesh.neighbours[at(n)])
      if (back == t) back = kNone;
  }
  mesh.triangles[at(t)][0] = kNone;
}

}  // namespace

void leave_out(RawMesh& mesh, const std::vector<Point3>& vertices,
               const std::vector<Polygon>& keep) {
  for (const Index t : mesh.flat) take_out(mesh, t);
  if (keep.empty()) return;
  const InsideTest inside(keep);
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
    if (is_out(mesh, static_cast<Index>(t))) continue;
    const auto& c = mesh.triangles[t];
    const Point2 a = vertices[at(c[0])].plan(), b = vertices[at(c[1])].plan(),
                 d = vertices[at(c[2])].plan();
    if (!inside(a + (1.0 / 3) * ((b - a) + (d - a)))) take_out(mesh, static_cast<Index>(t));
  }
}

std::size_t leave_out_rim(RawMesh& mesh, const std::vector<Point3>& vertices, double longest) {
  const auto side = [&](Index t, std::size_t i) {
    const auto& c = mesh.triangles[at(t)];
    return std::pair(c[i], c[(i + 1) % 3]);
  };
  const auto is_long = [&](Index t) {
    for (std::size_t i = 0; i < 3; ++i) {
      const auto [a, b] = side(t, i);
      const Point2 d = vertices[at(b)].plan() - vertices[at(a)].plan();
      if (std::hypot(d.x, d.y) > longest) return true;
    }
    return false;
  };
  const auto on_outline = [&](Index t, std::size_t i) {
    auto [a, b] = side(t, i);
    if (b < a) std::swap(a, b);
    return std::binary_search(mesh.outline.begin(), mesh.outline.end(), std::pair(a, b));
  };
  const auto on_rim = [&](Index t) {
    for (std::size_t i = 0; i < 3; ++i)
      if (mesh.neighbours[at(t)][i] == kNone && !on_outline(t, i)) return true;
    return false;
  };
  std::vector<Index> next;
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t) next.push_back(static_cast<Index>(t));
  std::size_t removed = 0;
  while (!next.empty()) {
    const Index t = next.back();
    next.pop_back();
    if (is_out(mesh, t) || !on_rim(t) || !is_long(t)) continue;
    for (const Index n : mesh.neighbours[at(t)])
      if (n != kNone) next.push_back(n);
    take_out(mesh, t);
    ++removed;
  }
  return removed;
}

}  // namespace squaredig::geometry
