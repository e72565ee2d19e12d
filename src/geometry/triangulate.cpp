#include "geometry/triangulate.h"

#include <CGAL/Constrained_Delaunay_triangulation_2.h>
#include <CGAL/Delaunay_triangulation_2.h>
#include <CGAL/Exact_predicates_inexact_constructions_kernel.h>
#include <CGAL/Triangulation_face_base_with_info_2.h>
#include <CGAL/Triangulation_vertex_base_with_info_2.h>
#include <malloc.h>

#include <algorithm>

#include "geometry/mesh_internal.h"
#include "geometry/space_order_internal.h"

namespace squaredig::geometry {
namespace {

using Kernel = CGAL::Exact_predicates_inexact_constructions_kernel;
using Vertex = CGAL::Triangulation_vertex_base_with_info_2<Index, Kernel>;
using Face = CGAL::Constrained_triangulation_face_base_2<
    Kernel, CGAL::Triangulation_face_base_with_info_2<Index, Kernel>>;
using Data = CGAL::Triangulation_data_structure_2<Vertex, Face>;
using Plain = CGAL::Delaunay_triangulation_2<Kernel, Data>;
// Pieces do not cross any more: one that did would throw, never pass unseen.
using Constrained = CGAL::Constrained_Delaunay_triangulation_2<
    Kernel, Data, CGAL::No_constraint_intersection_requiring_constructions_tag>;
using Handle = Data::Vertex_handle;

void insert_points(Plain& t, const std::vector<Point3>& vertices) {
  // Many are gathered first: fetching each just before it is inserted would wait for memory every
  // time.
  constexpr std::size_t kGathered = 65536;
  std::vector<std::pair<Kernel::Point_2, Index>> points;
  points.reserve(std::min(vertices.size(), kGathered));
  Plain::Face_handle hint;
  const auto insert_gathered = [&] {
    for (const auto& [point, number] : points) {
      const auto vertex = t.insert(point, hint);
      vertex->info() = number;
      hint = vertex->face();
    }
    points.clear();
  };
  for (const Index number : hilbert_order(vertices)) {
    const Point3& v = vertices[static_cast<std::size_t>(number)];
    points.emplace_back(Kernel::Point_2(v.x, v.y), number);
    if (points.size() == kGathered) insert_gathered();
  }
  insert_gathered();
}

bool is_flat(Data::Face_handle f) {
  const auto corner = [&](int i) {
    return Point2{f->vertex(i)->point().x(), f->vertex(i)->point().y()};
  };
  return !(orient(corner(0), corner(1), corner(2)) > 0 &&
           orient(corner(1), corner(2), corner(0)) > 0 &&
           orient(corner(2), corner(0), corner(1)) > 0);
}

// The last that is asked of the triangulation: here the memory in use is at its highest, so the
// vertices, which neighbours do not need, are given back between. They lie in many small blocks,
// which the allocator would keep for more of the kind.
template <class Triangulation>
void move_out(Triangulation& t, RawMesh& out) {
  out.triangles.reserve(t.number_of_faces());
  for (const auto f : t.all_face_handles()) f->info() = kNone;
  Index number = 0;
  for (const auto f : t.finite_face_handles()) f->info() = number++;
  for (const auto f : t.finite_face_handles()) {
    if (is_flat(f)) out.flat.push_back(f->info());
    out.triangles.push_back({f->vertex(0)->info(), f->vertex(1)->info(), f->vertex(2)->info()});
  }
  t.tds().vertices().clear();
  ::malloc_trim(0);
  out.neighbours.reserve(out.triangles.size());
  for (const auto f : t.all_face_handles())
    // There a side is numbered by the vertex across it, here by the vertex it starts from.
    if (f->info() != kNone)
      out.neighbours.push_back(
          {f->neighbor(2)->info(), f->neighbor(0)->info(), f->neighbor(1)->info()});
}

// Walks along the piece from vertex to vertex that lies on it and notes each edge.
void note_outline(const Constrained& t, Handle from, Handle to, RawMesh& out) {
  while (from != to) {
    auto next = t.incident_vertices(from);
    // Numbers rise along the piece, so a vertex on its line and not beyond its end is ahead.
    const auto ahead = [&](Handle v) {
      return v == to || (v->info() > from->info() && v->info() < to->info() &&
                         CGAL::collinear(from->point(), to->point(), v->point()));
    };
    while (t.is_infinite(next) || !ahead(next)) ++next;
    out.outline.emplace_back(from->info(), next->info());
    from = next;
  }
}

// Puts the pieces in and notes the edges on outlines.
void insert_pieces(Constrained& t, std::size_t vertex_count, const std::vector<StringPiece>& pieces,
                   RawMesh& out) {
  std::vector<Handle> handles(vertex_count);
  for (const Handle v : t.finite_vertex_handles()) handles[static_cast<std::size_t>(v->info())] = v;
  const auto handle = [&](Index v) { return handles[static_cast<std::size_t>(v)]; };
  for (const StringPiece& p : pieces) t.insert_constraint(handle(p.a), handle(p.b));
  for (const StringPiece& p : pieces)
    if (p.kind == StringKind::Outline) note_outline(t, handle(p.a), handle(p.b), out);
  std::sort(out.outline.begin(), out.outline.end());
}

}  // namespace

RawMesh constrained_delaunay(const Placed& placed, const std::vector<StringPiece>& pieces) {
  RawMesh out;
  Plain points;
  insert_points(points, placed.vertices);
  if (points.dimension() < 2) return out;
  if (pieces.empty()) {
    move_out(points, out);
    return out;
  }
  // Points go in faster without an eye on constraints; without any, both triangulations are one.
  Constrained t;
  t.tds().swap(points.tds());
  t.set_infinite_vertex(points.infinite_vertex());
  insert_pieces(t, placed.vertices.size(), pieces, out);
  move_out(t, out);
  return out;
}

Triangulated triangulate(TriangulationInput input) {
  Triangulated out;
  Placed placed = place_in_order(input);
  CutStrings strings = cut_strings(input, placed);
  input.points = std::vector<Point3>();
  placed.vertex_of = std::vector<Index>();
  RawMesh mesh = constrained_delaunay(placed, strings.pieces);
  leave_out(mesh, placed.vertices, input.keep);
  if (input.longest_edge > 0)
    out.rim_triangles_removed = leave_out_rim(mesh, placed.vertices, input.longest_edge);
  fill_surface(mesh, placed, out);
  out.doubled = std::move(placed.doubled);
  out.crossings = std::move(strings.crossings);
  out.touches = std::move(strings.touches);
  return out;
}

}  // namespace squaredig::geometry
