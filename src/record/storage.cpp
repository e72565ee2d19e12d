#include "record/storage.h"

#include <algorithm>
#include <cmath>

#include "geometry/slab.h"
#include "geometry/sum.h"

namespace squaredig::record {
namespace {

using geometry::Plane;

class Reservoir {
 public:
  explicit Reservoir(const StorageInput& input)
      : frame_(geometry::SiteFrame::around({input.tank.corners[0], input.underside.level})),
        underside_(design::plane_in(frame_, input.underside)),
        top_(design::plane_in(frame_, input.underside.lowered(-input.tank.height))),
        parts_(design::footprint_parts(input.tank, frame_, Length{}, Place{"job.toml", 1, 1})) {}

  Volume below(Elevation level) const {
    const Plane water{parts_[0][0], frame_.to_site(level), 0, 0};
    geometry::Sum sum;
    for (const auto& part : parts_)
      sum.add(
          geometry::slab_between(part, std::vector{underside_}, std::vector{top_, water}).volume);
    return Volume::cubic_metres(sum.value());
  }

  Volume whole() const {
    geometry::Sum sum;
    for (const auto& part : parts_)
      sum.add(geometry::slab_between(part, std::vector{underside_}, std::vector{top_}).volume);
    return Volume::cubic_metres(sum.value());
  }

 private:
  geometry::SiteFrame frame_;
  Plane underside_, top_;
  std::vector<geometry::Polygon> parts_;
};

std::optional<Volume> net(Volume gross, std::optional<Ratio> voids) {
  return voids ? std::optional(gross * voids->value()) : std::nullopt;
}

// Every 0.1 m, with the lowest point, the highest and the outlet among them.
std::vector<Elevation> levels_of(const StorageInput& input) {
  Elevation low = input.underside.at(input.tank.corners[0]), high = low;
  for (const GridPoint p : input.tank.corners) {
    low = std::min(low, input.underside.at(p));
    high = std::max(high, input.underside.at(p) + input.tank.height);
  }
  std::vector<Elevation> levels{low, high};
  const auto first = std::lround(std::ceil(low.in_metres() * 10 + 1e-6));
  const auto level = [](auto tenth) { return Elevation::metres(static_cast<double>(tenth) / 10); };
  for (auto tenth = first; level(tenth).in_metres() < high.in_metres() - 1e-7; ++tenth)
    levels.push_back(level(tenth));
  if (input.outlet && *input.outlet > low && *input.outlet < high) levels.push_back(*input.outlet);
  std::sort(levels.begin(), levels.end());
  levels.erase(std::unique(levels.begin(), levels.end()), levels.end());
  return levels;
}

}  // namespace

Storage storage_of(const StorageInput& input) {
  const Reservoir reservoir(input);
  Storage storage;
  storage.gross = reservoir.whole();
  storage.net = net(storage.gross, input.voids);
  storage.voids = input.voids;
  storage.stands_on = input.stands_on;
  storage.outlet = input.outlet;
  if (input.outlet) {
    const Volume below = reservoir.below(*input.outlet);
    storage.below_outlet = net(below, input.voids).value_or(below);
  }
  const auto levels = levels_of(input);
  storage.lowest = levels.front();
  storage.highest = levels.back();
  for (const Elevation level : levels) {
    const Volume gross = reservoir.below(level);
    storage.table.push_back({level, gross, net(gross, input.voids)});
  }
  return storage;
}

}  // namespace squaredig::record
