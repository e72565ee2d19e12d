// The parts of a net that share no unknown, each with its set-ups, sights and points.
#include <algorithm>
#include <map>
#include <numeric>

#include "field/net_internal.h"

namespace squaredig::field {
namespace {

// Set-ups that share an unknown point have the same root.
class Roots {
 public:
  explicit Roots(const Net& net) : net_(net), owner_(net.setups.size()), met_(net.points.size()) {
    std::iota(owner_.begin(), owner_.end(), std::size_t{0});
    for (std::size_t s = 0; s < net.setups.size(); ++s)
      if (net.setups[s].placed) join(net.setups[s].station, s);
    for (const NetSight& s : net.sights)
      if (net.setups[s.setup].placed) join(s.target, s.setup);
  }

  std::size_t of(std::size_t setup) const {
    while (owner_[setup] != setup) setup = owner_[setup];
    return setup;
  }

 private:
  void join(std::size_t point, std::size_t setup) {
    const NetPoint& p = net_.points[point];
    const bool held = p.plan_known && p.sigma_plan == 0 && p.height_known && p.sigma_height == 0;
    if (!p.in_net || held) return;
    if (met_[point]) {
      const std::size_t a = of(*met_[point]), b = of(setup);
      owner_[std::max(a, b)] = std::min(a, b);
    }
    met_[point] = setup;
  }

  const Net& net_;
  std::vector<std::size_t> owner_;
  std::vector<std::optional<std::size_t>> met_;
};

struct Part {
  Net net;
  std::map<std::size_t, std::size_t> numbers;  // of the whole net's points

  std::size_t point(const Net& whole, std::size_t number) {
    const auto [at, fresh] = numbers.try_emplace(number, net.points.size());
    if (fresh) net.points.push_back(whole.points[number]);
    return at->second;
  }

  void take(const Net& whole, const NetSetup& from) {
    NetSetup setup = from;
    setup.station = point(whole, from.station);
    setup.sights.clear();
    for (const std::size_t i : from.sights) {
      NetSight sight = whole.sights[i];
      sight.setup = net.setups.size();
      sight.target = point(whole, sight.target);
      setup.sights.push_back(net.sights.size());
      net.sights.push_back(std::move(sight));
    }
    net.setups.push_back(std::move(setup));
  }
};

}  // namespace

std::vector<Net> parts_of(const Net& net) {
  const Roots roots(net);
  std::vector<Part> parts;
  std::map<std::size_t, std::size_t> part_of;
  for (std::size_t s = 0; s < net.setups.size(); ++s) {
    if (!net.setups[s].placed) continue;
    const auto [at, fresh] = part_of.try_emplace(roots.of(s), parts.size());
    if (fresh) parts.emplace_back();
    parts[at->second].take(net, net.setups[s]);
  }
  std::vector<Net> nets;
  nets.reserve(parts.size());
  for (Part& part : parts) nets.push_back(std::move(part.net));
  return nets;
}

}  // namespace squaredig::field
