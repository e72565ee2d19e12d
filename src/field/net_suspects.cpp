#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

#include "field/net_suspects_internal.h"
#include "quantity/number_text.h"

namespace squaredig::field {
namespace {

constexpr std::size_t kMostTargets = 30;  // of one set-up, tried for wrong and swapped names

std::string metres(double m) { return fixed(m, 3) + " m"; }

// The fit where it passes, if need be without one reading that hardly is more than chance. What is
// left without any check would pass whatever was supposed.
std::optional<NetFit> accepted(const Net& net, std::optional<NetFit> fit, const Shape& shape) {
  constexpr double kHardly = 4.5;  // normalised: seven in a million by chance
  if (!fit || fit->estimates.freedom == 0) return std::nullopt;
  if (fit->passes()) return fit;
  const auto worst = adjust::most_suspect(fit->estimates, kTests.critical);
  if (!worst || std::abs(*fit->estimates.observations[*worst].normalised) > kHardly ||
      fit->observed[*worst].sight >= net.sights.size())
    return std::nullopt;
  Net without = net;
  leave_out(without, fit->observed[*worst]);
  auto next = fit_net(without, shape);
  if (!next || next->estimates.freedom == 0 || !next->passes()) return std::nullopt;
  return next;
}

// The part adjusted anew from scratch, where it then is accepted.
std::optional<NetFit> passing(Net net, const Shape& shape) {
  for (NetPoint& p : net.points) {
    p.placed = p.plan_known;
    p.levelled = p.height_known;
    p.height_datum = false;
  }
  for (NetSetup& setup : net.setups) setup.placed = false;
  place_net(net, shape);
  for (const NetSetup& setup : net.setups)
    if (!setup.placed) return std::nullopt;
  prepare_net(net);
  return accepted(net, fit_net(net, shape), shape);
}

std::size_t point_number(Net& net, const NetPoint& wanted) {
  for (std::size_t i = 0; i < net.points.size(); ++i)
    if (net.points[i].name == wanted.name) return i;
  net.points.push_back(wanted);
  return net.points.size() - 1;
}

struct Target {
  std::size_t point;
  std::vector<std::size_t> sights;
};

std::vector<Target> known_targets(const Net& net, const NetSetup& setup) {
  std::vector<Target> targets;
  for (const std::size_t i : setup.sights) {
    const std::size_t point = net.sights[i].target;
    if (!net.points[point].plan_known) continue;
    const auto at = std::find_if(targets.begin(), targets.end(),
                                 [&](const Target& t) { return t.point == point; });
    if (at != targets.end())
      at->sights.push_back(i);
    else if (targets.size() < kMostTargets)
      targets.push_back({point, {i}});
  }
  return targets;
}

std::string lines_of(const Net& net, const std::vector<std::size_t>& sights) {
  std::vector<Place> places;
  for (const std::size_t i : sights)
    places.insert(places.end(), net.sights[i].places.begin(), net.sights[i].places.end());
  return where(places);
}

class Supposer {
 public:
  Supposer(const Net& part, const std::vector<NetPoint>& control, const Shape& shape)
      : part_(part), control_(control), shape_(shape) {}

  std::vector<Supposition> all() {
    for (std::size_t s = 0; s < part_.setups.size(); ++s) {
      const auto targets = known_targets(part_, part_.setups[s]);
      for (const Target& t : targets) {
        wrong_names(s, t.point, t.sights);
        if (t.sights.size() > 1)
          for (const std::size_t i : t.sights) wrong_names(s, t.point, {i});
      }
      swapped_names(s, targets);
      bumped(s);
      wrong_station(s);
      wrong_height(s);
      if (!found_.empty()) continue;
      for (const std::size_t i : part_.setups[s].sights) whole_sight(s, i);
    }
    std::stable_sort(found_.begin(), found_.end(), [](const auto& a, const auto& b) {
      return a.fit.sum_of_squares() < b.fit.sum_of_squares();
    });
    return std::move(found_);
  }

  std::vector<Supposition> names_of(std::size_t sight) {
    const NetSight& s = part_.sights[sight];
    wrong_names(s.setup, s.target, {sight});
    return std::move(found_);
  }

 private:
  std::string of_setup(std::size_t s) const {
    return "set-up " + quoted(part_.setups[s].name) + ", ";
  }

  void keep(Blunder blunder, const char* code, std::string text, std::optional<NetFit> fit) {
    if (fit) found_.push_back({blunder, std::move(text), code, std::move(*fit)});
  }

