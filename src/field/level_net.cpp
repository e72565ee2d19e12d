#include "field/level_net.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "adjust/snooping.h"
#include "quantity/number_text.h"

namespace squaredig::field {
namespace {

std::string where(const Place& place) { return place.file + ":" + std::to_string(place.line); }
std::string millimetres(double m) { return fixed(m * 1000, 1) + " mm"; }

struct NetPoint {
  std::string name;
  std::optional<double> known;
  std::optional<std::size_t> unknown;
  bool reached = false;
  Place place;
};

class LevelNet {
 public:
  LevelNet(const FieldInput& input, ResultHead& head)
      : input_(input), head_(head), runs_(open_level_book(input.levels)) {}

  LevelResult reduce() {
    for (const Run& run : runs_)
      head_.findings.insert(head_.findings.end(), run.findings.begin(), run.findings.end());
    gather_points();
    refuse_hanging();
    adjust_stands();
    tell_runs();
    tell_points();
    return std::move(result_);
  }

 private:
  std::size_t point(const StaffReading& reading) {
    const auto [at, fresh] = by_name_.try_emplace(reading.point, points_.size());
    if (fresh) {
      NetPoint p{reading.point, {}, {}, false, reading.place};
      if (const auto i = input_.control.find(reading.point);
          i && input_.control.points[*i].has_height)
        p.known = input_.control.points[*i].at.height.in_metres();
      points_.push_back(p);
    }
    return at->second;
  }

  void gather_points() {
    by_length_ = true;
    for (const Run& run : runs_)
      for (const Stand& stand : run.stands) {
        point(stand.back);
        if (!stand.fore) continue;
        point(*stand.fore);
        by_length_ = by_length_ && stand.distance && *stand.distance > Length{};
      }
    if (!by_length_)
      head_.assumed.push_back(
          "level book: weights by number of stands, as not every stand has its levelled length");
  }

  // Every point must be reached from a known height.
  void refuse_hanging() {
    for (NetPoint& p : points_) p.reached = p.known.has_value();
    for (bool more = true; more;) {
      more = false;
      for (const Run& run : runs_)
        for (const Stand& stand : run.stands) {
          if (!stand.fore) continue;
          NetPoint& a = points_[point(stand.back)];
          NetPoint& b = points_[point(*stand.fore)];
          more = more || a.reached != b.reached;
          a.reached = b.reached = a.reached || b.reached;
        }
    }
    std::vector<Problem> problems;
    for (const Run& run : runs_)
      if (!points_[point(run.first())].reached)
        problems.push_back(
            {ProblemKind::Input, run.first().place,
             "a level run from " + quoted(run.first().point) + " that meets no known height",
             "a start or an end among the control points, with a height",
             "add the mark to the control file"});
    if (!problems.empty()) throw Refusal(std::move(problems));
  }

  double kilometres(const Stand& stand) const {
    return by_length_ ? stand.distance->in_metres() / 1000 : 1;
  }

  double sigma_of(const Stand& stand) const {
    const double per_root =
        input_.sigma_level && by_length_ ? input_.sigma_level->in_metres() : 0.001;
    return per_root * std::sqrt(kilometres(stand));
  }

  bool sigmas_known() const { return input_.sigma_level && by_length_; }

  void adjust_stands() {
    std::size_t unknowns = 0;
    for (NetPoint& p : points_)
      if (!p.known) p.unknown = unknowns++;
    // heights near the first known one: differences keep their digits
    for (const NetPoint& p : points_)
      if (p.known) datum_ = *p.known;
    for (const Run& run : runs_)
      for (const Stand& stand : run.stands) {
        if (!stand.fore) continue;
        adjust::Equation e{{}, stand.rise().in_metres(), sigma_of(stand)};
        add(e, points_[point(*stand.fore)], 1);
        add(e, points_[point(stand.back)], -1);
        stands_.push_back(&stand);
        equations_.push_back(std::move(e));
      }
    if (unknowns > 0) estimates_ = adjust::least_squares(unknowns, equations_);
    if (!estimates_) return;
    result_.redundancy = estimates_->freedom;
    result_.sigma0 = estimates_->sigma0();
    tell_residuals();
    if (sigmas_known()) test();
  }

