// The net's adjustment: directions, zenith angles and slope distances as they were read, and
// their model on the round earth.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "field/net_internal.h"

namespace squaredig::field {
namespace {

double wrapped(double angle) { return std::remainder(angle, 2 * std::numbers::pi); }

struct Geometry {
  double de, dn, distance, bearing;  // on the grid
  double rise;                       // axis to axis
  double scale;
  Ray ray;  // as it would be read
};

double instrument_height(const NetSetup& setup) {
  return setup.instrument_height + setup.height_offset;
}

Geometry geometry_of(const Net& net, const NetSight& sight, const Shape& shape) {
  const NetSetup& setup = net.setups[sight.setup];
  const NetPoint& from = net.points[setup.station];
  const NetPoint& to = net.points[sight.target];
  Geometry g{};
  g.de = to.e - from.e;
  g.dn = to.n - from.n;
  g.distance = std::max(std::hypot(g.de, g.dn), 1e-3);
  g.bearing = std::atan2(g.de, g.dn);
  g.rise = to.h + sight.target_height - from.h - instrument_height(setup);
  const double above = from.h + instrument_height(setup) + shape.separation;
  g.scale = shape.scale(from.e + g.de / 2, from.n + g.dn / 2, above);
  g.ray = ray_of({Length::metres(g.distance / g.scale), Length::metres(g.rise)}, shape.earth,
                 Length::metres(above));
  return g;
}

class Builder {
 public:
  Builder(const Net& net, const Shape& shape) : shape_(shape) {
    fit_.net = net;
    number();
  }

  std::optional<NetFit> solve() {
    constexpr int kMostTurns = 60;
    constexpr double kAtRest = 1e-8;      // metres, radians
    constexpr double kNearEnough = 1e-3;  // of readings that contradict each other
    if (unknowns_ == 0) return std::nullopt;
    equations();
    double largest = 0;
    for (int turn = 0; turn < kMostTurns; ++turn) {
      auto estimates = adjust::least_squares(unknowns_, fit_.equations);
      if (!estimates) return std::nullopt;
      largest = step(estimates->unknowns);
      if (!std::isfinite(largest) || largest > 1e7) return std::nullopt;
      fit_.estimates = std::move(*estimates);
      if (largest < kAtRest) return std::move(fit_);
    }
    return largest < kNearEnough ? std::optional(std::move(fit_)) : std::nullopt;
  }

 private:
  void number() {
    fit_.of_point.resize(fit_.net.points.size());
    for (std::size_t i = 0; i < fit_.net.points.size(); ++i) {
      const NetPoint& p = fit_.net.points[i];
      NetFit::Numbers& n = fit_.of_point[i];
      if (!p.in_net) continue;
      if (!p.plan_known || p.sigma_plan > 0) {
        n.e = unknowns_++;
        n.n = unknowns_++;
      }
      if (p.levelled && has_zenith(i) && (!p.height_known || p.sigma_height > 0) && !p.height_datum)
        n.h = unknowns_++;
    }
    for (const NetSetup& setup : fit_.net.setups) {
      fit_.orientation_of.push_back(unknowns_++);
      if (setup.bumped) unknowns_++;          // follows the first
      if (setup.height_doubted) unknowns_++;  // follows the orientations
    }
  }

  bool has_zenith(std::size_t point) const {
    return std::any_of(fit_.net.sights.begin(), fit_.net.sights.end(), [&](const NetSight& s) {
      return s.zenith && s.use_zenith &&
             (s.target == point || fit_.net.setups[s.setup].station == point) &&
             fit_.net.points[s.target].in_net;
    });
  }

  void equations() {
    fit_.equations.clear();
    fit_.observed.clear();
    for (std::size_t i = 0; i < fit_.net.sights.size(); ++i)
      if (fit_.net.points[fit_.net.sights[i].target].in_net) sight_equations(i);
    known_points();
  }

