#include "ground/examine.h"

#include <algorithm>
#include <iterator>

#include "ground/findings_internal.h"

namespace squaredig::ground {
namespace {

// Of one kind of search: its findings, to be put behind those of another.
void add(GroundResult& to, GroundResult&& found) {
  const auto append = [](auto& all, auto& some) {
    all.insert(all.end(), std::make_move_iterator(some.begin()),
               std::make_move_iterator(some.end()));
  };
  append(to.head.findings, found.head.findings);
  append(to.found, found.found);
  append(to.suspects, found.suspects);
  append(to.crossings, found.crossings);
}

void measure(const geometry::Surface& surface, GroundResult& result) {
  result.points = surface.vertices.size();
  result.triangles = surface.triangles.size();
  result.plan_area = Area::square_metres(geometry::plan_area(surface));
  result.surface_area = Area::square_metres(geometry::surface_area(surface));
}

void find_extremes(const GroundSurface& ground, GroundResult& result) {
  const auto [lowest, highest] = std::minmax_element(
      ground.surface.vertices.begin(), ground.surface.vertices.end(),
      [](const geometry::Point3& a, const geometry::Point3& b) { return a.z < b.z; });
  result.lowest = ground.frame.to_grid_height(lowest->z);
  result.highest = ground.frame.to_grid_height(highest->z);
}

}  // namespace

GroundResult examine(const GroundInput& input, const BuiltGround& built, const DoAll& together) {
  const Rows rows(input);
  const GroundSurface& ground = built.ground;
  GroundResult result, doubled, near, spikes, crossings;
  // the longest first
  together({[&] { find_spikes(rows, input, built, spikes); },
            [&] {
              find_extremes(ground, result);
              add_contours(built, result);
            },
            [&] { find_near(rows, built, near); },
            [&] {
              find_doubled(rows, built, doubled);
              find_crossings(rows, built, crossings);
              result.head.inputs = rows_used(rows, input, built);
              measure(ground.surface, result);
            }});
  result.head.cautions = built.cautions;
  for (auto* found : {&doubled, &near, &spikes, &crossings}) add(result, std::move(*found));
  if (ground.surface.vertices.size() <= kMostDrawn)
    for (const auto& v : ground.surface.vertices)
      result.positions.push_back(ground.frame.to_grid(v.plan()));
  result.breaklines = input.breaklines;
  return result;
}

SurfaceMesh mesh_of(GroundSurface&& ground) {
  SurfaceMesh mesh;
  mesh.name = "existing ground";
  mesh.vertices.reserve(ground.surface.vertices.size());
  for (const geometry::Point3& v : ground.surface.vertices)
    mesh.vertices.push_back(ground.frame.to_grid(v));
  mesh.faces = std::move(ground.surface.triangles);
  return mesh;
}

}  // namespace squaredig::ground
