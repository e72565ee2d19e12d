#include "ground/examine.h"

#include <algorithm>

#include "ground/findings_internal.h"

namespace squaredig::ground {
namespace {

SurfaceMesh mesh_of(const GroundSurface& ground) {
  SurfaceMesh mesh;
  mesh.name = "existing ground";
  mesh.vertices.reserve(ground.surface.vertices.size());
  for (const geometry::Point3& v : ground.surface.vertices)
    mesh.vertices.push_back(ground.frame.to_grid(v));
  mesh.faces = ground.surface.triangles;
  return mesh;
}

}  // namespace

GroundResult examine(const GroundInput& input, const BuiltGround& built) {
  const Rows rows(input);
  GroundResult result;
  const geometry::Surface& surface = built.ground.surface;
  result.points = surface.vertices.size();
  result.triangles = surface.triangles.size();
  result.plan_area = Area::square_metres(geometry::plan_area(surface));
  result.surface_area = Area::square_metres(geometry::surface_area(surface));
  const auto [lowest, highest] = std::minmax_element(
      surface.vertices.begin(), surface.vertices.end(),
      [](const geometry::Point3& a, const geometry::Point3& b) { return a.z < b.z; });
  result.lowest = built.ground.frame.to_grid_height(lowest->z);
  result.highest = built.ground.frame.to_grid_height(highest->z);
  result.head.inputs = rows_used(rows, input, built);
  result.head.cautions = built.cautions;
  find_doubled(rows, built, result);
  find_near(rows, built, result);
  find_spikes(rows, input, built, result);
  find_crossings(rows, built, result);
  add_contours(built, result);
  result.surface = mesh_of(built.ground);
  result.breaklines = input.breaklines;
  return result;
}

}  // namespace squaredig::ground
