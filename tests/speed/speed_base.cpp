// The base check on scanner clouds: 2,000 and 20,000 points, with the straightedge and without.
#include <benchmark/benchmark.h>

#include <cmath>
#include <random>

#include "base/check_base.h"

namespace squaredig::base {
namespace {

// How the base lies: noise alone, or a swell of 8 m under it, which leaves the search less to skip.
enum class Ground { Rough, Swelling };

struct Job {
  BaseInput input;
  PlannedBase planned;
};

PlannedBase planned_base() {
  const auto m = [](double v) { return Length::metres(v); };
  PlannedBase p;
  p.tank.ab = Bearing::degrees(37.5);
  const GridPoint a = grid_point(715830.25, 734697.6);
  const auto at = [&](double along, double across) {
    return ahead(a, p.tank.ab, m(along), m(across));
  };
  p.tank.corners = {at(0, 0), at(24, 0), at(24, 9.6), at(0, 9.6)};
  p.tank.underside = {a, Elevation::metres(62.35), Fall::percent(0.5), Bearing::degrees(127.5)};
  p.tank.dig_level = p.tank.underside.lowered(m(0.02));
  p.tank.height = m(1.32);
  p.toe = {at(-.2, -.2), at(24.2, -.2), at(24.2, 9.8), at(-.2, 9.8)};
  p.thickness = m(0.02);
  p.least = m(0.015);
  p.most = m(0.03);
  p.gap.assign(4, m(0.2));
  p.module = std::pair(m(1.2), m(0.6));
  return p;
}

Job job_of(std::size_t count, Ground ground) {
  std::mt19937 random(20260317);
  std::uniform_real_distribution<double> unit(0, 1);
  std::normal_distribution<double> noise(0, ground == Ground::Rough ? 3 : 0.5);
  Job job;
  job.planned = planned_base();
  const auto mm = [](double v) { return Length::millimetres(v); };
  job.input.level_tolerance = Tolerance{mm(5), mm(10)};
  job.input.mean_tolerance = job.input.flatness_tolerance = mm(5);
  job.input.stack_gap_tolerance = mm(5);
  job.input.spacing = Length::metres(1.5);
  job.input.sigma_height = job.input.sigma_common = mm(1);
  job.input.sigma_plan = mm(10);
  job.input.confidence = Ratio::of(0.95);
  job.input.points.add_file("scan.csv");
  for (std::size_t i = 0; i < count; ++i) {
    const double along = 24.4 * unit(random) - 0.2, across = 10 * unit(random) - 0.2;
    const double swell = ground == Ground::Rough ? 0 : 6 * std::sin(along) * std::cos(across);
    SurveyPoint p;
    p.at.at = job.planned.tank.from_a(Length::metres(along), Length::metres(across));
    p.at.height = job.planned.tank.dig_level.at(p.at.at) + mm(swell + noise(random));
    p.line = static_cast<std::uint32_t>(i + 2);
    job.input.points.add(p, std::to_string(i), "");
  }
  return job;
}

void check(benchmark::State& state, Ground ground, std::optional<Straightedge> rule) {
  Job job = job_of(static_cast<std::size_t>(state.range(0)), ground);
  job.input.straightedge = rule;
  for (auto _ : state) benchmark::DoNotOptimize(check_base(job.input, job.planned));
}

const Straightedge kRule{Length::metres(3), Length::millimetres(10)};

void rough_without_straightedge(benchmark::State& s) { check(s, Ground::Rough, std::nullopt); }
void rough_with_straightedge(benchmark::State& s) { check(s, Ground::Rough, kRule); }
void swelling_with_straightedge(benchmark::State& s) { check(s, Ground::Swelling, kRule); }

#define SIZES Arg(200)->Arg(2000)->Arg(20000)->Unit(benchmark::kMillisecond)
BENCHMARK(rough_without_straightedge)->SIZES;
BENCHMARK(rough_with_straightedge)->SIZES;
BENCHMARK(swelling_with_straightedge)->SIZES;

}  // namespace
}  // namespace squaredig::base

BENCHMARK_MAIN();