  void sight_equations(std::size_t i) {
    const NetSight& s = fit_.net.sights[i];
    const NetSetup& setup = fit_.net.setups[s.setup];
    const Geometry g = geometry_of(fit_.net, s, shape_);
    const double sb = std::sin(g.bearing), cb = std::cos(g.bearing);
    const double z = g.ray.zenith.in_radians(), slope = g.ray.slope.in_metres();
    if (s.use_direction) {
      const bool second = setup.bumped && s.second_orientation;
      const double orientation = second ? setup.second_orientation : setup.orientation;
      adjust::Equation e{{}, wrapped(s.direction - g.bearing + orientation), s.sigma_direction};
      plan_terms(e, s, cb / g.distance, -sb / g.distance);
      e.terms.push_back({fit_.orientation_of[s.setup] + (second ? 1U : 0U), -1});
      add(std::move(e), i, Reading::Direction);
    }
    if (s.slope && s.zenith && s.use_slope) {
      adjust::Equation e{{}, *s.slope - slope, s.sigma_slope};
      plan_terms(e, s, std::sin(z) / g.scale * sb, std::sin(z) / g.scale * cb);
      height_terms(e, s, std::cos(z));
      add(std::move(e), i, Reading::Distance);
    }
    if (s.zenith && s.use_zenith && levels(s)) {
      adjust::Equation e{{}, *s.zenith - z, s.sigma_zenith};
      const double by_distance = std::cos(z) / (slope * g.scale);
      plan_terms(e, s, by_distance * sb, by_distance * cb);
      height_terms(e, s, -std::sin(z) / slope);
      add(std::move(e), i, Reading::Zenith);
    }
  }

  // A zenith angle says something only where both ends have a height of some kind.
  bool levels(const NetSight& s) const {
    return fit_.net.points[s.target].levelled &&
           fit_.net.points[fit_.net.setups[s.setup].station].levelled;
  }

  void plan_terms(adjust::Equation& e, const NetSight& s, double by_e, double by_n) const {
    const auto& to = fit_.of_point[s.target];
    const auto& from = fit_.of_point[fit_.net.setups[s.setup].station];
    if (to.e) e.terms.push_back({*to.e, by_e});
    if (to.n) e.terms.push_back({*to.n, by_n});
    if (from.e) e.terms.push_back({*from.e, -by_e});
    if (from.n) e.terms.push_back({*from.n, -by_n});
  }

  void height_terms(adjust::Equation& e, const NetSight& s, double by_h) const {
    const NetSetup& setup = fit_.net.setups[s.setup];
    const auto& to = fit_.of_point[s.target];
    const auto& from = fit_.of_point[setup.station];
    if (to.h) e.terms.push_back({*to.h, by_h});
    if (from.h) e.terms.push_back({*from.h, -by_h});
    if (setup.height_doubted)
      e.terms.push_back({fit_.orientation_of[s.setup] + (setup.bumped ? 2U : 1U), -by_h});
  }

  void known_points() {
    for (std::size_t i = 0; i < fit_.net.points.size(); ++i) {
      const NetPoint& p = fit_.net.points[i];
      const NetFit::Numbers& n = fit_.of_point[i];
      const NetPoint& given = start(i);
      if (p.plan_known && n.e) {
        add({{{*n.e, 1}}, given.e - p.e, p.sigma_plan}, kNoSight, Reading::Distance);
        add({{{*n.n, 1}}, given.n - p.n, p.sigma_plan}, kNoSight, Reading::Distance);
      }
      if (p.height_known && n.h)
        add({{{*n.h, 1}}, given.h - p.h, p.sigma_height}, kNoSight, Reading::Zenith);
    }
  }

  const NetPoint& start(std::size_t i) {
    if (start_.empty()) start_ = fit_.net.points;
    return start_[i];
  }

  void add(adjust::Equation e, std::size_t sight, Reading reading) {
    fit_.equations.push_back(std::move(e));
    fit_.observed.push_back({sight, reading});
  }

  double misclosures() const {
    double sum = 0;
    for (const adjust::Equation& e : fit_.equations) sum += std::pow(e.observed / e.sigma, 2);
    return sum;
  }