  void wrong_names(std::size_t s, std::size_t target, const std::vector<std::size_t>& sights) {
    for (const NetPoint& other : control_) {
      if (other.name == part_.points[target].name || !other.plan_known ||
          other.name == part_.points[part_.setups[s].station].name)
        continue;
      if (!near_enough(other, sights)) continue;
      Net net = part_;
      const std::size_t number = point_number(net, other);
      for (const std::size_t i : sights) net.sights[i].target = number;
      keep(Blunder::WrongName, "wrong-backsight",
           of_setup(s) + lines_of(part_, sights) + ": what is booked as " +
               quoted(part_.points[target].name) + " was " + quoted(other.name),
           passing(std::move(net), shape_));
    }
  }

  // A known station tells at once which points a distance cannot be to.
  bool near_enough(const NetPoint& other, const std::vector<std::size_t>& sights) const {
    const NetSight& sight = part_.sights[sights.front()];
    const NetPoint& station = part_.points[part_.setups[sight.setup].station];
    if (!station.plan_known || !sight.slope || !sight.zenith) return true;
    const double distance = std::hypot(other.e - station.e, other.n - station.n);
    return std::abs(polar_of(part_, sight, shape_).distance - distance) <
           10 * sight.sigma_slope + 1e-3 * distance;
  }

  void swapped_names(std::size_t s, const std::vector<Target>& targets) {
    for (std::size_t i = 0; i < targets.size(); ++i)
      for (std::size_t j = i + 1; j < targets.size(); ++j) {
        Net net = part_;
        for (const std::size_t k : targets[i].sights) net.sights[k].target = targets[j].point;
        for (const std::size_t k : targets[j].sights) net.sights[k].target = targets[i].point;
        keep(Blunder::SwappedNames, "swapped-targets",
             of_setup(s) + lines_of(part_, targets[i].sights) + " and " +
                 lines_of(part_, targets[j].sights) + ": " +
                 quoted(part_.points[targets[i].point].name) + " and " +
                 quoted(part_.points[targets[j].point].name) + " have changed places",
             passing(std::move(net), shape_));
      }
  }

  // A circle that was turned between two sights; two sights or more on either side of it.
  void bumped(std::size_t s) {
    const auto& sights = part_.setups[s].sights;
    for (std::size_t cut = 2; cut + 2 <= sights.size(); ++cut) {
      Net net = part_;
      net.setups[s].bumped = true;
      for (std::size_t i = cut; i < sights.size(); ++i)
        net.sights[sights[i]].second_orientation = true;
      if (!checked_after(net, s, cut)) continue;
      auto fit = passing_bumped(std::move(net), s, cut);
      if (!fit || !checked_after(fit->net, s, cut)) continue;
      const NetSetup& done = fit->net.setups[s];
      const double turn =
          std::remainder(done.second_orientation - done.orientation, 2 * std::numbers::pi);
      const std::string seconds = fixed(std::abs(Angle::radians(turn).in_seconds()), 0);
      keep(Blunder::Bumped, "bumped-setup",
           of_setup(s) + "between " + where(part_.sights[sights[cut - 1]].places) + " and " +
               where(part_.sights[sights[cut]].places) +
               ": the instrument was knocked, its circle " + "turned by " + seconds + "\"",
           std::move(fit));
    }
  }

  // The later sights must be bound to something but the knock itself.
  bool checked_after(const Net& net, std::size_t s, std::size_t cut) const {
    std::size_t before = 0, after = 0;
    const auto& sights = net.setups[s].sights;
    for (std::size_t i = 0; i < sights.size(); ++i) {
      const NetSight& sight = net.sights[sights[i]];
      const bool binds = net.points[sight.target].in_net && sight.use_direction;
      (i < cut ? before : after) += binds ? 1U : 0U;
    }
    return before >= 2 && after >= 2;
  }

  std::optional<NetFit> passing_bumped(Net net, std::size_t s, std::size_t cut) const {
    // the first sights alone give the place; the knocked ones follow by their own orientation
    NetSetup& setup = net.setups[s];
    std::vector<double> turns;
    const NetPoint& station = net.points[setup.station];
    const auto turn_of = [&](std::size_t i) {
      const NetSight& sight = net.sights[setup.sights[i]];
      return bearing_between(station, net.points[sight.target]) - sight.direction;
    };
    setup.orientation = turn_of(0);
    setup.second_orientation = turn_of(cut);
    return accepted(net, fit_net(net, shape_), shape_);
  }

