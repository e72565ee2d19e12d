// A thousand simulated level books with known truth: errors of heights against the reported
// standard deviations, false alarms against alpha, and planted misreadings.
#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "adjust/distributions.h"
#include "field/level_net.h"

namespace squaredig::field {
namespace {

constexpr unsigned kBooks = 1000;
constexpr double kSigmaPerRootKm = 0.003;

// Two benches and four unknown points, every two of them joined by one run.
struct Book {
  FieldInput input;
  std::vector<double> truth;

  explicit Book(unsigned seed) {
    std::mt19937_64 random(seed);
    std::uniform_real_distribution<double> height(58, 66), metres(80, 600);
    std::normal_distribution<double> error(0, kSigmaPerRootKm);
    for (int i = 0; i < 6; ++i) truth.push_back(height(random));
    for (std::size_t i = 0; i < 2; ++i) {
      SurveyPoint bench;
      bench.at = grid_position(0, 0, truth[i]);
      input.control.add(bench, name(i), "");
    }
    input.sigma_level = Length::metres(kSigmaPerRootKm);
    for (std::size_t i = 0; i < 6; ++i)
      for (std::size_t j = std::max<std::size_t>(i + 1, 2); j < 6; ++j) {
        const double length = metres(random);
        run(i, j, truth[j] - truth[i] + error(random) * std::sqrt(length / 1000), length);
      }
  }

  static std::string name(std::size_t i) { return (i < 2 ? "BM" : "P") + std::to_string(i); }

  void run(std::size_t from, std::size_t to, double rise, double length) {
    LevelLine back, fore;
    back.point = name(from);
    back.backsight = Length::metres(10);
    fore.point = name(to);
    fore.foresight = Length::metres(10 - rise);
    fore.distance = Length::metres(length);
    for (LevelLine* line : {&back, &fore}) {
      line->place = {"levels.csv", static_cast<int>(input.levels.size()) + 2, 1};
      input.levels.push_back(*line);
    }
  }

  LevelResult reduce(ResultHead& head) const {
    return reduce_levels(input, {Length::metres(6371000), Ratio::of(0.13)}, head);
  }
};

TEST(LevelEnsemble, ErrorsAgreeWithTheReportedSigmasAndFalseAlarmsWithAlpha) {
  double squares = 0;
  std::size_t points = 0, alarms = 0;
  for (unsigned seed = 1; seed <= kBooks; ++seed) {
    const Book book(seed);
    ResultHead head;
    const LevelResult r = book.reduce(head);
    EXPECT_EQ(r.redundancy, 10U);
    for (const LevelledPoint& p : r.points) {
      if (p.known) continue;
      const auto i = static_cast<std::size_t>(p.point[1] - '0');
      const double error = p.height.in_metres() - book.truth[i];
      squares += std::pow(error / p.sigma->in_metres(), 2);
      ++points;
    }
    for (const Finding& f : head.findings) alarms += f.code == "level-blunder" ? 1U : 0U;
  }
  ASSERT_EQ(points, 4U * kBooks);
  // heights of one book hang together: their squares spread up to four times as much as if not
  const auto n = static_cast<double>(points);
  EXPECT_NEAR(squares, n, 3.29 * std::sqrt(2 * n * 4)) << "seeds from 1";
  // fourteen tests in a book at one in a thousand
  const double expected = 0.001 * 14 * kBooks;
  EXPECT_NEAR(static_cast<double>(alarms), expected, 3.29 * std::sqrt(expected)) << "seeds from 1";
}

// A staff read 20 mm wrong between two unknown points is named by its line.
TEST(LevelEnsemble, AMisreadStaffIsNamed) {
  std::size_t detectable = 0, named = 0;
  const double off_centre = adjust::normal_quantile(0.9995) + adjust::normal_quantile(0.99);
  for (unsigned seed = 1; seed <= kBooks; ++seed) {
    Book book(seed);
    ResultHead clean;
    const LevelResult before = book.reduce(clean);
    if (!clean.findings.empty()) continue;
    const std::size_t leg = seed % before.residuals.size();
    const LevelResidual& chosen = before.residuals[leg];
    const auto row = static_cast<std::size_t>(chosen.place.line - 2);
    const double sigma =
        kSigmaPerRootKm * std::sqrt(book.input.levels[row].distance->in_metres() / 1000);
    if (0.020 * std::sqrt(chosen.redundancy) / sigma < off_centre) continue;
    ++detectable;
    *book.input.levels[row].foresight += Length::millimetres(20);
    ResultHead head;
    book.reduce(head);
    const std::string at = "levels.csv:" + std::to_string(chosen.place.line);
    for (const Finding& f : head.findings)
      named += f.code == "level-blunder" && f.text.ends_with(" at " + at) ? 1U : 0U;
  }
  EXPECT_GT(detectable, 800U);
  EXPECT_GE(static_cast<double>(named), 0.95 * static_cast<double>(detectable))
      << named << " of " << detectable << ", seeds from 1";
}

}  // namespace
}  // namespace squaredig::field
