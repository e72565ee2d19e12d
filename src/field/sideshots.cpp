#include <array>
#include <cmath>
#include <map>

#include "field/sideshots_internal.h"
#include "quantity/number_text.h"

namespace squaredig::field {
namespace {

// Covariance of easting, northing, height and orientation of a set-up; rows of held ones are zero.
using Pose = std::array<std::array<double, 4>, 4>;

Pose pose_of(const NetFit& fit, std::size_t setup, double unit) {
  const auto& n = fit.of_point[fit.net.setups[setup].station];
  const std::array<std::optional<std::size_t>, 4> at{n.e, n.n, n.h, fit.orientation_of[setup]};
  Pose pose{};
  for (std::size_t i = 0; i < 4; ++i)
    for (std::size_t j = 0; j < 4; ++j)
      if (at[i] && at[j]) pose[i][j] = unit * unit * fit.estimates.covariance(*at[i], *at[j]);
  return pose;
}

struct Shot {
  double e, n, h;
  std::array<std::array<double, 4>, 3> by_pose;  // of e, n, h by the set-up's four
  Covariance own;                                // of the sight's readings alone
};

Shot shot_of(const Net& net, const NetSight& s, const Shape& shape, double unit) {
  const NetSetup& setup = net.setups[s.setup];
  const NetPoint& station = net.points[setup.station];
  const Polar polar = polar_of(net, s, shape);
  const double bearing = setup.orientation + s.direction;
  const double sb = std::sin(bearing), cb = std::cos(bearing), d = polar.distance;
  const double z = *s.zenith, sz = std::sin(z), cz = std::cos(z), slope = *s.slope;
  Shot shot{station.e + d * sb, station.n + d * cb, station.h + polar.rise, {}, {}};
  shot.by_pose = {{{1, 0, 0, d * cb}, {0, 1, 0, -d * sb}, {0, 0, 1, 0}}};
  const auto square = [unit](double x) { return x * x * unit * unit; };
  const double along =
      square(sz * polar.scale * s.sigma_slope) + square(slope * cz * polar.scale * s.sigma_zenith);
  const double across = square(d * s.sigma_direction);
  const double up = square(cz * s.sigma_slope) + square(slope * sz * s.sigma_zenith);
  const double along_up =
      polar.scale * sz * cz * (square(s.sigma_slope) - square(slope * s.sigma_zenith));
  shot.own = {along * sb * sb + across * cb * cb,
              (along - across) * sb * cb,
              along * cb * cb + across * sb * sb,
              along_up * sb,
              along_up * cb,
              up};
  return shot;
}

double through(const Pose& pose, const std::array<double, 4>& a, const std::array<double, 4>& b) {
  double sum = 0;
  for (std::size_t i = 0; i < 4; ++i)
    for (std::size_t j = 0; j < 4; ++j) sum += a[i] * pose[i][j] * b[j];
  return sum;
}

Covariance total(const Pose& pose, const Shot& shot, double count) {
  const auto& j = shot.by_pose;
  const Covariance& own = shot.own;
  return {through(pose, j[0], j[0]) + own.ee / count, through(pose, j[0], j[1]) + own.en / count,
          through(pose, j[1], j[1]) + own.nn / count, through(pose, j[0], j[2]) + own.eh / count,
          through(pose, j[1], j[2]) + own.nh / count, through(pose, j[2], j[2]) + own.hh / count};
}

class Shooter {
 public:
  Shooter(const Net& part, const NetFit& fit, double unit, const Shape& shape,
          const BuiltNet& built)
      : part_(part), fit_(fit), unit_(unit), shape_(shape), built_(built), net_(part) {
    // the set-ups as adjusted, under the part's own numbers
    for (std::size_t s = 0; s < net_.setups.size(); ++s) {
      net_.setups[s].orientation = fit.net.setups[s].orientation;
      net_.points[net_.setups[s].station] = fit.net.points[fit.net.setups[s].station];
    }
  }

  PartPoints points() {
    adjusted();
    std::vector<std::vector<std::size_t>> of_target(part_.points.size());
    for (std::size_t i = 0; i < part_.sights.size(); ++i)
      if (!part_.points[part_.sights[i].target].in_net)
        of_target[part_.sights[i].target].push_back(i);
    for (std::size_t t = 0; t < of_target.size(); ++t)
      if (!of_target[t].empty()) sideshot(t, of_target[t]);
    return std::move(out_);
  }

 private:
  const Sight& source(const NetSight& s) const {
    for (std::size_t i = 0; i < built_.net.setups.size(); ++i)
      if (built_.net.setups[i].name == part_.setups[s.setup].name)
        return built_.faces[i].sights[s.source];
    return built_.faces.front().sights.front();
  }

