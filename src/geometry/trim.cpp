// What is left of a triangulation, and in which order: no foreign library needed.
#include <algorithm>
#include <cmath>

#include "geometry/mesh_internal.h"

namespace squaredig::geometry {
namespace {

std::size_t at(Index i) { return static_cast<std::size_t>(i); }

// Sides of polygons filed by slabs of y, so that a point meets only those at its height.
class InsideTest {
 public:
  explicit InsideTest(const std::vector<Polygon>& polygons) {
    std::size_t sides = 0;
    double high = -HUGE_VAL;
    low_ = HUGE_VAL;
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
        if ((s->a.y > p.y) != (s->b.y > p.y) && left_of_upward(*s, p)) inside = !inside;
      if (inside) return true;
    }
    return false;
  }

 private:
  struct Side {
    Point2 a, b;
    std::size_t polygon;
  };
  static bool left_of_upward(const Side& s, Point2 p) {
    return s.a.y < s.b.y ? orient(s.a, s.b, p) > 0 : orient(s.b, s.a, p) > 0;
  }
  std::size_t slab(double y) const {
    const double n = std::floor((y - low_) / height_);
    return static_cast<std::size_t>(std::clamp(n, 0.0, static_cast<double>(slabs_.size() - 1)));
  }
  void file(const Side& s) {
    const std::size_t last = slab(std::max(s.a.y, s.b.y));
    for (std::size_t n = slab(std::min(s.a.y, s.b.y)); n <= last; ++n) slabs_[n].push_back(s);
  }

  double low_ = 0, height_ = 1;
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
  const InsideTest inside(keep);
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
    const auto& c = mesh.triangles[t];
    const Point2 a = vertices[at(c[0])].plan(), b = vertices[at(c[1])].plan(),
                 d = vertices[at(c[2])].plan();
    const bool flat = !(orient(a, b, d) > 0 && orient(b, d, a) > 0 && orient(d, a, b) > 0);
    const Point2 middle = a + (1.0 / 3) * ((b - a) + (d - a));
    if (flat || (!keep.empty() && !inside(middle))) take_out(mesh, static_cast<Index>(t));
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

namespace {

// Rotates so that the lowest vertex comes first; the neighbours turn with the sides.
void lowest_first(std::array<Index, 3>& triangle, std::array<Index, 3>& neighbours) {
  const auto k = std::min_element(triangle.begin(), triangle.end()) - triangle.begin();
  std::rotate(triangle.begin(), triangle.begin() + k, triangle.end());
  std::rotate(neighbours.begin(), neighbours.begin() + k, neighbours.end());
}

// New number of each old vertex: those used, in the old order.
std::vector<Index> used_vertices(const RawMesh& mesh, std::size_t count) {
  std::vector<Index> now(count, kNone);
  for (const auto& t : mesh.triangles)
    if (t[0] != kNone)
      for (const Index v : t) now[at(v)] = 0;
  Index next = 0;
  for (Index& n : now)
    if (n != kNone) n = next++;
  return now;
}

// The triangles that are left, ascending. A count by first vertex places them within a few.
std::vector<Index> order_of(const RawMesh& mesh, std::size_t vertex_count) {
  const auto lowest = [&](Index t) {
    const auto& c = mesh.triangles[at(t)];
    return std::min({c[0], c[1], c[2]});
  };
  const auto rest = [&](Index t) {
    std::array<Index, 3> c = mesh.triangles[at(t)], n{};
    lowest_first(c, n);
    return std::pair(c[1], c[2]);
  };
  std::vector<std::size_t> start(vertex_count + 1, 0);
  std::size_t left = 0;
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t)
    if (!is_out(mesh, static_cast<Index>(t)))
      ++start[at(lowest(static_cast<Index>(t))) + 1], ++left;
  for (std::size_t v = 1; v < start.size(); ++v) start[v] += start[v - 1];
  std::vector<Index> order(left);
  std::vector<std::size_t> next(start.begin(), start.end() - 1);
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t)
    if (!is_out(mesh, static_cast<Index>(t)))
      order[next[at(lowest(static_cast<Index>(t)))]++] = static_cast<Index>(t);
  for (std::size_t v = 0; v + 1 < start.size(); ++v)
    std::sort(order.begin() + static_cast<std::ptrdiff_t>(start[v]),
              order.begin() + static_cast<std::ptrdiff_t>(start[v + 1]),
              [&](Index t, Index u) { return rest(t) < rest(u); });
  return order;
}

}  // namespace

void fill_surface(const RawMesh& mesh, Placed& placed, Triangulated& out) {
  const std::vector<Index> vertex_now = used_vertices(mesh, placed.vertices.size());
  const std::vector<Index> order = order_of(mesh, placed.vertices.size());
  for (std::size_t v = 0; v < vertex_now.size(); ++v) {
    if (vertex_now[v] == kNone) continue;
    out.surface.vertices.push_back(placed.vertices[v]);
    out.source.push_back(placed.source[v]);
  }
  std::vector<Index> triangle_now(mesh.triangles.size(), kNone);
  for (std::size_t i = 0; i < order.size(); ++i) triangle_now[at(order[i])] = static_cast<Index>(i);
  out.surface.triangles.reserve(order.size());
  out.surface.neighbours.reserve(order.size());
  for (const Index t : order) {
    std::array<Index, 3> c = mesh.triangles[at(t)], n = mesh.neighbours[at(t)];
    lowest_first(c, n);
    for (Index& v : c) v = vertex_now[at(v)];
    for (Index& u : n)
      if (u != kNone) u = triangle_now[at(u)];
    out.surface.triangles.push_back(c);
    out.surface.neighbours.push_back(n);
  }
}

}  // namespace squaredig::geometry
