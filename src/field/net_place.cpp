// Approximate places: orientations, free stations from pairs and triples of targets, points by
// polar sights and by intersection.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "field/intersection.h"
#include "field/net_internal.h"

namespace squaredig::field {
namespace {

constexpr double kFull = 2 * std::numbers::pi;

double wrapped(double angle) { return std::remainder(angle, kFull); }

struct Pose {
  double e = 0, n = 0, orientation = 0;
};

// What a set-up sees of points already placed.
struct Seen {
  const NetSight* sight;
  const NetPoint* at;
  std::optional<double> distance;
};

std::vector<Seen> seen_of(const Net& net, const NetSetup& setup, const Shape& shape) {
  std::vector<Seen> seen;
  for (const std::size_t i : setup.sights) {
    const NetSight& s = net.sights[i];
    const NetPoint& p = net.points[s.target];
    if (!p.placed || s.target == setup.station || !s.use_direction) continue;
    std::optional<double> distance;
    if (s.slope && s.zenith && s.use_slope) distance = polar_of(net, s, shape).distance;
    seen.push_back({&s, &p, distance});
  }
  return seen;
}

// Sum of misfits, in units of about a sigma; not squared, so that one blunder does not pull.
double misfit(const Pose& pose, const std::vector<Seen>& seen) {
  double sum = 0;
  for (const Seen& s : seen) {
    const double de = s.at->e - pose.e, dn = s.at->n - pose.n;
    const double off = wrapped(std::atan2(de, dn) - pose.orientation - s.sight->direction);
    sum += std::min(std::abs(off) / s.sight->sigma_direction, 1e6);
    if (s.distance)
      sum += std::min(std::abs(std::hypot(de, dn) - *s.distance) / s.sight->sigma_slope, 1e6);
  }
  return sum;
}

// From two targets with distances: the two ends laid onto each other at their middle.
std::optional<Pose> from_pair(const Seen& a, const Seen& b) {
  const double ae = *a.distance * std::sin(a.sight->direction);
  const double an = *a.distance * std::cos(a.sight->direction);
  const double be = *b.distance * std::sin(b.sight->direction);
  const double bn = *b.distance * std::cos(b.sight->direction);
  if (std::hypot(be - ae, bn - an) < 0.01 ||
      std::hypot(b.at->e - a.at->e, b.at->n - a.at->n) < 0.01)
    return std::nullopt;
  const double turn =
      std::atan2(b.at->e - a.at->e, b.at->n - a.at->n) - std::atan2(be - ae, bn - an);
  const double c = std::cos(turn), s = std::sin(turn);
  const double me = (ae + be) / 2, mn = (an + bn) / 2;
  return Pose{(a.at->e + b.at->e) / 2 - (c * me + s * mn),
              (a.at->n + b.at->n) / 2 - (c * mn - s * me), turn};
}

// From a target with distance and a direction to another: the two solutions of side-side-angle.
std::vector<Pose> from_distance_and_direction(const Seen& a, const Seen& b) {
  const double base = std::hypot(b.at->e - a.at->e, b.at->n - a.at->n);
  const double angle = wrapped(b.sight->direction - a.sight->direction);
  const double sine_b = *a.distance * std::sin(std::abs(angle)) / base;
  std::vector<Pose> poses;
  if (base < 0.01 || std::abs(sine_b) > 1) return poses;
  const double along = std::atan2(b.at->e - a.at->e, b.at->n - a.at->n);
  for (const double at_b : {std::asin(sine_b), std::numbers::pi - std::asin(sine_b)}) {
    const double at_a = std::numbers::pi - std::abs(angle) - at_b;
    if (at_a <= 0) continue;
    // seen from the station b stands clockwise of a: the station lies to the right of a-b
    const double to_station = along + (angle > 0 ? at_a : -at_a);
    Pose pose{a.at->e + *a.distance * std::sin(to_station),
              a.at->n + *a.distance * std::cos(to_station), 0};
    pose.orientation = std::atan2(a.at->e - pose.e, a.at->n - pose.n) - a.sight->direction;
    poses.push_back(pose);
  }
  return poses;
}

// From three directions, by cotangents of the angles between them; nothing on their circle.
std::optional<Pose> from_directions(const Seen& a, const Seen& b, const Seen& c) {
  constexpr double kSmallest = 1e-6;
  const double ab = b.sight->direction - a.sight->direction;
  const double bc = c.sight->direction - b.sight->direction;
  if (std::abs(std::sin(ab)) < kSmallest || std::abs(std::sin(bc)) < kSmallest ||
      std::abs(std::sin(ab + bc)) < kSmallest)
    return std::nullopt;
  // directions turn clockwise from north, so north takes the part of x and east that of y
  const double x1 = a.at->n - b.at->n, y1 = a.at->e - b.at->e;
  const double x3 = c.at->n - b.at->n, y3 = c.at->e - b.at->e;
  const double t12 = 1 / std::tan(ab), t23 = 1 / std::tan(bc);
  const double t31 = (1 - t12 * t23) / (t12 + t23);
  const double x12 = x1 + t12 * y1, y12 = y1 - t12 * x1;
  const double x23 = x3 - t23 * y3, y23 = y3 + t23 * x3;
  const double x31 = (x3 + x1) + t31 * (y3 - y1), y31 = (y3 + y1) - t31 * (x3 - x1);
  const double k = x1 * x3 + y1 * y3 + t31 * (x1 * y3 - x3 * y1);
  const double d = (x12 - x23) * (y23 - y31) - (y12 - y23) * (x23 - x31);
  const double size = (x1 * x1 + y1 * y1 + x3 * x3 + y3 * y3);
  if (std::abs(d) < 1e-9 * size) return std::nullopt;
  Pose pose{b.at->e + k * (x23 - x12) / d, b.at->n + k * (y12 - y23) / d, 0};
  pose.orientation = std::atan2(a.at->e - pose.e, a.at->n - pose.n) - a.sight->direction;
  return pose;
}

std::vector<Pose> free_poses(const std::vector<Seen>& seen) {
  constexpr std::size_t kMost = 14;  // targets tried in pairs and triples
  const std::size_t count = std::min(seen.size(), kMost);
  std::vector<Pose> poses;
  for (std::size_t i = 0; i < count; ++i)
    for (std::size_t j = i + 1; j < count; ++j) {
      if (seen[i].at == seen[j].at) continue;
      if (seen[i].distance && seen[j].distance) {
        if (auto pose = from_pair(seen[i], seen[j])) poses.push_back(*pose);
      } else if (seen[i].distance || seen[j].distance) {
        const std::size_t far = seen[i].distance ? i : j;
        for (const Pose& pose : from_distance_and_direction(seen[far], seen[i + j - far]))
          poses.push_back(pose);
      }
    }
  if (!poses.empty()) return poses;
  for (std::size_t i = 0; i < count; ++i)
    for (std::size_t j = i + 1; j < count; ++j)
      for (std::size_t k = j + 1; k < count; ++k)
        if (auto pose = from_directions(seen[i], seen[j], seen[k])) poses.push_back(*pose);
  return poses;
}

std::optional<double> median(std::vector<double> values) {
  if (values.empty()) return std::nullopt;
  std::sort(values.begin(), values.end());
  return values[(values.size() - 1) / 2];
}

bool orient(NetSetup& setup, const NetPoint& station, const std::vector<Seen>& seen) {
  std::vector<double> turns;
  std::optional<double> first;
  for (const Seen& s : seen) {
    if (std::hypot(s.at->e - station.e, s.at->n - station.n) < 1e-6) continue;
    const double turn = bearing_between(station, *s.at) - s.sight->direction;
    if (!first) first = turn;
    turns.push_back(wrapped(turn - *first));
  }
  const auto middle = median(turns);
  if (middle) setup.orientation = *first + *middle;
  return middle.has_value();
}

// Mark to mark by zenith angle over a length known from the plan.
double rise_over(double distance, const NetSight& s, const NetSetup& setup, const Shape& shape) {
  const double bend = (1 - shape.earth.refraction.value()) * distance * distance /
                      (2 * shape.earth.radius.in_metres());
  return distance / std::tan(*s.zenith) + bend + setup.instrument_height - s.target_height;
}

void level_station(Net& net, const NetSetup& setup, const Shape& shape) {
  NetPoint& station = net.points[setup.station];
  if (station.levelled) return;
  std::vector<double> heights;
  for (const std::size_t i : setup.sights) {
    const NetSight& s = net.sights[i];
    const NetPoint& target = net.points[s.target];
    if (!s.zenith || !target.levelled) continue;
    if (s.slope) heights.push_back(target.h - polar_of(net, s, shape).rise);
    if (!s.slope && target.placed && station.placed)
      heights.push_back(target.h - rise_over(std::hypot(target.e - station.e, target.n - station.n),
                                             s, setup, shape));
  }
  if (const auto h = median(heights)) {
    station.h = *h;
    station.levelled = true;
  }
}

bool fix_free(Net& net, NetSetup& setup, const std::vector<Seen>& seen) {
  const auto poses = free_poses(seen);
  if (poses.empty()) return false;
  const Pose* best = &poses.front();
  for (const Pose& pose : poses)
    if (misfit(pose, seen) < misfit(*best, seen)) best = &pose;
  NetPoint& station = net.points[setup.station];
  station.e = best->e;
  station.n = best->n;
  station.placed = true;
  setup.orientation = best->orientation;
  setup.kind = SetupKind::FreeStation;
  return true;
}

void place_targets(Net& net, const NetSetup& setup, const Shape& shape) {
  const NetPoint& station = net.points[setup.station];
  for (const std::size_t i : setup.sights) {
    const NetSight& s = net.sights[i];
    NetPoint& target = net.points[s.target];
    if (!s.zenith || !s.slope || s.target == setup.station) continue;
    const Polar polar = polar_of(net, s, shape);
    if (!target.placed) {
      const double bearing = setup.orientation + s.direction;
      target.e = station.e + polar.distance * std::sin(bearing);
      target.n = station.n + polar.distance * std::cos(bearing);
      target.placed = true;
    }
    if (!target.levelled && station.levelled) {
      target.h = station.h + polar.rise;
      target.levelled = true;
    }
  }
}

// A target sighted without distance from two places.
void intersect(Net& net) {
  for (std::size_t t = 0; t < net.points.size(); ++t) {
    NetPoint& target = net.points[t];
    if (target.placed) continue;
    std::vector<const NetSight*> rays;
    for (const NetSight& s : net.sights)
      if (s.target == t && net.setups[s.setup].placed) rays.push_back(&s);
    for (std::size_t i = 0; i < rays.size() && !target.placed; ++i)
      for (std::size_t j = i + 1; j < rays.size() && !target.placed; ++j) {
        const NetSetup& a = net.setups[rays[i]->setup];
        const NetSetup& b = net.setups[rays[j]->setup];
        const NetPoint& p = net.points[a.station];
        const NetPoint& q = net.points[b.station];
        const auto bearing = [&](const NetSetup& from, const NetSight& ray) {
          return Bearing::degrees(Angle::radians(from.orientation + ray.direction).in_degrees());
        };
        const auto met = intersection(grid_point(p.e, p.n), bearing(a, *rays[i]),
                                      grid_point(q.e, q.n), bearing(b, *rays[j]));
        if (!met) continue;
        target.e = met->easting.in_metres();
        target.n = met->northing.in_metres();
        target.placed = true;
      }
  }
}

// Heights may come only after a set-up was placed.
void spread_heights(Net& net, const Shape& shape) {
  const auto levelled = [&] {
    return std::count_if(net.points.begin(), net.points.end(),
                         [](const NetPoint& p) { return p.levelled; });
  };
  for (auto before = levelled() - 1; before != levelled();) {
    before = levelled();
    for (const NetSetup& setup : net.setups)
      if (setup.placed) {
        level_station(net, setup, shape);
        place_targets(net, setup, shape);
      }
  }
}

// Where no known height is met, one station's is supposed: slopes need differences of height.
void suppose_heights(Net& net, const Shape& shape) {
  for (const NetSetup& setup : net.setups) {
    NetPoint& station = net.points[setup.station];
    if (!setup.placed || station.levelled) continue;
    station.levelled = station.height_datum = true;
    for (const NetPoint& p : net.points)
      if (p.height_known) station.h = p.h;
    spread_heights(net, shape);
  }
}

}  // namespace

double bearing_between(const NetPoint& from, const NetPoint& to) {
  return std::atan2(to.e - from.e, to.n - from.n);
}

bool place_setup(Net& net, std::size_t index, const Shape& shape) {
  NetSetup& setup = net.setups[index];
  const auto seen = seen_of(net, setup, shape);
  if (net.points[setup.station].placed) {
    setup.placed = orient(setup, net.points[setup.station], seen);
  } else {
    setup.placed = fix_free(net, setup, seen);
  }
  if (!setup.placed) return false;
  setup.second_orientation = setup.orientation;
  level_station(net, setup, shape);
  place_targets(net, setup, shape);
  return true;
}

void place_net(Net& net, const Shape& shape) {
  for (NetSetup& setup : net.setups)
    setup.kind =
        net.points[setup.station].plan_known ? SetupKind::KnownStation : SetupKind::TraverseStation;
  for (bool more = true; more;) {
    more = false;
    for (const bool known_station : {true, false})
      for (std::size_t s = 0; s < net.setups.size() && !more; ++s) {
        if (net.setups[s].placed) continue;
        if (net.points[net.setups[s].station].placed != known_station) continue;
        more = place_setup(net, s, shape);
      }
    intersect(net);
  }
  spread_heights(net, shape);
  suppose_heights(net, shape);
}

}  // namespace squaredig::field
