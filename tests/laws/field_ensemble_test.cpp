// A thousand free stations with known truth: errors against the reported standard deviations, false
// alarms against the stated alpha, and planted blunders against what theory says is detectable.
#include <gtest/gtest.h>

#include <cmath>

#include "adjust/distributions.h"
#include "adjust/snooping.h"
#include "unit/field/made_book.h"

namespace squaredig::field {
namespace {

using testing::MadeBook;

constexpr unsigned kStations = 1000;
constexpr double kAlpha = 0.001;

// A free station among three to six control points round it.
class Site {
 public:
  explicit Site(unsigned seed) : random_(seed) {
    const int targets = static_cast<int>(3 + seed % 4);
    for (int i = 0; i < targets; ++i)
      targets_.push_back(grid_position(715800 + uniform(-120, 120), 734600 + uniform(-120, 120),
                                       62 + uniform(-8, 8)));
    station_ =
        grid_position(715800 + uniform(-60, 60), 734600 + uniform(-60, 60), 62 + uniform(-3, 3));
    orientation_ = uniform(0, 360);
  }

  bool well_spread() const {
    for (std::size_t i = 0; i < targets_.size(); ++i) {
      if (distance(targets_[i].at, station_.at) < Length::metres(12)) return false;
      for (std::size_t j = 0; j < i; ++j)
        if (distance(targets_[i].at, targets_[j].at) < Length::metres(15)) return false;
    }
    return true;
  }

  MadeBook book(unsigned seed) const {
    MadeBook made({}, seed);
    made.stand("S1", "", station_, orientation_);
    for (std::size_t i = 0; i < targets_.size(); ++i) {
      const std::string name = "C" + std::to_string(i);
      made.control(name, targets_[i]);
      made.sight(name, targets_[i]);
    }
    return made;
  }

  const GridPosition& station() const { return station_; }
  Length to(std::size_t target) const { return distance(targets_[target].at, station_.at); }