  void tell_residuals() {
    for (std::size_t i = 0; i < stands_.size(); ++i) {
      const Stand& stand = *stands_[i];
      const adjust::Tested& t = estimates_->observations[i];
      result_.residuals.push_back(
          {stand.back.point, stand.fore->point, stand.rise(), Length::metres(t.residual),
           t.redundancy, sigmas_known() ? t.normalised : std::nullopt, stand.fore->place});
    }
  }

  void add(adjust::Equation& e, const NetPoint& p, double sign) const {
    if (p.known)
      e.observed -= sign * (*p.known - datum_);
    else
      e.terms.push_back({*p.unknown, sign});
  }

  void test() {
    if (adjust::global_test(*estimates_, kTests.alpha) == adjust::GlobalTest::Failed)
      head_.findings.push_back({"level-net",
                                "level book: the residuals are larger than the stated "
                                "standard deviation allows: " +
                                    fixed(*result_.sigma0, 2) + " times"});
    const auto worst = adjust::most_suspect(*estimates_, kTests.critical);
    if (!worst) return;
    const auto group = adjust::alike(*estimates_, equations_, *worst, kTests.alike);
    std::string lines;
    for (const std::size_t i : group)
      lines += (lines.empty() ? "" : ", ") + where(stands_[i]->fore->place);
    head_.findings.push_back(
        {"level-blunder",
         "level book: a misfit of " + millimetres(*estimates_->observations[*worst].gross_error) +
             " at " + lines + (group.size() > 1 ? ": these stands cannot be told apart" : "")});
  }

  double height_of(const NetPoint& p) const {
    if (p.known) return *p.known;
    return datum_ + estimates_->unknowns[*p.unknown];
  }

  // Nothing where neither the job nor the residuals give a standard deviation.
  std::optional<double> unit() const {
    if (sigmas_known()) return 1;
    return result_.sigma0;
  }

  std::optional<Length> sigma_of(const NetPoint& p) const {
    if (p.known) return Length{};
    if (!unit()) return std::nullopt;
    return Length::metres(*unit() * std::sqrt(estimates_->covariance(*p.unknown, *p.unknown)));
  }

  void tell_runs() {
    for (const Run& run : runs_) {
      LevelRun told;
      const StaffReading* const last = run.last();
      told.from = run.first().point;
      told.to = last != nullptr ? last->point : run.stands.back().between.back().point;
      told.setups = run.stands.size();
      told.page = run.page;
      told.place = run.first().place;
      result_.page_check = result_.page_check && run.page.agrees;
      bool all = true;
      Length distance;
      for (const Stand& stand : run.stands) {
        if (stand.fore) told.rise += stand.rise();
        if (stand.fore && stand.distance) distance += *stand.distance;
        all = all && (!stand.fore || stand.distance);
      }
      if (all && last != nullptr) told.distance = distance;
      if (last != nullptr) close(told);
      result_.runs.push_back(std::move(told));
    }
  }

  void close(LevelRun& run) {
    const NetPoint& from = points_[by_name_.at(run.from)];
    const NetPoint& to = points_[by_name_.at(run.to)];
    if (run.from == run.to)
      run.misclosure = run.rise;
    else if (from.known && to.known)
      run.misclosure = run.rise - Length::metres(*to.known - *from.known);
    if (!run.misclosure || !input_.level_misclosure) return;
    if (!run.distance) {
      head_.cautions.push_back(where(run.place) + ": the run from " + quoted(run.from) + " to " +
                               quoted(run.to) +
                               " has no levelled length at every foresight: its misclosure is not "
                               "judged");
      return;
    }
    run.allowed = *input_.level_misclosure * std::sqrt(run.distance->in_metres() / 1000);
    run.verdict =
        abs(*run.misclosure) <= *run.allowed ? Verdict::Conforms : Verdict::DoesNotConform;
    if (run.verdict == Verdict::DoesNotConform)
      head_.findings.push_back(
          {"level-misclosure", where(run.place) + ": the run from " + quoted(run.from) + " to " +
                                   quoted(run.to) + " misses by " +
                                   millimetres(run.misclosure->in_metres()) + "; allowed are " +
                                   millimetres(run.allowed->in_metres())});
  }

