#include "geometry/triangulate.h"

#include <CGAL/Constrained_Delaunay_triangulation_2.h>
#include <CGAL/Delaunay_triangulation_2.h>
#include <CGAL/Exact_predicates_inexact_constructions_kernel.h>
#include <CGAL/Triangulation_face_base_with_info_2.h>
#include <CGAL/Triangulation_vertex_base_with_info_2.h>
#include <CGAL/property_map.h>
#include <CGAL/spatial_sort.h>

#include <algorithm>

#include "geometry/mesh_internal.h"

namespace squaredig::geometry {
namespace {

using Kernel = CGAL::Exact_predicates_inexact_constructions_kernel;
using VertexBase = CGAL::Triangulation_vertex_base_with_info_2<Index, Kernel>;
using FaceInfo = CGAL::Triangulation_face_base_with_info_2<Index, Kernel>;
using Plain =
    CGAL::Delaunay_triangulation_2<Kernel,
                                   CGAL::Triangulation_data_structure_2<VertexBase, FaceInfo>>;
using ConstrainedFace = CGAL::Constrained_triangulation_face_base_2<Kernel, FaceInfo>;
// Pieces do not cross any more: one that did would throw, never pass unseen.
using Constrained = CGAL::Constrained_Delaunay_triangulation_2<
    Kernel, CGAL::Triangulation_data_structure_2<VertexBase, ConstrainedFace>,
    CGAL::No_constraint_intersection_requiring_constructions_tag>;

using Numbered = std::pair<Kernel::Point_2, Index>;

std::vector<Numbered> spatially_sorted(const std::vector<Point3>& vertices) {
  std::vector<Numbered> out;
  out.reserve(vertices.size());
  for (const Point3& v : vertices)
    out.emplace_back(Kernel::Point_2(v.x, v.y), static_cast<Index>(out.size()));
  using Map = CGAL::First_of_pair_property_map<Numbered>;
  CGAL::spatial_sort(out.begin(), out.end(), CGAL::Spatial_sort_traits_adapter_2<Kernel, Map>());
  return out;
}

template <class Triangulation, class Use>
void insert_points(Triangulation& t, const std::vector<Point3>& vertices, Use use) {
  typename Triangulation::Face_handle hint;
  for (const auto& [point, number] : spatially_sorted(vertices)) {
    const auto vertex = t.insert(point, hint);
    vertex->info() = number;
    hint = vertex->face();
    use(number, vertex);
  }
}

template <class Triangulation>
RawMesh copy_out(Triangulation& t) {
  RawMesh out;
  if (t.dimension() < 2) return out;
  out.triangles.reserve(t.number_of_faces());
  out.neighbours.reserve(t.number_of_faces());
  for (const auto f : t.all_face_handles()) f->info() = kNone;
  Index number = 0;
  for (const auto f : t.finite_face_handles()) f->info() = number++;
  for (const auto f : t.finite_face_handles()) {
    out.triangles.push_back({f->vertex(0)->info(), f->vertex(1)->info(), f->vertex(2)->info()});
    // There a side is numbered by the vertex across it, here by the vertex it starts from.
    out.neighbours.push_back(
        {f->neighbor(2)->info(), f->neighbor(0)->info(), f->neighbor(1)->info()});
  }
  return out;
}

// Walks along the piece from vertex to vertex that lies on it and notes each edge.
void note_outline(const Constrained& t, Constrained::Vertex_handle from,
                  Constrained::Vertex_handle to, RawMesh& out) {
  while (from != to) {
    auto next = t.incident_vertices(from);
    // Numbers rise along the piece, so a vertex on its line and not beyond its end is ahead.
    const auto ahead = [&](Constrained::Vertex_handle v) {
      return v == to || (v->info() > from->info() && v->info() < to->info() &&
                         CGAL::collinear(from->point(), to->point(), v->point()));
    };
    while (t.is_infinite(next) || !ahead(next)) ++next;
    out.outline.emplace_back(from->info(), next->info());
    from = next;
  }
}

}  // namespace

RawMesh constrained_delaunay(const Placed& placed, const std::vector<Piece>& pieces) {
  if (pieces.empty()) {
    Plain t;
    insert_points(t, placed.vertices, [](Index, Plain::Vertex_handle) {});
    return copy_out(t);
  }
  Constrained t;
  std::vector<Constrained::Vertex_handle> handles(placed.vertices.size());
  insert_points(t, placed.vertices, [&](Index number, Constrained::Vertex_handle v) {
    handles[static_cast<std::size_t>(number)] = v;
  });
  if (t.dimension() < 2) return {};
  const auto handle = [&](Index v) { return handles[static_cast<std::size_t>(v)]; };
  for (const Piece& p : pieces) t.insert_constraint(handle(p.a), handle(p.b));
  RawMesh out = copy_out(t);
  for (const Piece& p : pieces)
    if (p.kind == StringKind::Outline) note_outline(t, handle(p.a), handle(p.b), out);
  std::sort(out.outline.begin(), out.outline.end());
  return out;
}

Triangulated triangulate(const TriangulationInput& input) {
  Triangulated out;
  Placed placed = place_in_order(input);
  CutStrings strings = cut_strings(input, placed);
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