 private:
  double uniform(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random_);
  }
  std::mt19937_64 random_;
  std::vector<GridPosition> targets_;
  GridPosition station_;
  double orientation_ = 0;
};

std::vector<std::pair<unsigned, Site>> sites() {
  std::vector<std::pair<unsigned, Site>> all;
  for (unsigned seed = 1; all.size() < kStations; ++seed)
    if (const Site site(seed); site.well_spread()) all.push_back({seed, site});
  return all;
}

// e' C^-1 e of a station's error, three degrees of freedom.
double squared_error(const SetupResult& s, const GridPosition& truth) {
  const double e = (s.at.easting - truth.at.easting).in_metres();
  const double n = (s.at.northing - truth.at.northing).in_metres();
  const double h = (*s.height - truth.height).in_metres();
  const Covariance& c = *s.covariance;
  // by Cholesky: each part freed of what the parts before it say
  const double l11 = std::sqrt(c.ee), l21 = c.en / l11, l31 = c.eh / l11;
  const double l22 = std::sqrt(c.nn - l21 * l21), l32 = (c.nh - l31 * l21) / l22;
  const double l33 = std::sqrt(c.hh - l31 * l31 - l32 * l32);
  const double y1 = e / l11, y2 = (n - l21 * y1) / l22, y3 = (h - l31 * y1 - l32 * y2) / l33;
  return y1 * y1 + y2 * y2 + y3 * y3;
}

std::string said(const FieldResult& r) {
  std::string text;
  for (const Finding& f : r.head.findings) text += f.code + ": " + f.text + "\n";
  return text;
}

TEST(FieldEnsemble, ErrorsAgreeWithTheReportedSigmasAndFalseAlarmsWithAlpha) {
  double sum = 0;
  std::size_t tested = 0, alarms = 0, too_large = 0;
  for (const auto& [seed, site] : sites()) {
    const FieldResult r = site.book(seed).reduce();
    const SetupResult& s = r.setups.at(0);
    sum += squared_error(s, site.station());
    for (const SightResidual& v : s.residuals) tested += v.normalised || v.left_out ? 1U : 0U;
    for (const Finding& f : r.head.findings)
      (f.code == "sigmas-too-small" ? too_large : alarms) += 1;
  }
  const double freedom = 3.0 * kStations;
  EXPECT_GT(sum, adjust::chi_square_quantile(0.0005, freedom)) << "seeds from 1";
  EXPECT_LT(sum, adjust::chi_square_quantile(0.9995, freedom)) << "seeds from 1";
  // one in a thousand of each test, as a count with its own spread
  const double expected = kAlpha * static_cast<double>(tested);
  EXPECT_GT(tested, 9000U);
  EXPECT_NEAR(static_cast<double>(alarms), expected, 3.29 * std::sqrt(expected)) << "seeds from 1";
  EXPECT_LE(too_large, 6U);
}

struct Planted {
  std::size_t detectable = 0, named = 0, alike = 0, alike_named = 0;
  std::string missed;
};

// Plants 50 mm, along or across the line, in one reading of the station.
void plant(MadeBook& book, std::size_t line, Reading reading, Length to) {
  StationShot& shot = book.input.stations[line];
  const Angle across = Angle::radians(0.05 / to.in_metres());
  if (reading == Reading::Distance) *shot.slope_distance += Length::metres(0.05);
  if (reading == Reading::Direction)
    shot.horizontal = Bearing::degrees((shot.horizontal + across).in_degrees()).from_north();
  if (reading == Reading::Zenith) *shot.zenith += across;
}

void try_one(unsigned seed, const Site& site, Planted& count) {
  const FieldResult clean = site.book(seed).reduce();
  if (!clean.head.findings.empty()) return;
  const auto& residuals = clean.setups.at(0).residuals;
  const SightResidual& chosen = residuals[seed * 7919U % residuals.size()];
  const auto line = static_cast<std::size_t>(chosen.places.at(0).line - 2);
  const double size = chosen.reading == Reading::Distance
                          ? 50
                          : Angle::radians(0.05 / site.to(line).in_metres()).in_seconds();
  const double power_99 =
      adjust::non_centrality(kAlpha, 0.99) / adjust::non_centrality(kAlpha, 0.80);
  if (!chosen.smallest_detectable || size < *chosen.smallest_detectable * power_99) return;
  MadeBook book = site.book(seed);
  plant(book, line, chosen.reading, site.to(line));
  const std::string text = said(book.reduce());
  const std::string place = "setups.csv:" + std::to_string(chosen.places[0].line);
  const bool named = text.find(place) != std::string::npos;
  if (*chosen.greatest_correlation < 0.9) {
    ++count.detectable;
    const bool alone = text.find(place + ": the " + words(chosen.reading)) != std::string::npos;
    count.named += alone ? 1U : 0U;
    if (!alone)
      count.missed += "seed " + std::to_string(seed) + ", " + place + " " + words(chosen.reading) +
                      ", correlation " + std::to_string(*chosen.greatest_correlation) + ": " + text;
  } else {
    ++count.alike;
    count.alike_named += named ? 1U : 0U;
  }
}

TEST(FieldEnsemble, PlantedBlundersAreNamedWhereTheoryCanFindThem) {
  Planted count;
  for (const auto& [seed, site] : sites()) try_one(seed, site, count);
  EXPECT_GT(count.detectable, 600U);
  EXPECT_GE(static_cast<double>(count.named), 0.95 * static_cast<double>(count.detectable))
      << count.named << " of " << count.detectable << "\n"
      << count.missed;
  EXPECT_GE(static_cast<double>(count.alike_named), 0.95 * static_cast<double>(count.alike))
      << count.alike_named << " of " << count.alike;
  RecordProperty("named", static_cast<int>(count.named));
  RecordProperty("detectable", static_cast<int>(count.detectable));
}

}  // namespace
}  // namespace squaredig::field
