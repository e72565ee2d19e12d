#include "ground/part.h"

namespace squaredig::ground {
namespace {

template <class Value>
std::vector<Value> picked(const std::vector<Value>& all,
                          const std::vector<geometry::Index>& vertices) {
  std::vector<Value> some;
  if (all.empty()) return some;
  some.reserve(vertices.size());
  for (const auto v : vertices) some.push_back(all[static_cast<std::size_t>(v)]);
  return some;
}

}  // namespace

GroundSurface part_of(const GroundSurface& ground, std::span<const geometry::Point2> seeds,
                      const Region& region) {
  auto patch = geometry::patch_of(
      ground.surface, seeds, {ground.frame.to_site(region.low), ground.frame.to_site(region.high)});
  GroundSurface part;
  part.frame = ground.frame;
  part.source = picked(ground.source, patch.vertices);
  part.sigma_height = picked(ground.sigma_height, patch.vertices);
  part.sigma_plan = picked(ground.sigma_plan, patch.vertices);
  part.sigma_common = ground.sigma_common;
  part.surface = std::move(patch.surface);
  return part;
}

}  // namespace squaredig::ground