  void tell_points() {
    for (const NetPoint& p : points_)
      result_.points.push_back(
          {p.name, Elevation::metres(height_of(p)), sigma_of(p), p.known.has_value(), p.place});
    for (const Run& run : runs_)
      for (const Stand& stand : run.stands)
        for (const StaffReading& sight : stand.between) side(stand, sight);
    for (auto& [name, seen] : sides_) tell_side(name, seen);
  }

  struct Seen {
    std::vector<double> heights;
    std::optional<double> variance;
    Place place;
  };

  // Collimation from both ends of the stand, where it has two.
  void side(const Stand& stand, const StaffReading& sight) {
    const NetPoint& back = points_[by_name_.at(stand.back.point)];
    double collimation = height_of(back) + stand.back.reading.in_metres();
    if (stand.fore) {
      const NetPoint& fore = points_[by_name_.at(stand.fore->point)];
      collimation = (collimation + height_of(fore) + stand.fore->reading.in_metres()) / 2;
    }
    Seen& seen = sides_[sight.point];
    if (seen.heights.empty()) {
      seen.place = sight.place;
      order_.push_back(sight.point);
    }
    seen.heights.push_back(collimation - sight.reading.in_metres());
    if (const auto s = sigma_of(back); s && unit()) {
      const double own = stand.fore ? *unit() * sigma_of(stand) : 0;
      seen.variance = s->in_metres() * s->in_metres() + own * own;
    }
  }

  void tell_side(const std::string& name, const Seen& seen) {
    double mean = 0;
    for (const double h : seen.heights) mean += h / static_cast<double>(seen.heights.size());
    const auto sigma =
        seen.variance ? std::optional(Length::metres(std::sqrt(*seen.variance))) : std::nullopt;
    std::optional<double> elsewhere;
    if (const auto at = by_name_.find(name); at != by_name_.end())
      elsewhere = height_of(points_[at->second]);
    else if (const auto i = input_.control.find(name); i && input_.control.points[*i].has_height)
      elsewhere = input_.control.points[*i].at.height.in_metres();
    const double spread = elsewhere
                              ? mean - *elsewhere
                              : *std::max_element(seen.heights.begin(), seen.heights.end()) -
                                    *std::min_element(seen.heights.begin(), seen.heights.end());
    if (sigma && *sigma > Length{} &&
        std::abs(spread) > kTests.critical * std::sqrt(2.0) * sigma->in_metres())
      head_.findings.push_back({"level-disagrees", where(seen.place) + ": sights to " +
                                                       quoted(name) + " differ by " +
                                                       millimetres(spread)});
    if (!elsewhere)
      result_.points.push_back({name, Elevation::metres(mean), sigma, false, seen.place});
  }

  const FieldInput& input_;
  ResultHead& head_;
  std::vector<Run> runs_;
  std::map<std::string, std::size_t> by_name_;
  std::vector<NetPoint> points_;
  std::vector<adjust::Equation> equations_;
  std::vector<const Stand*> stands_;
  std::optional<adjust::Estimates> estimates_;
  std::map<std::string, Seen> sides_;
  std::vector<std::string> order_;
  bool by_length_ = true;
  double datum_ = 0;
  LevelResult result_;
};

}  // namespace

LevelResult reduce_levels(const FieldInput& input, const Earth& earth, ResultHead& head) {
  LevelResult result;
  if (!input.levels.empty()) result = LevelNet(input, head).reduce();
  if (!input.two_peg.empty()) result.collimation = two_peg_test(input.two_peg, earth);
  return result;
}

}  // namespace squaredig::field
