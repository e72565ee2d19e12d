// A ready surface as the ground: checked face by face.
#pragma once

#include "ground/build_ground.h"

namespace squaredig::ground {

BuiltGround from_ready_surface(const SurfaceMesh& mesh, const geometry::SiteFrame& frame);

// Throws when there is anything to refuse; beyond `kMostProblems` only their number is told.
constexpr std::size_t kMostProblems = 200;
void refuse_all(std::vector<Problem> problems);

}  // namespace squaredig::ground
