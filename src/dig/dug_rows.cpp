#include <algorithm>
#include <cmath>

#include "dig/dig_internal.h"
#include "geometry/polygon.h"

namespace squaredig::dig {

using geometry::Point2;

DugRows::DugRows(const design::Excavation& pit) : pit_(pit) {
  std::vector<Side> sides;
  low_ = HUGE_VAL, high_ = -HUGE_VAL;
  for (const auto& ring : pit.dug.rings)
    for (std::size_t i = 0; i < ring.corners.size(); ++i) {
      sides.push_back({ring.corners[i].plan(), ring.corners[(i + 1) % ring.corners.size()].plan()});
      low_ = std::min(low_, sides.back().from.y);
      high_ = std::max(high_, sides.back().from.y);
    }
  rows_.resize(sides.size() + 1);
  height_ = std::max((high_ - low_) / static_cast<double>(rows_.size()), 1e-6);
  for (const Side& side : sides) {
    const auto [south, north] = std::minmax(side.from.y, side.to.y);
    for (std::size_t row = row_of(south); row <= row_of(north); ++row) rows_[row].push_back(side);
  }
}

std::size_t DugRows::row_of(double y) const {
  return std::min(static_cast<std::size_t>((y - low_) / height_), rows_.size() - 1);
}

bool DugRows::dug_at(GridPoint p) const {
  const Point2 q = pit_.frame.to_site(p);
  if (!(q.y >= low_ && q.y <= high_)) return false;
  bool inside = false;
  for (const auto& [a, b] : rows_[row_of(q.y)])
    if (geometry::ray_crosses(q, a, b)) inside = !inside;
  return inside;
}

}  // namespace squaredig::dig
