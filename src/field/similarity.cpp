#include "field/similarity.h"

#include <algorithm>
#include <cmath>

#include "adjust/distributions.h"
#include "adjust/snooping.h"
#include "quantity/number_text.h"

namespace squaredig::field {
namespace {

constexpr double kAlphaWithoutSigma = 0.01;  // fewer pairs, and their own residuals as the measure

struct Two {
  double x = 0, y = 0;
};

Two local(GridPoint p, GridPoint origin) {
  return {(p.easting - origin.easting).in_metres(), (p.northing - origin.northing).in_metres()};
}

GridPoint centroid(std::span<const PointPair> pairs, bool site) {
  const GridPoint first = site ? pairs[0].site : *pairs[0].measured;
  Two sum;
  for (const PointPair& p : pairs) {
    const Two d = local(site ? p.site : *p.measured, first);
    sum.x += d.x / static_cast<double>(pairs.size());
    sum.y += d.y / static_cast<double>(pairs.size());
  }
  return {first.easting + Length::metres(sum.x), first.northing + Length::metres(sum.y)};
}

// One pair's equations; `of` tells which pair each stands for.
struct System {
  std::size_t unknowns = 0;
  std::vector<adjust::Equation> equations;
  std::vector<std::size_t> of;
};

struct Judged {
  std::optional<adjust::Estimates> estimates;
  std::vector<bool> fits;  // by pair
};

std::optional<adjust::Estimates> solved(const System& s, const std::vector<bool>& used) {
  std::vector<adjust::Equation> rows;
  for (std::size_t i = 0; i < s.equations.size(); ++i)
    if (used[s.of[i]]) rows.push_back(s.equations[i]);
  return adjust::least_squares(s.unknowns, rows);
}

// How unlikely chance is to let the sum of squares drop so by leaving one pair out.
bool stands_out(const adjust::Estimates& with, const adjust::Estimates& without, bool sigmas,
                std::size_t pairs) {
  const auto gone = static_cast<double>(with.freedom - without.freedom);
  const double drop = with.sum_of_squares - without.sum_of_squares;
  if (sigmas) return drop > adjust::chi_square_quantile(1 - kTests.alpha, gone);
  if (without.freedom == 0) return false;
  const double alpha = kAlphaWithoutSigma / static_cast<double>(pairs);
  const double rest =
      std::max(without.sum_of_squares / static_cast<double>(without.freedom), 1e-12);
  return drop / gone / rest >
         adjust::fisher_quantile(1 - alpha, gone, static_cast<double>(without.freedom));
}

// Leaves out, one after the other, the pair without which the others agree best.
Judged judged(const System& s, std::size_t pairs, bool sigmas) {
  Judged out{solved(s, std::vector<bool>(pairs, true)), std::vector<bool>(pairs, true)};
  while (out.estimates && out.estimates->freedom > 0) {
    std::optional<std::size_t> worst;
    std::optional<adjust::Estimates> best;
    for (std::size_t i = 0; i < pairs; ++i) {
      if (!out.fits[i]) continue;
      auto used = out.fits;
      used[i] = false;
      auto without = solved(s, used);
      if (without && without->freedom < out.estimates->freedom &&
          (!best || without->sum_of_squares < best->sum_of_squares)) {
        best = std::move(without);
        worst = i;
      }
    }
    // with nothing left to check the others, which pair is wrong cannot be told
    if (!worst || best->freedom == 0 || !stands_out(*out.estimates, *best, sigmas, pairs)) break;
    out.fits[*worst] = false;
    out.estimates = std::move(best);
  }
  return out;
}

class Fitter {
 public:
  Fitter(std::span<const PointPair> pairs, const Place& place, std::vector<Finding>& findings)
      : pairs_(pairs), place_(place), findings_(findings) {
    if (pairs.size() < 2)
      refuse(place, "a fit from " + std::to_string(pairs.size()) + " pair of points",
             "two pairs or more", "add pairs, or take the fit out");
    sigmas_ = std::all_of(pairs.begin(), pairs.end(), [](const auto& p) { return p.sigma; });
    from_ = centroid(pairs, false);
    to_ = centroid(pairs, true);
  }

  FitResult fit() {
    plan();
    height();
    residuals();
    return std::move(out_);
  }

 private:
  double sigma(const PointPair& p) const { return sigmas_ ? p.sigma->in_metres() : 1; }

  void plan() {
    System s{4, {}, {}};
    for (std::size_t i = 0; i < pairs_.size(); ++i) {
      const Two m = local(*pairs_[i].measured, from_), t = local(pairs_[i].site, to_);
      const double w = sigma(pairs_[i]);
      s.equations.push_back({{{0, m.x}, {1, m.y}, {2, 1}}, t.x, w});
      s.equations.push_back({{{0, m.y}, {1, -m.x}, {3, 1}}, t.y, w});
      s.of.insert(s.of.end(), {i, i});
    }
    const Judged j = judged(s, pairs_.size(), sigmas_);
    if (!j.estimates)
      refuse(place_, "pairs that stand at one place", "pairs well apart from each other",
             "add pairs at the edges of the work");
    fits_ = j.fits;
    const auto& x = j.estimates->unknowns;
    out_.scale = std::hypot(x[0], x[1]);
    out_.rotation = Angle::radians(std::atan2(x[1], x[0]));
    const Two origin{-(from_.easting - Easting{}).in_metres(),
                     -(from_.northing - Northing{}).in_metres()};
    out_.east =
        (to_.easting - Easting{}) + Length::metres(x[2] + x[0] * origin.x + x[1] * origin.y);
    out_.north =
        (to_.northing - Northing{}) + Length::metres(x[3] - x[1] * origin.x + x[0] * origin.y);
    if (const auto s0 = j.estimates->sigma0()) out_.sigma0_m = sigmas_ ? *s0 * mean_sigma() : *s0;
    test(*j.estimates, "plan");
  }

