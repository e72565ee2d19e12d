#include "design/footprint.h"

#include "design/cut_builder_internal.h"
#include "geometry/slab.h"

namespace squaredig::design {

SideRing tank_ring(const Tank& tank, const geometry::SiteFrame& frame) {
  const std::size_t n = tank.sides();
  SideRing ring;
  for (std::size_t i = n; i-- > 0;) {
    ring.corners.push_back(frame.to_site(tank.corners[i]));
    ring.side.push_back((i + n - 1) % n);
  }
  return ring;
}

geometry::Plane plane_in(const geometry::SiteFrame& frame, const LevelPlane& plane) {
  const double down = plane.fall.drop_per_run();
  return {frame.to_site(plane.about), frame.to_site(plane.level),
          -down * sine(plane.downhill.from_north()), -down * cosine(plane.downhill.from_north())};
}

namespace {

// Adds what the parts leave of a ring: rings that cover a re-entrant outline overlap.
void add_apart(const geometry::Polygon& ring, std::vector<geometry::Polygon>& parts) {
  std::vector<geometry::Polygon> rest{ring};
  for (const auto& known : parts) {
    std::vector<geometry::Polygon> next;
    for (const auto& polygon : rest) {
      auto split = geometry::split_at(polygon, known);
      next.insert(next.end(), split.outside.begin(), split.outside.end());
    }
    rest = std::move(next);
  }
  parts.insert(parts.end(), rest.begin(), rest.end());
}

}  // namespace

std::vector<geometry::Polygon> footprint_parts(const Tank& tank, const geometry::SiteFrame& frame,
                                               Length beyond, const Place& place) {
  const auto ring =
      moved_outward(tank_ring(tank, frame), std::vector<double>(tank.sides(), beyond.in_metres()));
  if (!ring)
    refuse(place, "a footprint that crosses itself when widened", "an outline that stays simple",
           "take a smaller width beyond the footprint");
  std::vector<geometry::Polygon> parts;
  for (const auto& convex : covered_by_convex(*ring).rings) add_apart(convex.corners, parts);
  return parts;
}

}  // namespace squaredig::design
