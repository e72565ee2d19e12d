// A thousand free stations with known truth: errors against the reported standard deviations, false
// alarms against the stated alpha, and planted blunders against what theory says is detectable.
#include <gtest/gtest.h>

#include <algorithm>
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
    point_ =
        grid_position(station_.at.easting.in_metres() + uniform(20, 90),
                      station_.at.northing.in_metres() + uniform(-90, 90), 62 + uniform(-8, 8));
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
    made.sight("P", point_);
    return made;
  }

  // The same with control that is itself uncertain by `sigma_mm` in every coordinate.
  MadeBook uncertain_control(unsigned seed, double sigma_mm) const {
    MadeBook made = book(seed);
    std::mt19937_64 random(seed + 500000);
    std::normal_distribution<double> error(0, sigma_mm / 1000);
    for (SurveyPoint& p : made.input.control.points) {
      p.at.at.easting = p.at.at.easting + Length::metres(error(random));
      p.at.at.northing = p.at.at.northing + Length::metres(error(random));
      p.at.height = p.at.height + Length::metres(error(random));
      p.sigma_plan_mm = p.sigma_height_mm = static_cast<float>(sigma_mm);
    }
    return made;
  }

  // On a known station, with two backsights: only directions check each other.
  MadeBook two_backsights(unsigned seed) const {
    MadeBook made({}, seed);
    made.control("S", station_);
    made.stand("S1", "S", station_, orientation_);
    for (std::size_t i = 0; i < 2; ++i) {
      const std::string name = "C" + std::to_string(i);
      made.control(name, targets_[i]);
      made.sight(name, targets_[i]).slope_distance = std::nullopt;
    }
    made.sight("P", point_);
    return made;
  }

  const GridPosition& station() const { return station_; }
  const GridPosition& point() const { return point_; }
  Length to(std::size_t target) const { return distance(targets_[target].at, station_.at); }

 private:
  double uniform(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random_);
  }
  std::mt19937_64 random_;
  std::vector<GridPosition> targets_;
  GridPosition station_, point_;
  double orientation_ = 0;
};

std::vector<std::pair<unsigned, Site>> sites() {
  std::vector<std::pair<unsigned, Site>> all;
  for (unsigned seed = 1; all.size() < kStations; ++seed)
    if (const Site site(seed); site.well_spread()) all.push_back({seed, site});
  return all;
}

// e' C^-1 e of the error of a set-up or a point, three degrees of freedom.
template <class Told>
double squared_error(const Told& told, const GridPosition& truth) {
  const double e = (told.at.easting - truth.at.easting).in_metres();
  const double n = (told.at.northing - truth.at.northing).in_metres();
  const double h = (*told.height - truth.height).in_metres();
  const Covariance& c = *told.covariance;
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
  double sum = 0, of_points = 0;
  std::size_t tested = 0, alarms = 0, too_large = 0, withheld = 0;
  for (const auto& [seed, site] : sites()) {
    const FieldResult r = site.book(seed).reduce();
    const SetupResult& s = r.setups.at(0);
    sum += squared_error(s, site.station());
    if (!r.points.empty()) of_points += squared_error(r.points.at(0), site.point());
    withheld += r.withheld.size();
    for (const SightResidual& v : s.residuals) tested += v.normalised || v.left_out ? 1U : 0U;
    for (const Finding& f : r.head.findings)
      (f.code == "sigmas-too-small" ? too_large : alarms) += 1;
  }
  const double freedom = 3.0 * kStations;
  EXPECT_GT(sum, adjust::chi_square_quantile(0.0005, freedom)) << "seeds from 1";
  EXPECT_LT(sum, adjust::chi_square_quantile(0.9995, freedom)) << "seeds from 1";
  // of sideshots, by the set-up and their own readings
  const double given = 3.0 * static_cast<double>(kStations - withheld);
  EXPECT_GT(of_points, adjust::chi_square_quantile(0.0005, given)) << "seeds from 1";
  EXPECT_LT(of_points, adjust::chi_square_quantile(0.9995, given)) << "seeds from 1";
  EXPECT_LE(withheld, 10U);
  // one in a thousand of each test, as a count with its own spread
  const double expected = kAlpha * static_cast<double>(tested);
  EXPECT_GT(tested, 9000U);
  EXPECT_NEAR(static_cast<double>(alarms), expected, 3.29 * std::sqrt(expected)) << "seeds from 1";
  EXPECT_LE(too_large, 6U);
}