  double mean_sigma() const {
    double sum = 0;
    for (const PointPair& p : pairs_) sum += sigma(p) / static_cast<double>(pairs_.size());
    return sum;
  }

  void test(const adjust::Estimates& estimates, const char* what) {
    if (sigmas_ && adjust::global_test(estimates, kTests.alpha) == adjust::GlobalTest::Failed)
      findings_.push_back({"fit", std::string("the fit to the site grid misses in ") + what +
                                      " by " + fixed(*estimates.sigma0(), 1) +
                                      " times the stated standard deviations"});
  }

  void height() {
    std::vector<std::size_t> with;
    for (std::size_t i = 0; i < pairs_.size(); ++i)
      if (pairs_[i].measured_height && pairs_[i].site_height) with.push_back(i);
    if (with.empty()) return;
    const System shift = height_system(with, 1), plane = height_system(with, 3);
    const Judged flat = judged(shift, with.size(), sigmas_);
    Judged tilted;
    if (with.size() > 3) tilted = judged(plane, with.size(), sigmas_);
    const bool tilt =
        tilted.estimates && tilted.estimates->freedom > 0 && tilt_needed(shift, tilted);
    const Judged& taken = tilt ? tilted : flat;
    for (std::size_t i = 0; i < with.size(); ++i)
      if (!taken.fits[i]) fits_[with[i]] = false;
    out_.vertical_shift = Length::metres(taken.estimates->unknowns[0]);
    out_.tilt_about = to_;
    if (tilt) out_.tilt = {taken.estimates->unknowns[1], taken.estimates->unknowns[2]};
    test(*taken.estimates, "height");
  }

  System height_system(const std::vector<std::size_t>& with, std::size_t unknowns) const {
    System s{unknowns, {}, {}};
    for (std::size_t i = 0; i < with.size(); ++i) {
      const PointPair& p = pairs_[with[i]];
      const Two t = local(p.site, to_);
      adjust::Equation e{{{0, 1}}, (*p.site_height - *p.measured_height).in_metres(), sigma(p)};
      if (unknowns == 3) e.terms.insert(e.terms.end(), {{1, t.x}, {2, t.y}});
      s.equations.push_back(std::move(e));
      s.of.push_back(i);
    }
    return s;
  }

  // A tilt is taken only where a shift of the same pairs is worse by more than chance.
  bool tilt_needed(const System& shift, const Judged& tilted) const {
    const auto flat = solved(shift, tilted.fits);
    return flat && stands_out(*flat, *tilted.estimates, sigmas_, 1);
  }

  void residuals() {
    for (std::size_t i = 0; i < pairs_.size(); ++i) {
      const PointPair& p = pairs_[i];
      const GridPoint at = to_site(out_, *p.measured);
      PairResidual r{
          p.point, at.easting - p.site.easting, at.northing - p.site.northing, {}, fits_[i],
          p.place};
      if (p.measured_height && p.site_height)
        r.height = to_site(out_, p.site, *p.measured_height) - *p.site_height;
      if (!r.fits) name(r);
      out_.residuals.push_back(std::move(r));
    }
  }

  void name(const PairResidual& r) {
    std::string text = r.place.file + ":" + std::to_string(r.place.line) + ": pair " +
                       quoted(r.point) + " does not fit: " + fixed(r.east.in_millimetres(), 1) +
                       " mm east, " + fixed(r.north.in_millimetres(), 1) + " mm north";
    if (r.height) text += ", " + fixed(r.height->in_millimetres(), 1) + " mm up";
    findings_.push_back({"fit-pair", text + "; it is left out"});
  }

  std::span<const PointPair> pairs_;
  const Place& place_;
  std::vector<Finding>& findings_;
  bool sigmas_ = false;
  GridPoint from_, to_;
  std::vector<bool> fits_;
  FitResult out_;
};

}  // namespace

FitResult fit_to_site(std::span<const PointPair> pairs, const Place& place,
                      std::vector<Finding>& findings) {
  return Fitter(pairs, place, findings).fit();
}

GridPoint to_site(const FitResult& fit, GridPoint measured) {
  const double c = fit.scale * cosine(fit.rotation), s = fit.scale * sine(fit.rotation);
  const Length x = measured.easting - Easting{}, y = measured.northing - Northing{};
  return {Easting{} + fit.east + x * c + y * s, Northing{} + fit.north + y * c - x * s};
}

Elevation to_site(const FitResult& fit, GridPoint site, Elevation measured) {
  Elevation h = measured + fit.vertical_shift.value_or(Length{});
  if (fit.tilt)
    h = h + (site.easting - fit.tilt_about.easting) * (*fit.tilt)[0] +
        (site.northing - fit.tilt_about.northing) * (*fit.tilt)[1];
  return h;
}

Covariance to_site(const FitResult& fit, const Covariance& m) {
  const double c = fit.scale * cosine(fit.rotation), s = fit.scale * sine(fit.rotation);
  return {c * c * m.ee + 2 * c * s * m.en + s * s * m.nn,
          c * s * (m.nn - m.ee) + (c * c - s * s) * m.en,
          s * s * m.ee - 2 * c * s * m.en + c * c * m.nn,
          c * m.eh + s * m.nh,
          c * m.nh - s * m.eh,
          m.hh};
}

}  // namespace squaredig::field
