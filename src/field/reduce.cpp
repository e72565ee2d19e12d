#include "field/reduce.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "field/ellipse.h"
#include "field/gnss.h"
#include "field/level_net.h"
#include "field/similarity.h"
#include "field/total_station.h"
#include "quantity/number_text.h"

namespace squaredig::field {
namespace {

std::string where(const Place& place) { return place.file + ":" + std::to_string(place.line); }

class Reducer {
 public:
  Reducer(const FieldInput& input, ResultHead head) : input_(input) { out_.head = std::move(head); }

  FieldResult reduce() {
    if (!input_.gnss.empty()) gnss();
    work();
    if (!input_.levels.empty() || !input_.two_peg.empty())
      out_.levels = reduce_levels(input_, work_->earth, out_.head);
    gather_known();
    if (!input_.stations.empty()) stations();
    levelled();
    ellipses();
    return std::move(out_);
  }

 private:
  void gnss() {
    GnssReduced reduced = reduce_gnss(input_, out_.head);
    if (input_.fit) move(reduced.points);
    const bool fitted_up = out_.fit && out_.fit->vertical_shift;
    if (reduced.heights_are_ellipsoidal && !fitted_up)
      refuse(input_.place, "GNSS heights above the ellipsoid without a geoid file",
             "[grid] geoid, or pairs with heights in [field] fit",
             "name a geoid file: the two kinds of height differ by tens of metres");
    out_.gnss = std::move(reduced.told);
    out_.withheld = std::move(reduced.withheld);
    for (ReducedPoint& p : reduced.points) {
      if (const auto i = input_.control.find(p.point))
        against_control(p, *i);
      else
        out_.points.push_back(std::move(p));
    }
  }

  // A point that control knows is a check, not a result.
  void against_control(const ReducedPoint& p, std::size_t i) {
    const SurveyPoint& c = input_.control.points[i];
    const Length plan = distance(p.at, c.at.at);
    std::string text = where(p.place) + ": GNSS puts control point " + quoted(p.point) + " " +
                       fixed(plan.in_millimetres(), 1) + " mm away in plan";
    double most = 0, most_up = 0;
    if (p.covariance) {
      most = 3.7169 * std::sqrt(std::max(p.covariance->ee, p.covariance->nn) +
                                std::pow(c.sigma_plan().value_or(Length{}).in_metres(), 2));
      most_up = 3.2905 * std::sqrt(p.covariance->hh +
                                   std::pow(c.sigma_height().value_or(Length{}).in_metres(), 2));
    }
    bool beyond = p.covariance && plan.in_metres() > most;
    if (c.has_height && p.height) {
      const Length up = *p.height - c.at.height;
      text += ", " + fixed(up.in_millimetres(), 1) + " mm up";
      beyond = beyond || (p.covariance && std::abs(up.in_metres()) > most_up);
    }
    if (beyond)
      out_.head.findings.push_back({"gnss-control", text});
    else
      out_.head.cautions.push_back(text);
  }

  // Fits to the pairs, and moves the points onto the site grid.
  void move(std::vector<ReducedPoint>& points) {
    std::vector<PointPair> pairs = *input_.fit;
    std::vector<Problem> problems;
    for (PointPair& pair : pairs) complete(pair, points, problems);
    if (!problems.empty()) throw Refusal(std::move(problems));
    out_.fit = fit_to_site(pairs, input_.place, out_.head.findings);
    for (ReducedPoint& p : points) {
      p.at = to_site(*out_.fit, p.at);
      if (p.height) p.height = to_site(*out_.fit, p.at, *p.height);
      if (p.covariance) p.covariance = to_site(*out_.fit, *p.covariance);
    }
  }

  // What a pair leaves out comes from the reduced point of its name.
  static void complete(PointPair& pair, const std::vector<ReducedPoint>& points,
                       std::vector<Problem>& problems) {
    const auto found = std::find_if(points.begin(), points.end(),
                                    [&](const ReducedPoint& p) { return p.point == pair.point; });
    if (!pair.measured && found == points.end()) {
      problems.push_back({ProblemKind::Input, pair.place,
                          "pair " + quoted(pair.point) + " without measured coordinates",
                          "measured_easting and measured_northing, or a point of that name in the "
                          "field books",
                          "fill them in, or correct the name"});
      return;
    }
    if (found == points.end() || pair.measured) return;
    pair.measured = found->at;
    if (!pair.measured_height) pair.measured_height = found->height;
    if (!pair.sigma && found->covariance)
      pair.sigma = Length::metres(
          std::sqrt(std::max({found->covariance->ee, found->covariance->nn, 1e-12})));
  }

  // The place of work is where control lies, or what GNSS gave.
  void work() {
    std::vector<GridPoint> places;
    for (const SurveyPoint& p : input_.control.points) places.push_back(p.at.at);
    if (places.empty())
      for (const ReducedPoint& p : out_.points) places.push_back(p.at);
    if (places.empty() && !input_.stations.empty())
      refuse(input_.place, "a total-station book without control points",
             "[control] points, or GNSS points", "name the control file");
    FieldInput settings;
    settings.crs = input_.crs;
    settings.geoid = input_.geoid;
    settings.scale_factor = input_.scale_factor;
    settings.refraction = input_.refraction;
    settings.place = input_.place;
    if (places.empty()) settings.crs = std::nullopt;
    GridPoint near = places.empty() ? GridPoint{} : places.front();
    for (const GridPoint& p : places) {
      const auto share = static_cast<double>(places.size());
      near.easting = near.easting + (p.easting - places.front().easting) / share;
      near.northing = near.northing + (p.northing - places.front().northing) / share;
    }
    ResultHead told;
    work_ = work_scale(settings, near, told);
    const bool used = !input_.stations.empty() || !input_.two_peg.empty();
    if (used)
      out_.head.assumed.insert(out_.head.assumed.end(), told.assumed.begin(), told.assumed.end());
  }