  // Points that were unknowns of the adjustment and were sighted.
  void adjusted() {
    for (std::size_t i = 0; i < fit_.net.points.size(); ++i) {
      const NetPoint& p = fit_.net.points[i];
      if (p.plan_known) continue;
      ReducedPoint told;
      told.sights = 0;
      for (const NetSight& s : fit_.net.sights) {
        if (s.target != i) continue;
        if (told.sights++ == 0) {
          told.place = s.places.front();
          told.code = source(s).code;
        }
      }
      if (told.sights == 0) continue;
      told.point = p.name;
      told.at = on_grid(p, built_.origin);
      if (p.height_given) told.height = Elevation::metres(p.h);
      told.covariance = covariance_of(fit_, i, unit_);
      told.from = "total station, adjusted";
      out_.points.push_back(std::move(told));
    }
  }

  void sideshot(std::size_t target, const std::vector<std::size_t>& sights) {
    std::vector<Shot> shots;
    const NetSight* first = nullptr;
    for (const std::size_t i : sights) {
      const NetSight& s = net_.sights[i];
      if (!s.slope || !s.zenith) continue;
      if (first == nullptr) first = &s;
      shots.push_back(shot_of(net_, s, shape_, unit_));
    }
    const std::string& name = part_.points[target].name;
    if (first == nullptr) {
      const NetSight& s = part_.sights[sights.front()];
      out_.withheld.push_back({name, "sighted once, without a distance", s.places.front()});
      return;
    }
    Shot mean = shots.front();
    const auto count = static_cast<double>(shots.size());
    for (std::size_t i = 1; i < shots.size(); ++i) {
      check_repeat(name, shots.front(), shots[i], net_.sights[sights[i]]);
      mean.e += (shots[i].e - shots.front().e) / count;
      mean.n += (shots[i].n - shots.front().n) / count;
      mean.h += (shots[i].h - shots.front().h) / count;
    }
    tell(name, *first, mean, count);
  }

  void check_repeat(const std::string& name, const Shot& a, const Shot& b, const NetSight& s) {
    const double plan = std::hypot(a.e - b.e, a.n - b.n), height = std::abs(a.h - b.h);
    const double plan_sigma = std::sqrt(2 * (a.own.ee + a.own.nn));
    const double height_sigma = std::sqrt(2 * a.own.hh);
    if (plan > kTests.critical * plan_sigma || height > kTests.critical * height_sigma)
      out_.findings.push_back({"repeat-disagrees", where(s.places) + ": point " + quoted(name) +
                                                       " sighted again differs by " +
                                                       fixed(plan * 1000, 1) + " mm in plan and " +
                                                       fixed(height * 1000, 1) + " mm in height"});
  }

  void tell(const std::string& name, const NetSight& s, const Shot& mean, double count) {
    const NetPoint& station = net_.points[net_.setups[s.setup].station];
    ReducedPoint told;
    told.point = name;
    told.code = source(s).code;
    NetPoint p;
    p.e = mean.e;
    p.n = mean.n;
    told.at = on_grid(p, built_.origin);
    if (station.height_given) told.height = Elevation::metres(mean.h);
    told.covariance = total(pose_of(fit_, s.setup, unit_), mean, count);
    told.from = "set-up " + part_.setups[s.setup].name;
    told.sights = static_cast<std::size_t>(count);
    told.place = s.places.front();
    out_.points.push_back(std::move(told));
  }

  const Net& part_;
  const NetFit& fit_;
  double unit_;
  const Shape& shape_;
  const BuiltNet& built_;
  Net net_;
  PartPoints out_;
};

}  // namespace

GridPoint on_grid(const NetPoint& point, GridPoint origin) {
  return {origin.easting + Length::metres(point.e), origin.northing + Length::metres(point.n)};
}

Covariance covariance_of(const NetFit& fit, std::size_t point, double unit) {
  const auto& n = fit.of_point[point];
  const auto of = [&](std::optional<std::size_t> i, std::optional<std::size_t> j) {
    return i && j ? unit * unit * fit.estimates.covariance(*i, *j) : 0.0;
  };
  return {of(n.e, n.e), of(n.e, n.n), of(n.n, n.n), of(n.e, n.h), of(n.n, n.h), of(n.h, n.h)};
}

PartPoints points_of(const Net& part, const NetFit& fit, double unit, const Shape& shape,
                     const BuiltNet& built) {
  return Shooter(part, fit, unit, shape, built).points();
}

}  // namespace squaredig::field
