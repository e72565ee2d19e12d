#include <algorithm>

#include "ground/ready_surface_internal.h"

namespace squaredig::ground {
namespace {

using geometry::Index;
using geometry::SurfaceFault;

std::string face_name(std::size_t face) { return "face " + std::to_string(face + 1); }

class Reader {
 public:
  Reader(const SurfaceMesh& mesh, const geometry::SiteFrame& frame) : mesh_(mesh) {
    built_.ground.frame = frame;
    for (const GridPosition& v : mesh.vertices)
      built_.ground.surface.vertices.push_back(frame.to_site(v));
  }

  BuiltGround run() {
    take_faces();
    refuse_all(std::move(problems_));
    geometry::link_neighbours(built_.ground.surface);
    for (const SurfaceFault& fault : geometry::find_faults(built_.ground.surface)) tell(fault);
    refuse_all(std::move(problems_));
    if (built_.ground.surface.triangles.empty())
      refuse(place(), "a surface without a face that has area in plan", "at least one triangle",
             "export the surface with its faces");
    const std::size_t count = built_.ground.surface.vertices.size();
    built_.ground.source.assign(count, geometry::kNone);
    built_.row.assign(count, geometry::kNone);
    return std::move(built_);
  }

 private:
  Place place() const { return {mesh_.file.empty() ? mesh_.name : mesh_.file, 1, 1}; }

  void fault(std::string found, std::string needed) {
    problems_.push_back({ProblemKind::Input, place(), std::move(found), std::move(needed),
                         "correct the surface " + quoted(mesh_.name) + " and export it again"});
  }

  // Faces may run either way round; one without area in plan, such as a vertical face or a sliver
  // of points on one line, takes no part.
  void take_faces() {
    geometry::Surface& surface = built_.ground.surface;
    const auto count = static_cast<Index>(surface.vertices.size());
    std::vector<std::size_t> flat;
    for (std::size_t f = 0; f < mesh_.faces.size(); ++f) {
      std::array<Index, 3> c = mesh_.faces[f];
      if (*std::min_element(c.begin(), c.end()) < 0 ||
          *std::max_element(c.begin(), c.end()) >= count) {
        fault(face_name(f) + " names a point that does not exist", "faces between its own points");
        continue;
      }
      const auto corner = [&](std::size_t i) {
        return surface.vertices[static_cast<std::size_t>(c[i])].plan();
      };
      const auto twice_area = geometry::orient(corner(0), corner(1), corner(2));
      if (twice_area < 0) std::swap(c[1], c[2]);
      if (twice_area == 0) {
        flat.push_back(f);
        continue;
      }
      surface.triangles.push_back(c);
      face_.push_back(f);
    }
    if (!flat.empty())
      built_.cautions.push_back(place().file + ": " + std::to_string(flat.size()) + " of " +
                                std::to_string(mesh_.faces.size()) +
                                " faces have no area in plan and are left out, first " +
                                face_name(flat.front()));
  }

  void tell(const SurfaceFault& fault_found) {
    const auto face = [&](Index t) { return face_name(face_[static_cast<std::size_t>(t)]); };
    switch (fault_found.kind) {
      case SurfaceFault::Kind::NotFinite:
        return fault("point " + std::to_string(fault_found.other + 1) + " has no finite position",
                     "a position for each point");
      case SurfaceFault::Kind::Overlap:
        return fault(
            face(fault_found.triangle) + " overlaps " + face(fault_found.other) + " in plan",
            "one height at each place");
      default:
        return fault(face(fault_found.triangle) + " is no triangle in plan",
                     "faces with area in plan");
    }
  }

  const SurfaceMesh& mesh_;
  BuiltGround built_;
  std::vector<std::size_t> face_;  // of each triangle: the face of the file
  std::vector<Problem> problems_;
};

}  // namespace

void refuse_all(std::vector<Problem> problems) {
  if (problems.empty()) return;
  if (problems.size() > kMostProblems) {
    const std::size_t more = problems.size() - kMostProblems;
    problems.resize(kMostProblems);
    problems.push_back({ProblemKind::Input, problems.back().place,
                        std::to_string(more) + " more faults like these", "none",
                        "correct those above first"});
  }
  throw Refusal(std::move(problems));
}

BuiltGround from_ready_surface(const SurfaceMesh& mesh, const geometry::SiteFrame& frame) {
  return Reader(mesh, frame).run();
}

}  // namespace squaredig::ground