  void gather_known() {
    for (std::size_t i = 0; i < input_.control.size(); ++i) {
      const SurveyPoint& p = input_.control.points[i];
      KnownPoint known{std::string(input_.control.label(i)),
                       p.at.at,
                       {},
                       p.sigma_plan().value_or(Length{}),
                       p.sigma_height().value_or(Length{})};
      if (p.has_height) known.height = p.at.height;
      known_.push_back(std::move(known));
    }
    for (const ReducedPoint& p : out_.points)
      if (p.covariance)
        known_.push_back({p.point, p.at, p.height, Length::metres(std::sqrt(p.covariance->ee)),
                          Length::metres(std::sqrt(p.covariance->hh))});
    if (out_.levels) take_levelled_heights();
  }

  // Levelling gives height to points that have none; it stands before a height by GNSS.
  void take_levelled_heights() {
    for (const LevelledPoint& l : out_.levels->points) {
      if (l.known) continue;
      const auto at = std::find_if(known_.begin(), known_.end(),
                                   [&](const KnownPoint& k) { return k.name == l.point; });
      const Length sigma = l.sigma.value_or(Length{});
      if (at == known_.end()) {
        known_.push_back({l.point, {}, l.height, {}, sigma});
      } else {
        at->height = l.height;
        at->sigma_height = sigma;
      }
    }
  }

  void stations() {
    tell_wavelength();
    StationsReduced reduced = reduce_stations(input_, known_, *work_, out_.head);
    if (input_.fit && input_.gnss.empty()) {
      move(reduced.points);
      for (SetupResult& s : reduced.setups) {
        s.at = to_site(*out_.fit, s.at);
        if (s.height) s.height = to_site(*out_.fit, s.at, *s.height);
        if (s.covariance) s.covariance = to_site(*out_.fit, *s.covariance);
        s.orientation = s.orientation + out_.fit->rotation;
      }
    }
    out_.setups = std::move(reduced.setups);
    out_.withheld.insert(out_.withheld.end(), reduced.withheld.begin(), reduced.withheld.end());
    for (ReducedPoint& p : reduced.points) {
      const auto by_gnss = std::find_if(out_.points.begin(), out_.points.end(),
                                        [&](const ReducedPoint& q) { return q.point == p.point; });
      if (by_gnss != out_.points.end()) {
        beside_gnss(p, *by_gnss);
        out_.points.erase(by_gnss);
      }
      out_.points.push_back(std::move(p));
    }
  }

  // GNSS without standard deviations holds nothing; a point that the total station sights too is
  // its.
  void beside_gnss(ReducedPoint& p, const ReducedPoint& by_gnss) {
    std::string text = where(by_gnss.place) + ": GNSS puts point " + quoted(p.point) + " " +
                       fixed(distance(p.at, by_gnss.at).in_millimetres(), 1) + " mm away in plan";
    if (p.height && by_gnss.height)
      text += ", " + fixed((*by_gnss.height - *p.height).in_millimetres(), 1) + " mm up";
    out_.head.cautions.push_back(text + ", from where " + where(p.place) +
                                 " has it, which is kept");
  }

  void tell_wavelength() {
    for (const StationShot& shot : input_.stations)
      if (shot.air && !shot.air->wavelength_um) {
        out_.head.assumed.push_back(
            "wavelength of distances 0.658 um, as the book does not say: "
            "another worth 0.2 ppm at most of a correction of 10 ppm");
        return;
      }
  }

  // Heights by level of points that have their plan from elsewhere.
  void levelled() {
    if (!out_.levels) return;
    for (const LevelledPoint& l : out_.levels->points) {
      if (l.known) continue;
      for (ReducedPoint& p : out_.points)
        if (p.point == l.point) take_height(p, l);
      const auto i = input_.control.find(l.point);
      if (!i) continue;
      const SurveyPoint& c = input_.control.points[*i];
      ReducedPoint p{l.point, std::string(input_.control.code(*i)), c.at.at, l.height,
                     {},      "control, height by level",           1,       l.place};
      if (l.sigma)
        p.covariance = Covariance{std::pow(c.sigma_plan().value_or(Length{}).in_metres(), 2),
                                  0,
                                  std::pow(c.sigma_plan().value_or(Length{}).in_metres(), 2),
                                  0,
                                  0,
                                  std::pow(l.sigma->in_metres(), 2)};
      out_.points.push_back(std::move(p));
    }
  }

  void ellipses() {
    for (ReducedPoint& p : out_.points)
      if (p.covariance) p.ellipse = error_ellipse(*p.covariance);
    for (SetupResult& s : out_.setups)
      if (s.covariance) s.ellipse = error_ellipse(*s.covariance);
  }

  void take_height(ReducedPoint& p, const LevelledPoint& l) {
    p.height = l.height;
    if (p.covariance) {
      p.covariance->eh = p.covariance->nh = 0;
      p.covariance->hh = std::pow(l.sigma.value_or(Length{}).in_metres(), 2);
    }
    p.from += ", height by level";
  }

  const FieldInput& input_;
  FieldResult out_;
  std::optional<WorkScale> work_;
  std::vector<KnownPoint> known_;
};

}  // namespace

FieldResult reduce(const FieldInput& input, ResultHead head) {
  return Reducer(input, std::move(head)).reduce();
}

}  // namespace squaredig::field