  void wrong_station(std::size_t s) {
    const NetPoint& booked = part_.points[part_.setups[s].station];
    if (!booked.plan_known) return;
    Net net = part_;
    NetPoint unknown;
    unknown.name = booked.name + " as occupied";
    net.points.push_back(unknown);
    net.setups[s].station = net.points.size() - 1;
    auto fit = passing(std::move(net), shape_);
    if (!fit) return;
    const NetPoint& stood = fit->net.points[fit->net.setups[s].station];
    std::string place =
        metres(std::hypot(stood.e - booked.e, stood.n - booked.n)) + " away from it";
    for (const NetPoint& c : control_)
      if (c.name != booked.name && std::hypot(c.e - stood.e, c.n - stood.n) < 0.05)
        place = "on " + quoted(c.name);
    keep(Blunder::WrongStation, "wrong-station",
         of_setup(s) + where(part_.setups[s].place) + ": the instrument did not stand on " +
             quoted(booked.name) + " but " + place,
         std::move(fit));
  }

  void wrong_height(std::size_t s) {
    if (!part_.points[part_.setups[s].station].height_known) return;
    Net net = part_;
    net.setups[s].height_doubted = true;
    auto fit = passing(std::move(net), shape_);
    if (!fit) return;
    const std::string by = metres(fit->net.setups[s].height_offset);
    keep(Blunder::InstrumentHeight, "instrument-height",
         of_setup(s) + where(part_.setups[s].place) + ": the instrument stood " + by +
             " higher than booked, or the station's height is wrong by it",
         std::move(fit));
  }

  void whole_sight(std::size_t s, std::size_t i) {
    if (!part_.points[part_.sights[i].target].in_net) return;
    Net net = part_;
    NetSight& sight = net.sights[i];
    sight.use_direction = sight.use_zenith = sight.use_slope = false;
    auto fit = passing(std::move(net), shape_);
    if (fit && !all_used(*fit, i)) fit = std::nullopt;  // coordinates are given: nothing is hidden
    keep(Blunder::WholeSight, "wrong-target",
         of_setup(s) + where(part_.sights[i].places) + ": the sight is not to " +
             quoted(part_.points[part_.sights[i].target].name),
         std::move(fit));
  }

  static bool all_used(const NetFit& fit, std::size_t but) {
    for (std::size_t i = 0; i < fit.net.sights.size(); ++i) {
      const NetSight& sight = fit.net.sights[i];
      if (i != but && !(sight.use_direction && sight.use_zenith && sight.use_slope)) return false;
    }
    return true;
  }

  const Net& part_;
  const std::vector<NetPoint>& control_;
  const Shape& shape_;
  std::vector<Supposition> found_;
};

}  // namespace

void leave_out(Net& net, const Observed& reading) {
  NetSight& sight = net.sights[reading.sight];
  if (reading.reading == Reading::Direction) sight.use_direction = false;
  if (reading.reading == Reading::Zenith) sight.use_zenith = false;
  if (reading.reading == Reading::Distance) sight.use_slope = false;
}

Net without_sideshots(const Net& part) {
  Net slim;
  slim.points = part.points;
  slim.setups = part.setups;
  for (NetSetup& setup : slim.setups) setup.sights.clear();
  for (const NetSight& sight : part.sights) {
    if (!part.points[sight.target].in_net) continue;
    slim.setups[sight.setup].sights.push_back(slim.sights.size());
    slim.sights.push_back(sight);
  }
  std::vector<std::size_t> number(part.points.size(), 0);
  slim.points.clear();
  for (std::size_t i = 0; i < part.points.size(); ++i)
    if (part.points[i].in_net) {
      number[i] = slim.points.size();
      slim.points.push_back(part.points[i]);
    }
  for (NetSetup& setup : slim.setups) setup.station = number[setup.station];
  for (NetSight& sight : slim.sights) sight.target = number[sight.target];
  return slim;
}

std::vector<Supposition> suppositions_that_fit(const Net& part,
                                               const std::vector<NetPoint>& control,
                                               const Shape& shape) {
  return Supposer(part, control, shape).all();
}

std::vector<Supposition> other_names_that_fit(const Net& part, std::size_t sight,
                                              const std::vector<NetPoint>& control,
                                              const Shape& shape) {
  return Supposer(part, control, shape).names_of(sight);
}

}  // namespace squaredig::field
