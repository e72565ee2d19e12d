// Runs tests/tables/base.table: plants each fault, asks its one check, compares verdict and value.
#include <cmath>
#include <functional>
#include <iostream>
#include <map>
#include <numbers>
#include <regex>

#include "quantity/number_text.h"
#include "tables/table.h"
#include "unit/base/base_fixture.h"

namespace squaredig::base {
namespace {

using testing::BaseFixture;

// Limits and planted values in mm, percent or metres, as the line says them.
struct Line {
  std::string check;
  double limit = 0, planted = 0, sigma = 0, shared = 0;
  std::string unit;
  std::string verdict;
};

Line read(const std::string& text) {
  static const std::regex kForm(
      R"(([a-z ]+): +limit (\S+) (mm|m|percent), planted (\S+) (mm|m|percent), )"
      R"(sigma (\S+) mm, shared (\S+) mm -> (conforms|not proven|does not conform))");
  std::smatch m;
  if (!std::regex_match(text, m, kForm) || m[3] != m[5]) throw tables::UnknownWords{text};
  return {m[1],
          tables::number(m[2]),
          tables::number(m[4]),
          tables::number(m[6]),
          tables::number(m[7]),
          m[3],
          m[8]};
}

Length mm(double v) { return Length::millimetres(v); }

void level_high(BaseFixture& base, const Line& line) {
  base.input.level_tolerance = Tolerance{mm(line.limit), mm(1e6)};
  base.add_grid(1.5, [&](double, double) { return line.planted < 0 ? line.planted : 0.0; });
  base.add(5.1, 2.1, line.planted);
}

void level_low(BaseFixture& base, const Line& line) {
  base.input.level_tolerance = Tolerance{mm(1e6), mm(line.limit)};
  base.add_grid(1.5, [](double, double) { return 0.0; });
  base.add(5.1, 2.1, -line.planted);
}

void level_mean(BaseFixture& base, const Line& line) {
  base.input.mean_tolerance = mm(line.limit);
  base.add_grid(1.5, [&](double, double) { return line.planted; });
}

void flatness(BaseFixture& base, const Line& line) {
  base.input.flatness_tolerance = mm(line.limit);
  const double pattern[3][3] = {{1, -2, 1}, {-2, 4, -2}, {1, -2, 1}};
  for (int r = 0; r < 3; ++r)
    for (int c = 0; c < 3; ++c)
      base.add(1.5 * c, 1.5 * r, pattern[r][c] * line.planted / 6 + 3 * c - 2 * r);
}

void straightedge(BaseFixture& base, const Line& line) {
  base.input.straightedge = Straightedge{Length::metres(3), mm(line.limit)};
  base.length = base.width = 3;
  for (const double across : {0.0, 1.5, 3.0})
    for (const double along : {0.0, 1.5, 3.0})
      base.add(along, across, along == 1.5 ? line.planted * 2 / 3 : -line.planted / 3);
}

void fall(BaseFixture& base, const Line& line) {
  base.input.fall_tolerance = Fall::percent(line.limit);
  base.add_grid(1.5, [&](double along, double) { return 10 * line.planted * (along - 6); });
}

void extent(BaseFixture& base, const Line& line) {
  base.input.extent_tolerance = mm(1000 * base.gap - line.limit);
  base.input.sigma_plan = mm(line.sigma);
  base.fall_percent = 0;
  base.add_grid(1.5, [](double, double) { return 0.0; });
  const design::Tank tank = base.planned().tank;
  SurveyPoint p;
  p.at.at = tank.from_a(Length::metres(5), mm(-line.planted));
  p.at.height = tank.dig_level.at(p.at.at);
  base.input.points.add(p, "T1", "TOE");
}

void stack_gap(BaseFixture& base, const Line& line) {
  base.input.stack_gap_tolerance = mm(line.limit);
  base.module_along = 1.2, base.module_into = 0.6;
  base.add_grid(0.1, [&](double along, double) {
    return -line.planted / base.height * std::abs(along - 6) / 2;
  });
  for (double across : {-0.2, 0.4, 1.0, 1.6, 2.2, 2.8, 3.4, 4.0, 4.6, 5.0}) base.add(6, across, 0);
}

void bedding_thinnest(BaseFixture& base, const Line& line) {
  base.least_mm = line.limit;
  base.add_grid(1.5, [&](double, double) { return base.thickness_mm - line.planted; });
}

void bedding_thickest(BaseFixture& base, const Line& line) {
  base.most_mm = line.limit;
  base.add_grid(1.5, [&](double, double) { return base.thickness_mm - line.planted; });
}

void coverage(BaseFixture& base, const Line& line) {
  base.input.spacing = Length::metres((line.limit - 0.001) * std::numbers::sqrt2);
  base.length = base.width = line.planted * std::numbers::sqrt2 - 2 * base.gap;
  base.add_grid(100, [](double, double) { return 0.0; });
}

void compaction(BaseFixture& base, const Line& line) {
  base.input.density_ratio = Ratio::percent(line.limit);
  base.add_grid(1.5, [](double, double) { return 0.0; });
  base.input.tests.emplace();
  for (const double percent : {line.planted + 3, line.planted, line.planted + 1})
    base.input.tests->push_back({"base",
                                 base.corner_a,
                                 Density::tonnes_per_cubic_metre(percent / 50),
                                 Density::tonnes_per_cubic_metre(2),
                                 {"tests.csv", 2, 1}});
}

using Planting = std::function<void(BaseFixture&, const Line&)>;
const std::map<std::string, Planting>& plantings() {
  static const std::map<std::string, Planting> kAll{{"level high", level_high},
                                                    {"level low", level_low},
                                                    {"level mean", level_mean},
                                                    {"flatness", flatness},
                                                    {"straightedge", straightedge},
                                                    {"fall", fall},
                                                    {"extent", extent},
                                                    {"stack gap", stack_gap},
                                                    {"bedding thinnest", bedding_thinnest},
                                                    {"bedding thickest", bedding_thickest},
                                                    {"coverage", coverage},
                                                    {"compaction", compaction}};
  return kAll;
}

double in_words_of(const Line& line, const Amount& amount) {
  if (const auto* fall_value = std::get_if<Fall>(&amount)) return fall_value->in_percent();
  if (const auto* ratio = std::get_if<Ratio>(&amount)) return ratio->in_percent();
  const Length length = std::get<Length>(amount);
  return line.unit == "m" ? length.in_metres() : length.in_millimetres();
}

// What is wrong with the answer; empty where nothing is.
std::string faults(const Line& line) {
  const auto planting = plantings().find(line.check);
  if (planting == plantings().end()) throw tables::UnknownWords{line.check};
  BaseFixture base;
  base.length = 12, base.width = 4.8;
  base.least_mm = -1e6, base.most_mm = 1e6;
  base.module_along = 0;
  base.input.sigma_height = mm(line.sigma);
  base.input.sigma_common = mm(line.shared);
  planting->second(base, line);
  const BaseResult result = base.check();
  const Check& check = testing::named(result, line.check);
  std::string wrong;
  if (words(check.verdict) != line.verdict) wrong += std::string("is ") + words(check.verdict);
  const double wanted = line.check == "level low" ? -line.planted : line.planted;
  const double value = in_words_of(line, check.value.value());
  if (std::abs(value - wanted) > 1e-5)
    wrong += " its value is " + shortest(value) + " " + line.unit;
  if (check.verdict == Verdict::NotProven &&
      check.words.find("; proven either way once") == std::string::npos &&
      check.words.find("; on its limit: proven neither way") == std::string::npos)
    wrong += " and does not say what would settle it";
  for (const Check& other : result.checks)
    if (other.verdict == Verdict::DoesNotConform && other.name != line.check)
      wrong += " and " + other.name + " does not conform";
  return wrong;
}

// Every check at 0.9, 1.0 and 1.1 of its limit, each with a small and a large uncertainty: what of
// that the table leaves out.
std::string left_out(const std::vector<Line>& lines) {
  std::string missing;
  for (const auto& [check, planting] : plantings())
    for (const double share : {0.9, 1.0, 1.1}) {
      double small = HUGE_VAL, large = 0;
      for (const Line& line : lines) {
        const double sigma = std::hypot(line.sigma, line.shared);
        if (line.check != check || sigma == 0 || line.limit == 0) continue;
        if (std::abs(line.planted / line.limit - share) > 1e-9) continue;
        small = std::min(small, sigma), large = std::max(large, sigma);
      }
      if (!(small < large)) missing += " " + check + " at " + shortest(share) + " of its limit;";
    }
  return missing;
}

}  // namespace
}  // namespace squaredig::base

// A second argument, `every_check`, asks for all of them in one table.
int main(int argc, char** argv) {
  using namespace squaredig;
  std::vector<base::Line> lines;
  const int status = tables::run(std::min(argc, 2), argv, [&](const std::string& text) {
    lines.push_back(base::read(text));
    return base::faults(lines.back());
  });
  if (status != 0 || argc == 2) return status;
  const std::string missing = base::left_out(lines);
  if (!missing.empty()) std::cout << "planted once or never:" << missing << "\n";
  return argc == 3 && argv[2] == std::string("every_check") && missing.empty() ? 0 : 1;
}
