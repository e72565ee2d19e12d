#include <algorithm>
#include <cmath>
#include <map>

#include "field/net_build_internal.h"

namespace squaredig::field {
namespace {

constexpr const char* kBookRemedy = "correct the book, or the control file";

void require_sigmas(const FieldInput& input) {
  const auto above_zero = [](const auto& sigma) {
    return sigma && *sigma > std::decay_t<decltype(*sigma)>{};
  };
  if (above_zero(input.sigma_direction) && above_zero(input.sigma_zenith) &&
      above_zero(input.sigma_distance))
    return;
  refuse(input.place, "a total-station book without standard deviations above zero",
         "sigma_direction_sec, sigma_zenith_sec and sigma_distance_mm, each above zero",
         "write those of the instrument");
}

class NetBuilder {
 public:
  NetBuilder(const FieldInput& input, const std::vector<KnownPoint>& known, ResultHead& head)
      : input_(input), known_(known), head_(head) {
    require_sigmas(input);
    built_.origin = origin();
  }

  BuiltNet build() {
    for (const KnownPoint& k : known_) built_.control.push_back(net_point(k));
    for (auto& [name, shots] : setups()) add_setup(name, shots);
    if (!problems_.empty()) throw Refusal(std::move(problems_));
    return std::move(built_);
  }

 private:
  // Whole metres near the known points: squares of seven-digit coordinates would lose millimetres.
  GridPoint origin() const {
    double e = 0, n = 0, count = 0;
    for (const KnownPoint& k : known_)
      if (k.at) {
        e += k.at->easting.in_metres();
        n += k.at->northing.in_metres();
        ++count;
      }
    if (count == 0) return {};
    return grid_point(std::round(e / count), std::round(n / count));
  }

  NetPoint net_point(const KnownPoint& k) const {
    NetPoint p;
    p.name = k.name;
    if (k.at) {
      p.plan_known = p.placed = true;
      p.e = (k.at->easting - built_.origin.easting).in_metres();
      p.n = (k.at->northing - built_.origin.northing).in_metres();
      p.sigma_plan = k.sigma_plan.in_metres();
    }
    if (k.height) {
      p.height_known = p.levelled = true;
      p.h = k.height->in_metres();
      p.sigma_height = k.sigma_height.in_metres();
    }
    return p;
  }

  std::vector<std::pair<std::string, std::vector<StationShot>>> setups() const {
    std::vector<std::pair<std::string, std::vector<StationShot>>> list;
    std::map<std::string, std::size_t> at;
    for (const StationShot& shot : input_.stations) {
      const auto [number, fresh] = at.try_emplace(shot.setup, list.size());
      if (fresh) list.push_back({shot.setup, {}});
      list[number->second].second.push_back(shot);
    }
    return list;
  }

  std::size_t point(const std::string& name) {
    const auto [at, fresh] = by_name_.try_emplace(name, built_.net.points.size());
    if (!fresh) return at->second;
    const auto known = std::find_if(known_.begin(), known_.end(),
                                    [&](const KnownPoint& k) { return k.name == name; });
    NetPoint p;
    p.name = name;
    built_.net.points.push_back(known != known_.end() ? net_point(*known) : p);
    return at->second;
  }

  void add_setup(const std::string& name, const std::vector<StationShot>& shots) {
    NetSetup setup;
    setup.name = name;
    setup.place = shots.front().place;
    // a free station without a name of its own is called by its set-up
    setup.station = point(shots.front().station.empty() ? "set-up " + name : shots.front().station);
    setup.instrument_height = shots.front().instrument_height.in_metres();
    const PointingSigmas sigmas{*input_.sigma_direction, *input_.sigma_zenith,
                                *input_.sigma_distance};
    FacesReduced faces = reduce_faces(shots, sigmas);
    head_.findings.insert(head_.findings.end(), faces.findings.begin(), faces.findings.end());
    for (std::size_t i = 0; i < faces.sights.size(); ++i) add_sight(setup, faces.sights[i], i);
    built_.one_face.push_back(!faces.errors);
    built_.net.setups.push_back(std::move(setup));
    built_.faces.push_back(std::move(faces));
  }

  void add_sight(NetSetup& setup, const Sight& from, std::size_t source) {
    NetSight s;
    s.setup = built_.net.setups.size();
    s.target = point(from.target);
    if (s.target == setup.station) {
      problems_.push_back({ProblemKind::Input, from.places.front(),
                           "target " + quoted(from.target) + " is the station itself",
                           "another point", kBookRemedy});
      return;
    }
    s.direction = from.direction.in_radians();
    const double times = std::sqrt(static_cast<double>(from.readings));
    s.sigma_direction = input_.sigma_direction->in_radians() / times;
    s.sigma_zenith = input_.sigma_zenith->in_radians() / times;
    if (from.zenith) s.zenith = from.zenith->in_radians();
    if (from.slope) {
      s.slope = from.slope->in_metres();
      const double per_length =
          input_.sigma_distance_per_length.value_or(Ratio{}).value() * *s.slope;
      s.sigma_slope = std::hypot(input_.sigma_distance->in_metres(), per_length) / times;
    }
    s.target_height = from.target_height.in_metres();
    s.source = source;
    s.places = from.places;
    setup.sights.push_back(built_.net.sights.size());
    built_.net.sights.push_back(std::move(s));
  }

  const FieldInput& input_;
  const std::vector<KnownPoint>& known_;
  ResultHead& head_;
  BuiltNet built_;
  std::map<std::string, std::size_t> by_name_;
  std::vector<Problem> problems_;
};

Problem unplaced(const Net& net, std::size_t s) {
  const NetSetup& setup = net.setups[s];
  const NetPoint& station = net.points[setup.station];
  std::size_t placed = 0;
  for (std::size_t i = 0; i < net.points.size(); ++i)
    placed += net.points[i].placed &&
                      std::any_of(setup.sights.begin(), setup.sights.end(),
                                  [&](std::size_t k) { return net.sights[k].target == i; })
                  ? 1U
                  : 0U;
  const std::string at = "set-up " + quoted(setup.name);
  if (station.placed)
    return {ProblemKind::Input, setup.place, at + " sights no point of known place",
            "a backsight to a control point, or to a point fixed from another set-up", kBookRemedy};
  if (on_danger_circle(net, s))
    return {ProblemKind::Input, setup.place,
            at + " stands on the danger circle through its targets: directions alone do not fix it",
            "a distance, or a target off the circle", "sight another point and add it"};
  return {ProblemKind::Input, setup.place,
          at + ": station " + quoted(station.name) + " is not known and " + std::to_string(placed) +
              (placed == 1 ? " target of known place does" : " targets of known place do") +
              " not fix it",
          "two known targets with distance, or three with directions", kBookRemedy};
}

}  // namespace

BuiltNet build_net(const FieldInput& input, const std::vector<KnownPoint>& known,
                   ResultHead& head) {
  return NetBuilder(input, known, head).build();
}

Shape local_shape(const WorkScale& work, GridPoint origin) {
  return {work.earth, work.separation.in_metres(),
          [scale = work.grid_over_arc, origin](double e, double n, double height) {
            return scale({origin.easting + Length::metres(e), origin.northing + Length::metres(n)},
                         Length::metres(height))
                .value();
          }};
}

void refuse_unplaced(const Net& net) {
  std::vector<Problem> problems;
  for (std::size_t s = 0; s < net.setups.size(); ++s)
    if (!net.setups[s].placed) problems.push_back(unplaced(net, s));
  if (!problems.empty()) throw Refusal(std::move(problems));
}

}  // namespace squaredig::field
