// What a pit costs beside the ground it is dug in: its exact volume in a ground of 1e6 triangles
// beside the triangulation of that ground, in a tenth of it, and 30 cuts beside one.
#include <benchmark/benchmark.h>

#include <map>

#include "../grounds.h"
#include "geometry/triangulate.h"
#include "speed/ratio_report.h"

namespace squaredig::speed {
namespace {

// One point to two square metres, over a square round the origin.
geometry::TriangulationInput scattered(double half) {
  constexpr unsigned kSeed = 4;
  std::mt19937 random(kSeed);
  std::uniform_real_distribution<double> at(-half, half);
  const auto height = testing::rough_ground(kSeed, 5, 0.4);
  geometry::TriangulationInput input;
  const auto count = static_cast<std::size_t>(2 * half * half);
  for (std::size_t i = 0; i < count; ++i) {
    const double x = at(random), y = at(random);
    input.points.push_back({x, y, height(x, y)});
  }
  return input;
}

testing::MadeSurvey& survey_of(double half) {
  static std::map<double, testing::MadeSurvey> made;
  auto found = made.find(half);
  if (found == made.end())
    found = made.emplace(half, testing::MadeSurvey(geometry::triangulate(scattered(half)).surface))
                .first;
  return found->second;
}

design::DesignInput pit_of(std::size_t cuts) {
  auto input = testing::plain_pit(88, 76, 0, Batter::run_per_rise(1), grid_point(0.3, -0.7),
                                  Bearing::degrees(37.5));
  if (cuts < 2) return input;
  design::Trench trench;
  for (std::size_t i = 0; i < cuts; ++i) {
    const double t = 3.0 * static_cast<double>(i) / static_cast<double>(cuts);
    trench.line.push_back(grid_position(60 * std::cos(t), 60 * std::sin(t), 3.5));
  }
  trench.width = Length::metres(0.9);
  trench.batter = Batter::run_per_rise(0.5);
  input.pit.trenches = {trench};
  return input;
}

void triangulation(benchmark::State& state) {
  const auto input = scattered(500);
  for (auto _ : state)
    benchmark::DoNotOptimize(geometry::triangulate(input).surface.triangles.size());
}

void pit(benchmark::State& state, double half, std::size_t cuts) {
  auto& survey = survey_of(half);
  const auto input = pit_of(cuts);
  for (auto _ : state) {
    const auto dug = design::excavate(input, survey);
    state.counters["m3"] = dug.dug.volume;
    state.counters["cuts"] = static_cast<double>(dug.dug.cuts.size());
    state.counters["pieces"] = static_cast<double>(dug.dug.pieces.size());
  }
}

template <class Work>
void add(const std::string& name, Work work) {
  benchmark::RegisterBenchmark(name.c_str(), work)
      ->Unit(benchmark::kMillisecond)
      ->Iterations(1)
      ->Repetitions(5);
}

void register_all() {
  add("volume/triangulation", triangulation);
  add("volume/pit", [](benchmark::State& state) { pit(state, 500, 1); });
  add("volume/pit_in_a_tenth", [](benchmark::State& state) { pit(state, 160, 1); });
  add("cuts/one", [](benchmark::State& state) { pit(state, 500, 1); });
  add("cuts/thirty", [](benchmark::State& state) { pit(state, 500, 30); });
}

}  // namespace
}  // namespace squaredig::speed

int main(int argc, char** argv) {
  benchmark::Initialize(&argc, argv);
  squaredig::speed::register_all();
  squaredig::speed::RatioReport report({"triangulation", "one"});
  benchmark::RunSpecifiedBenchmarks(&report);
  return 0;
}