  // Moves by the whole correction, or by a part of it that makes the misclosures smaller.
  double step(const std::vector<double>& by) {
    constexpr double kSmallest = 1.0 / 1024;
    const double before = misclosures();
    const std::vector<NetPoint> points = fit_.net.points;
    const std::vector<NetSetup> setups = fit_.net.setups;
    static_cast<void>(start(0));
    for (double part = 1;; part /= 2) {
      std::vector<double> shortened = by;
      for (double& x : shortened) x *= part;
      const double largest = move(shortened);
      equations();
      if (part <= kSmallest || misclosures() <= before * (1 + 1e-9) + 1e-9) return largest;
      fit_.net.points = points;
      fit_.net.setups = setups;
    }
  }

  double move(const std::vector<double>& by) {
    double largest = 0;
    const auto shift = [&](double& value, std::size_t unknown) {
      value += by[unknown];
      largest = std::max(largest, std::abs(by[unknown]));
    };
    for (std::size_t i = 0; i < fit_.net.points.size(); ++i) {
      const NetFit::Numbers& n = fit_.of_point[i];
      if (n.e) shift(fit_.net.points[i].e, *n.e);
      if (n.n) shift(fit_.net.points[i].n, *n.n);
      if (n.h) shift(fit_.net.points[i].h, *n.h);
    }
    for (std::size_t s = 0; s < fit_.net.setups.size(); ++s) {
      NetSetup& setup = fit_.net.setups[s];
      std::size_t next = fit_.orientation_of[s];
      shift(setup.orientation, next++);
      if (setup.bumped) shift(setup.second_orientation, next++);
      if (setup.height_doubted) shift(setup.height_offset, next++);
    }
    return largest;
  }

  static constexpr std::size_t kNoSight = static_cast<std::size_t>(-1);
  const Shape& shape_;
  NetFit fit_;
  std::vector<NetPoint> start_;
  std::size_t unknowns_ = 0;
};

// Which points are reached from known heights by sights with zenith angles, over lengths read or
// known.
void give_heights(Net& net) {
  for (NetPoint& p : net.points) p.height_given = p.height_known;
  for (bool more = true; more;) {
    more = false;
    for (const NetSight& s : net.sights) {
      NetPoint& a = net.points[net.setups[s.setup].station];
      NetPoint& b = net.points[s.target];
      if (!s.zenith || (!s.slope && !(a.placed && b.placed))) continue;
      more = more || a.height_given != b.height_given;
      a.height_given = b.height_given = a.height_given || b.height_given;
    }
  }
}

}  // namespace

bool NetFit::passes() const {
  return adjust::global_test(estimates, kTests.alpha) != adjust::GlobalTest::Failed &&
         !adjust::most_suspect(estimates, kTests.critical);
}

Polar polar_of(const Net& net, const NetSight& sight, const Shape& shape) {
  const NetSetup& setup = net.setups[sight.setup];
  const NetPoint& from = net.points[setup.station];
  const double above = from.h + instrument_height(setup) + shape.separation;
  const Reach reach = reach_of({Length::metres(*sight.slope), Angle::radians(*sight.zenith)},
                               shape.earth, Length::metres(above));
  const double bearing = setup.orientation + sight.direction;
  const double half = reach.arc.in_metres() / 2;
  const double scale =
      shape.scale(from.e + half * std::sin(bearing), from.n + half * std::cos(bearing), above);
  return {reach.arc.in_metres() * scale,
          reach.rise.in_metres() + instrument_height(setup) - sight.target_height, scale};
}

void prepare_net(Net& net) {
  std::vector<std::vector<std::size_t>> seen_from(net.points.size());
  for (const NetSight& s : net.sights) {
    if (!net.setups[s.setup].placed) continue;
    auto& from = seen_from[s.target];
    if (std::find(from.begin(), from.end(), s.setup) == from.end()) from.push_back(s.setup);
  }
  for (std::size_t i = 0; i < net.points.size(); ++i) {
    NetPoint& p = net.points[i];
    p.in_net = p.placed && (p.plan_known || seen_from[i].size() > 1);
  }
  for (const NetSetup& setup : net.setups)
    if (setup.placed) net.points[setup.station].in_net = true;
  give_heights(net);
}

std::optional<NetFit> fit_net(const Net& net, const Shape& shape) {
  return Builder(net, shape).solve();
}

}  // namespace squaredig::field
