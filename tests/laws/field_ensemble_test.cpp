// A thousand free stations with known truth: errors against the reported standard deviations, false
// alarms against the stated alpha, and planted blunders against what theory says is detectable.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "adjust/distributions.h"
#include "adjust/snooping.h"
#include "unit/field/made_site.h"

namespace squaredig::field {
namespace {

using testing::MadeBook;
using Site = testing::MadeSite;

constexpr unsigned kStations = 1000;
constexpr double kAlpha = 0.001;

std::vector<std::pair<unsigned, Site>> sites() { return testing::made_sites(kStations); }

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
  const SightResidual& chosen = residuals[std::size_t{seed} * 7919 % residuals.size()];
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

// Two errors at once, of 50 mm, in different lines: neither hides the other, nor are they taken for
// a wrong name or a knock.
TEST(FieldEnsemble, TwoWrongReadingsAreBothNamed) {
  std::size_t tried = 0, both = 0;
  std::string missed;
  for (const auto& [seed, site] : sites()) {
    if (site.targets() < 5) continue;
    MadeBook book = site.book(seed);
    const std::size_t first = seed % site.targets(), second = (first + 2) % site.targets();
    constexpr Reading kReadings[] = {Reading::Direction, Reading::Zenith, Reading::Distance};
    plant(book, first, kReadings[seed % 3], site.to(first));
    plant(book, second, kReadings[seed / 3 % 3], site.to(second));
    ++tried;
    const FieldResult found = book.reduce();
    const auto place = [](std::size_t line) { return "setups.csv:" + std::to_string(line + 2); };
    const bool named =
        names_line(found, place(first), false) && names_line(found, place(second), false);
    both += named ? 1U : 0U;
    if (!named) missed += "seed " + std::to_string(seed) + ": " + said(found);
  }
  EXPECT_GT(tried, 400U);
  EXPECT_GE(static_cast<double>(both), 0.95 * static_cast<double>(tried))
      << both << " of " << tried << "\n"
      << missed;
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
