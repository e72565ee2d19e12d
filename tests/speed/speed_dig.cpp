// What a pit costs beside the ground it is dug in. The pit takes under 1 % of a ground of 1e6
// triangles; the same pit in a tenth of that ground has as many triangles under it; 30 cuts stand
// beside one.
#include <benchmark/benchmark.h>

#include <map>

#include "../grounds.h"
#include "geometry/triangulate.h"

namespace squaredig {
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

void ground(benchmark::State& state) {
  const auto input = scattered(static_cast<double>(state.range(0)));
  std::size_t triangles = 0;
  for (auto _ : state) triangles = geometry::triangulate(input).surface.triangles.size();
  state.counters["triangles"] = static_cast<double>(triangles);
}

void pit(benchmark::State& state) {
  auto& survey = survey_of(static_cast<double>(state.range(0)));
  const auto input = pit_of(static_cast<std::size_t>(state.range(1)));
  double area = 0, pieces = 0;
  for (auto _ : state) {
    const auto dug = design::excavate(input, survey);
    area = dug.dug.area;
    pieces = static_cast<double>(dug.dug.pieces.size());
  }
  const double side = 2 * static_cast<double>(state.range(0));
  state.counters["percent"] = 100 * area / (side * side);
  state.counters["pieces"] = pieces;
}

BENCHMARK(ground)->Arg(500)->Unit(benchmark::kMillisecond)->Iterations(3);
BENCHMARK(pit)->Args({500, 1})->Args({160, 1})->Args({500, 30})->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace squaredig

BENCHMARK_MAIN();