// Control known to 5 mm is worth no more than that in what hangs on it.
TEST(FieldEnsemble, UncertainControlIsInTheReportedSigmas) {
  double of_stations = 0, of_points = 0;
  std::size_t given = 0;
  for (const auto& [seed, site] : sites()) {
    const FieldResult r = site.uncertain_control(seed, 5).reduce();
    if (r.points.empty()) continue;
    ++given;
    of_stations += squared_error(r.setups.at(0), site.station());
    of_points += squared_error(r.points[0], site.point());
  }
  // some 25 tests of each, readings and control, at one in a thousand; of a false alarm about
  // control no coordinates are given
  EXPECT_GE(given, kStations - 40U);
  const double freedom = 3.0 * static_cast<double>(given);
  for (const double sum : {of_stations, of_points}) {
    EXPECT_GT(sum, adjust::chi_square_quantile(0.0005, freedom)) << "seeds from 1";
    EXPECT_LT(sum, adjust::chi_square_quantile(0.9995, freedom)) << "seeds from 1";
  }
}

struct Planted {
  std::size_t detectable = 0, named = 0;
  std::size_t alike = 0, alike_named = 0;  // where other lines explain it nearly as well
  std::string missed, alike_missed;
};

// The lines that a finding names together as not to be told apart, or the one it names alone.
bool names_line(const FieldResult& r, const std::string& place, bool together) {
  return std::any_of(r.head.findings.begin(), r.head.findings.end(), [&](const Finding& f) {
    const auto list = f.text.find("cannot be told apart: ");
    const bool told_apart = list == std::string::npos;
    if (told_apart) return !together && f.text.starts_with(place + ": ");
    return f.text.find(place + " (", list) != std::string::npos;
  });
}

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
  const FieldResult found = book.reduce();
  const std::string text = said(found);
  const std::string place = "setups.csv:" + std::to_string(chosen.places[0].line);
  const std::string which = "seed " + std::to_string(seed) + ", " + place + " " +
                            words(chosen.reading) + ", correlation " +
                            std::to_string(*chosen.greatest_correlation) + ": " + text;
  if (*chosen.greatest_correlation < 0.9) {
    ++count.detectable;
    const bool alone = text.find(place + ": the " + words(chosen.reading)) != std::string::npos;
    count.named += alone ? 1U : 0U;
    if (!alone) count.missed += which;
  } else {
    ++count.alike;
    const bool named = names_line(found, place, false);
    count.alike_named += named ? 1U : 0U;
    if (!named) count.alike_missed += which;
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
      << count.alike_named << " of " << count.alike << "\n"
      << count.alike_missed;
  EXPECT_GT(count.alike, 10U);
  RecordProperty("named", static_cast<int>(count.named));
  RecordProperty("detectable", static_cast<int>(count.detectable));
}

// Two backsights from a known station: an error in one direction is as well one in the other.
TEST(FieldEnsemble, LinesThatCannotBeToldApartAreNamedTogether) {
  std::size_t detectable = 0, together = 0, alone = 0;
  const double power_99 =
      adjust::non_centrality(kAlpha, 0.99) / adjust::non_centrality(kAlpha, 0.80);
  for (const auto& [seed, site] : sites()) {
    const FieldResult clean = site.two_backsights(seed).reduce();
    if (!clean.head.findings.empty()) continue;
    const std::size_t line = seed % 2;
    const auto& residuals = clean.setups.at(0).residuals;
    const auto direction =
        std::find_if(residuals.begin(), residuals.end(), [&](const SightResidual& v) {
          return v.reading == Reading::Direction &&
                 v.places.at(0).line == static_cast<int>(line) + 2;
        });
    ASSERT_NE(direction, residuals.end());
    EXPECT_NEAR(*direction->greatest_correlation, 1, 1e-6);
    const double size = Angle::radians(0.05 / site.to(line).in_metres()).in_seconds();
    if (size < *direction->smallest_detectable * power_99) continue;
    ++detectable;
    MadeBook book = site.two_backsights(seed);
    plant(book, line, Reading::Direction, site.to(line));
    const FieldResult found = book.reduce();
    const bool both =
        names_line(found, "setups.csv:2", true) && names_line(found, "setups.csv:3", true);
    together += both ? 1U : 0U;
    alone += said(found).find("it is left out") != std::string::npos ? 1U : 0U;
    EXPECT_TRUE(!both || found.points.empty()) << "seed " << seed;
  }
  EXPECT_GT(detectable, 500U);
  EXPECT_GE(static_cast<double>(together), 0.95 * static_cast<double>(detectable))
      << together << " of " << detectable << ", seeds from 1";
  EXPECT_EQ(alone, 0U);
}

}  // namespace
}  // namespace squaredig::field
