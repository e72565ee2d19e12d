#include "field/total_station.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "field/net_build_internal.h"
#include "field/sideshots_internal.h"
#include "quantity/number_text.h"

namespace squaredig::field {
namespace {

double in_unit(Reading reading, double value) {
  return reading == Reading::Distance ? value * 1000 : Angle::radians(value).in_seconds();
}

class Reduction {
 public:
  Reduction(const FieldInput& input, const std::vector<KnownPoint>& known, const WorkScale& work,
            ResultHead& head)
      : head_(head),
        built_(build_net(input, known, head)),
        shape_(local_shape(work, built_.origin)) {}

  StationsReduced reduce() {
    place_net(built_.net, shape_);
    refuse_unplaced(built_.net);
    prepare_net(built_.net);
    for (const Net& part : parts_of(built_.net)) reduce_part(part);
    if (!problems_.empty()) throw Refusal(std::move(problems_));
    sort_setups();
    return std::move(out_);
  }

 private:
  void reduce_part(const Net& part) {
    Diagnosis d = diagnose(part, built_.control, shape_);
    if (!d.fit) {
      not_fixed(part);
      return;
    }
    head_.findings.insert(head_.findings.end(), d.findings.begin(), d.findings.end());
    for (std::size_t s = 0; s < part.setups.size(); ++s) tell_setup(part, d, s);
    const PartPoints points = points_of(part, *d.fit, d.unit, shape_, built_);
    head_.findings.insert(head_.findings.end(), points.findings.begin(), points.findings.end());
    out_.withheld.insert(out_.withheld.end(), points.withheld.begin(), points.withheld.end());
    for (const ReducedPoint& p : points.points) {
      if (d.withheld)
        out_.withheld.push_back({p.point, d.doubts.front(), p.place});
      else
        out_.points.push_back(p);
    }
  }

  void not_fixed(const Net& part) {
    for (std::size_t s = 0; s < part.setups.size(); ++s) {
      const NetSetup& setup = part.setups[s];
      const bool circle = on_danger_circle(part, s);
      problems_.push_back(
          {ProblemKind::Input, setup.place,
           "set-up " + quoted(setup.name) +
               (circle ? " stands on the danger circle through its targets"
                       : ": its readings do not fix its place, or one of them is far out"),
           circle ? "a distance, or a target off the circle"
                  : "known targets and distances that agree on one place",
           circle ? "sight another point and add it"
                  : "correct the names and angles of its sights, or add another sight"});
    }
  }

  void tell_setup(const Net& part, const Diagnosis& d, std::size_t s) {
    const NetSetup& setup = d.fit->net.setups[s];
    const NetPoint& station = d.fit->net.points[setup.station];
    const std::size_t whole = number_of(setup.name);
    SetupResult told;
    told.setup = setup.name;
    told.station = station.name;
    told.kind = part.setups[s].kind;
    told.at = on_grid(station, built_.origin);
    if (station.height_given) told.height = Elevation::metres(station.h);
    told.covariance = covariance_of(*d.fit, setup.station, d.unit);
    told.orientation = Bearing::degrees(Angle::radians(setup.orientation).in_degrees());
    told.faces = built_.faces[whole].errors;
    told.combined_factor = combined_factor(setup, station);
    told.doubts = d.doubts;
    told.place = setup.place;
    tell_residuals(d, s, told);
    cautions(part, told, s, built_.one_face[whole]);
    out_.setups.push_back(std::move(told));
  }

  std::size_t number_of(const std::string& setup) const {
    for (std::size_t s = 0; s < built_.net.setups.size(); ++s)
      if (built_.net.setups[s].name == setup) return s;
    return 0;
  }

  // Grid length over length at the instrument's height.
  Ratio combined_factor(const NetSetup& setup, const NetPoint& station) const {
    const double above = station.h + setup.instrument_height + shape_.separation;
    const double r = shape_.earth.radius.in_metres();
    return Ratio::of(shape_.scale(station.e, station.n, above) * r / (r + above));
  }

  void tell_residuals(const Diagnosis& d, std::size_t s, SetupResult& told) {
    double squares = 0;
    const double power = adjust::non_centrality(kTests.alpha, kTests.power);
    for (std::size_t i = 0; i < d.fit->observed.size(); ++i) {
      const Observed& o = d.fit->observed[i];
      if (o.sight >= d.fit->net.sights.size() || d.fit->net.sights[o.sight].setup != s) continue;
      const adjust::Tested& t = d.fit->estimates.observations[i];
      const double sigma = d.fit->equations[i].sigma;
      SightResidual r = residual_of(d.fit->net, o);
      r.residual = in_unit(o.reading, t.residual);
      r.redundancy = t.redundancy;
      r.normalised = t.normalised;
      if (const auto least = adjust::smallest_detectable(t, sigma, power))
        r.smallest_detectable = in_unit(o.reading, *least);
      r.greatest_correlation = greatest_correlation(*d.fit, i);
      told.redundancy += t.redundancy;
      squares += t.residual * t.residual / (sigma * sigma);
      told.residuals.push_back(std::move(r));
    }
    for (const Observed& o : d.left_out)
      if (d.fit->net.sights[o.sight].setup == s) {
        told.residuals.push_back(residual_of(d.fit->net, o));
        told.residuals.back().left_out = true;
      }
    constexpr double kChecked = 1e-6;
    if (told.redundancy > kChecked) told.sigma0 = std::sqrt(squares / told.redundancy);
  }

  // With the readings of other lines.
  static std::optional<double> greatest_correlation(const NetFit& fit, std::size_t i) {
    constexpr std::size_t kMost = 400;  // readings: it takes their square
    if (fit.observed.size() > kMost) return std::nullopt;
    std::optional<double> greatest;
    for (std::size_t j = 0; j < fit.observed.size(); ++j) {
      if (fit.observed[j].sight == fit.observed[i].sight) continue;
      const auto r = adjust::correlation(fit.estimates, fit.equations, i, j);
      if (r) greatest = std::max(greatest.value_or(0), std::abs(*r));
    }
    return greatest;
  }

  SightResidual residual_of(const Net& net, const Observed& o) const {
    SightResidual r;
    r.target = net.points[net.sights[o.sight].target].name;
    r.reading = o.reading;
    r.places = net.sights[o.sight].places;
    return r;
  }

  void cautions(const Net& part, const SetupResult& told, std::size_t s, bool one_face) {
    const std::string at = where(told.place) + ": set-up " + quoted(told.setup);
    if (one_face)
      head_.cautions.push_back(at +
                               " is read in one face: index and collimation errors of the "
                               "instrument are in its results");
    const bool checked = std::any_of(
        told.residuals.begin(), told.residuals.end(),
        [](const auto& r) { return r.reading == Reading::Direction && r.redundancy > 1e-6; });
    if (!checked) head_.cautions.push_back(at + ": nothing checks the direction of its circle");
    if (on_danger_circle(part, s))
      head_.findings.push_back(
          {"danger-circle", at +
                                " stands close to the danger circle through its targets: its place "
                                "is weak"});
  }

  void sort_setups() {
    std::stable_sort(out_.setups.begin(), out_.setups.end(), [&](const auto& a, const auto& b) {
      return number_of(a.setup) < number_of(b.setup);
    });
  }

  ResultHead& head_;
  BuiltNet built_;
  Shape shape_;
  StationsReduced out_;
  std::vector<Problem> problems_;
};

}  // namespace

StationsReduced reduce_stations(const FieldInput& input, const std::vector<KnownPoint>& known,
                                const WorkScale& work, ResultHead& head) {
  return Reduction(input, known, work, head).reduce();
}

}  // namespace squaredig::field
