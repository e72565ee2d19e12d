// The triangles that are left, brought into their final order. Raw triangles come in an order that
// is near in space, final ones in one that is not: what is read and written at random is kept
// small, as memory that is out of reach of the caches costs more here than all the arithmetic.
#include <algorithm>

#include "geometry/mesh_internal.h"

namespace squaredig::geometry {
namespace {

std::size_t at(Index i) { return static_cast<std::size_t>(i); }

bool is_out(const RawMesh& mesh, std::size_t t) { return mesh.triangles[t][0] == kNone; }

// The place of the lowest vertex.
std::size_t lowest(const std::array<Index, 3>& c) {
  return c[0] < c[1] ? (c[0] < c[2] ? 0 : 2) : (c[1] < c[2] ? 1 : 2);
}

std::array<Index, 3> turned(const std::array<Index, 3>& c, std::size_t first) {
  return {c[first], c[(first + 1) % 3], c[(first + 2) % 3]};
}

// A triangle with its lowest vertex first, and its raw number.
struct Entry {
  std::array<Index, 3> corners;
  Index raw;
};

// All that are left, filed in at most kDrawers drawers by their first vertex.
constexpr std::size_t kDrawers = 2048;

struct Filed {
  std::vector<Entry> entries;
  std::vector<std::size_t> end;  // of each drawer
};

Filed file(const RawMesh& mesh, std::size_t vertex_count) {
  int shift = 0;
  while (vertex_count >> shift > kDrawers) ++shift;
  const auto drawer = [&](const std::array<Index, 3>& c) {
    return at(std::min({c[0], c[1], c[2]}) >> shift);
  };
  Filed out;
  out.end.assign((vertex_count >> shift) + 2, 0);
  for (const auto& c : mesh.triangles)
    if (c[0] != kNone) ++out.end[drawer(c) + 1];
  for (std::size_t d = 1; d < out.end.size(); ++d) out.end[d] += out.end[d - 1];
  out.entries.resize(out.end.back());
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
    if (is_out(mesh, t)) continue;
    const auto& c = mesh.triangles[t];
    out.entries[out.end[drawer(c)]++] = {turned(c, lowest(c)), static_cast<Index>(t)};
  }
  return out;
}

// All that are left in their final order: within a drawer a count by first vertex places them
// within a few.
std::vector<Entry> in_order(const RawMesh& mesh, std::size_t vertex_count) {
  const Filed filed = file(mesh, vertex_count);
  std::vector<Entry> out(filed.entries.size());
  std::vector<std::size_t> end(vertex_count + 1, 0);
  for (const Entry& e : filed.entries) ++end[at(e.corners[0]) + 1];
  for (std::size_t v = 1; v < end.size(); ++v) end[v] += end[v - 1];
  for (const Entry& e : filed.entries) out[end[at(e.corners[0])]++] = e;
  std::size_t start = 0;
  for (std::size_t v = 0; v < vertex_count; ++v) {
    if (end[v] - start > 1)
      std::sort(out.begin() + static_cast<std::ptrdiff_t>(start),
                out.begin() + static_cast<std::ptrdiff_t>(end[v]),
                [](const Entry& a, const Entry& b) { return a.corners < b.corners; });
    start = end[v];
  }
  return out;
}

// Drops the vertices that no triangle uses, and renumbers the triangles' corners.
void keep_used_vertices(Triangulated& out) {
  std::vector<Index> now(out.surface.vertices.size(), kNone);
  for (const auto& c : out.surface.triangles)
    for (const Index v : c) now[at(v)] = 0;
  Index next = 0;
  for (std::size_t v = 0; v < now.size(); ++v) {
    if (now[v] == kNone) continue;
    out.surface.vertices[at(next)] = out.surface.vertices[v];
    out.source[at(next)] = out.source[v];
    now[v] = next++;
  }
  out.surface.vertices.resize(at(next));
  out.source.resize(at(next));
  for (auto& c : out.surface.triangles)
    for (Index& v : c) v = now[at(v)];
}

}  // namespace

void fill_surface(const RawMesh& mesh, Placed& placed, Triangulated& out) {
  std::vector<Entry> entries = in_order(mesh, placed.vertices.size());
  std::vector<Index> now(mesh.triangles.size(), kNone);
  out.surface.triangles.reserve(entries.size());
  for (const Entry& e : entries) {
    now[at(e.raw)] = static_cast<Index>(out.surface.triangles.size());
    out.surface.triangles.push_back(e.corners);
  }
  out.surface.neighbours.resize(entries.size());
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
    if (is_out(mesh, t)) continue;
    std::array<Index, 3> n = turned(mesh.neighbours[t], lowest(mesh.triangles[t]));
    for (Index& u : n)
      if (u != kNone) u = now[at(u)];
    out.surface.neighbours[at(now[t])] = n;
  }
  out.surface.vertices = std::move(placed.vertices);
  out.source = std::move(placed.source);
  // Every vertex of a whole triangulation is used.
  if (entries.empty() || entries.size() < mesh.triangles.size()) keep_used_vertices(out);
}

}  // namespace squaredig::geometry
