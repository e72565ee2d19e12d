// Ground surfaces and the pit in them: triangulate(), the ground stage with its examination, cut,
// cells and surface against surface, with raw CGAL insertion of spatially sorted points beside
// them, in one run: without constraints ("raw_cgal"), and constrained by the handles of the
// breaklines' vertices
// ("raw_cgal_breaklines"). Jittered points, one to a square metre, to the millimetre. Peak memory
// of a run over what its input takes is told in bytes to a point. Run one size with, for instance,
// --benchmark_filter=1e6.
#include <CGAL/Constrained_Delaunay_triangulation_2.h>
#include <CGAL/Delaunay_triangulation_2.h>
#include <CGAL/Exact_predicates_inexact_constructions_kernel.h>
#include <CGAL/Triangulation_vertex_base_with_info_2.h>
#include <CGAL/property_map.h>
#include <CGAL/spatial_sort.h>

#include <cmath>
#include <fstream>
#include <random>

#include "dig/dig.h"
#include "geometry/locate.h"
#include "geometry/overlay.h"
#include "geometry/triangulate.h"
#include "ground/examine.h"
#include "grounds.h"
#include "speed/ratio_report.h"

namespace squaredig::speed {
namespace {

using geometry::Index;
using Kernel = CGAL::Exact_predicates_inexact_constructions_kernel;
using Numbered = std::pair<Kernel::Point_2, Index>;

// In random order, as no survey is worse.
std::vector<geometry::Point3> jittered(std::size_t count) {
  std::mt19937 random(7);
  const auto side = static_cast<std::size_t>(std::sqrt(static_cast<double>(count)));
  std::vector<geometry::Point3> points;
  for (std::size_t i = 0; i < count; ++i) {
    const auto millimetres = [&] { return static_cast<double>(random() % 900) / 1000; };
    const double x = static_cast<double>(i % side) + millimetres();
    const double y = static_cast<double>(i / side) + millimetres();
    points.push_back({x, y, 60 + std::sin(x / 20) + std::cos(y / 30)});
  }
  for (std::size_t i = count; i > 1; --i) std::swap(points[i - 1], points[random() % i]);
  return points;
}

// Breaklines of 10 m, with vertices every metre, about one point in a hundred.
void add_breaklines(geometry::TriangulationInput& input, std::size_t vertices) {
  std::mt19937 random(8);
  const auto side = static_cast<unsigned>(std::sqrt(static_cast<double>(input.points.size())));
  for (std::size_t s = 0; s < vertices / 10; ++s) {
    geometry::Constraint c;
    c.string = static_cast<Index>(s);
    const auto x = static_cast<double>(random() % side), y = static_cast<double>(random() % side);
    for (int v = 0; v < 10; ++v) {
      c.vertices.push_back(static_cast<Index>(input.points.size()));
      input.points.push_back({x + v + 0.0005, y + 0.3 * v + 0.0005, 60});
    }
    input.constraints.push_back(std::move(c));
  }
}

std::size_t raw_cgal(const std::vector<geometry::Point3>& points) {
  using Vertex = CGAL::Triangulation_vertex_base_with_info_2<Index, Kernel>;
  using Data = CGAL::Triangulation_data_structure_2<Vertex>;
  std::vector<Numbered> sorted;
  sorted.reserve(points.size());
  for (std::size_t i = 0; i < points.size(); ++i)
    sorted.emplace_back(Kernel::Point_2(points[i].x, points[i].y), static_cast<Index>(i));
  using Map = CGAL::First_of_pair_property_map<Numbered>;
  CGAL::spatial_sort(sorted.begin(), sorted.end(),
                     CGAL::Spatial_sort_traits_adapter_2<Kernel, Map>());
  CGAL::Delaunay_triangulation_2<Kernel, Data> t;
  decltype(t)::Face_handle hint;
  for (const auto& [point, number] : sorted) {
    const auto vertex = t.insert(point, hint);
    vertex->info() = number;
    hint = vertex->face();
  }
  return t.number_of_faces();
}

// The same with breaklines: their vertices go in with the points, and handles constrain.
std::size_t raw_cgal_breaklines(const geometry::TriangulationInput& input) {
  using Vertex = CGAL::Triangulation_vertex_base_with_info_2<Index, Kernel>;
  using Face = CGAL::Constrained_triangulation_face_base_2<Kernel>;
  using Data = CGAL::Triangulation_data_structure_2<Vertex, Face>;
  using Constrained =
      CGAL::Constrained_Delaunay_triangulation_2<Kernel, Data, CGAL::Exact_predicates_tag>;
  std::vector<Numbered> sorted;
  sorted.reserve(input.points.size());
  for (const auto& p : input.points)
    sorted.emplace_back(Kernel::Point_2(p.x, p.y), static_cast<Index>(sorted.size()));
  using Map = CGAL::First_of_pair_property_map<Numbered>;
  CGAL::spatial_sort(sorted.begin(), sorted.end(),
                     CGAL::Spatial_sort_traits_adapter_2<Kernel, Map>());
  Constrained t;
  std::vector<Constrained::Vertex_handle> handles(sorted.size());
  Constrained::Face_handle hint;
  for (const auto& [point, number] : sorted) {
    const auto vertex = t.insert(point, hint);
    handles[static_cast<std::size_t>(number)] = vertex;
    hint = vertex->face();
  }
  for (const auto& c : input.constraints)
    for (std::size_t v = 0; v + 1 < c.vertices.size(); ++v)
      t.insert_constraint(handles[static_cast<std::size_t>(c.vertices[v])],
                          handles[static_cast<std::size_t>(c.vertices[v + 1])]);
  return t.number_of_faces();
}

// Resident memory in bytes: now, or the most since forget_peak().
double resident(const std::string& key) {
  std::ifstream status("/proc/self/status");
  for (std::string word; status >> word;)
    if (double kilobytes = 0; word == key && status >> kilobytes) return kilobytes * 1024;
  return 0;
}

void forget_peak() { std::ofstream("/proc/self/clear_refs") << 5; }

// The input of the ground stage, at a large survey's coordinates.
ground::GroundInput ground_input(std::size_t count) {
  geometry::TriangulationInput made;
  made.points = jittered(count);
  add_breaklines(made, count / 100);
  ground::GroundInput input;
  input.points.add_file("ground.csv");
  input.sigma_height = Length::millimetres(15);
  input.longest_edge = Length::metres(30);
  const auto on_grid = [](const geometry::Point3& p) {
    return grid_position(300000 + p.x, 5800000 + p.y, p.z);
  };
  for (std::size_t i = 0; i < count; ++i)
    input.points.add({on_grid(made.points[i])}, std::to_string(i + 1), "GL");
  for (const auto& c : made.constraints) {
    SurveyString s;
    s.name = std::to_string(c.string);
    for (const Index v : c.vertices)
      s.vertices.push_back({on_grid(made.points[static_cast<std::size_t>(v)])});
    input.breaklines.push_back(std::move(s));
  }
  return input;
}

// A tank's pit in the middle of the points, three metres deep.
design::DesignInput pit_in(std::size_t count) {
  const double middle = std::floor(std::sqrt(static_cast<double>(count)) / 2);
  return testing::plain_pit(24, 9.6, 57, Batter::run_per_rise(1), grid_point(middle, middle),
                            Bearing::degrees(37.5));
}

std::string size_name(std::size_t count) {
  return "1e" + std::to_string(std::lround(std::log10(static_cast<double>(count))));
}

using Work = void (*)(std::size_t, benchmark::State&);

void add(std::size_t count, const std::string& method, Work work) {
  benchmark::RegisterBenchmark(("ground_" + size_name(count) + "/" + method).c_str(),
                               [count, work](benchmark::State& state) { work(count, state); })
      ->Unit(benchmark::kMillisecond)
      ->Iterations(1)
      ->Repetitions(count > 2000000 ? 2 : 5);
}

void register_triangulation(std::size_t count) {
  add(count, "raw_cgal", [](std::size_t n, benchmark::State& state) {
    const auto points = jittered(n);
    for (auto _ : state) benchmark::DoNotOptimize(raw_cgal(points));
  });
  add(count, "triangulate", [](std::size_t n, benchmark::State& state) {
    geometry::TriangulationInput input;
    input.points = jittered(n);
    for (auto _ : state)
      benchmark::DoNotOptimize(geometry::triangulate(std::move(input)).surface.triangles.size());
  });
  add(count, "triangulate_with_breaklines", [](std::size_t n, benchmark::State& state) {
    geometry::TriangulationInput input;
    input.points = jittered(n);
    add_breaklines(input, n / 100);
    for (auto _ : state)
      benchmark::DoNotOptimize(geometry::triangulate(std::move(input)).surface.triangles.size());
  });
  add(count, "raw_cgal_breaklines", [](std::size_t n, benchmark::State& state) {
    geometry::TriangulationInput input;
    input.points = jittered(n);
    add_breaklines(input, n / 100);
    for (auto _ : state) benchmark::DoNotOptimize(raw_cgal_breaklines(input));
  });
}

void register_ground(std::size_t count) {
  add(count, "ground_examined", [](std::size_t n, benchmark::State& state) {
    const auto input = ground_input(n);
    const auto frame = geometry::SiteFrame::around(input.points.points[0].at);
    const double before = resident("VmRSS:");
    forget_peak();
    for (auto _ : state) {
      const auto built = ground::build_ground(input, frame);
      benchmark::DoNotOptimize(ground::examine(input, built).triangles);
    }
    state.counters["bytes_per_point"] = (resident("VmHWM:") - before) / static_cast<double>(n);
  });
  add(count, "ground_built", [](std::size_t n, benchmark::State& state) {
    const auto input = ground_input(n);
    const auto frame = geometry::SiteFrame::around(input.points.points[0].at);
    const double before = resident("VmRSS:");
    forget_peak();
    for (auto _ : state) benchmark::DoNotOptimize(ground::build_ground(input, frame).row.size());
    state.counters["bytes_per_point"] = (resident("VmHWM:") - before) / static_cast<double>(n);
  });
}

void register_surfaces(std::size_t count) {
  add(count, "surface_against_surface", [](std::size_t n, benchmark::State& state) {
    const auto surface = geometry::triangulate({jittered(n), {}, {}, 0}).surface;
    auto moved = jittered(n);
    for (auto& p : moved) p = {p.x + 0.3337, p.y + 0.4111, p.z + 0.05 * std::sin(p.x)};
    const auto other = geometry::triangulate({moved, {}, {}, 0}).surface;
    for (auto _ : state) {
      const geometry::Locator locator(surface);
      benchmark::DoNotOptimize(geometry::between(surface, locator, other).above);
    }
  });
  add(count, "cut", [](std::size_t n, benchmark::State& state) {
    testing::MadeSurvey survey(geometry::triangulate({jittered(n), {}, {}, 0}).surface);
    const auto pit = pit_in(n);
    for (auto _ : state) benchmark::DoNotOptimize(design::excavate(pit, survey).dug.volume);
  });
  add(count, "cells", [](std::size_t n, benchmark::State& state) {
    testing::MadeSurvey survey(geometry::triangulate({jittered(n), {}, {}, 0}).surface);
    const auto input = pit_in(n);
    const auto pit = design::excavate(input, survey);
    dig::DigInput stage;
    stage.cell = Length::metres(1);
    for (auto _ : state)
      benchmark::DoNotOptimize(dig::dig(stage, input, pit, survey).grid.cells.size());
  });
  add(count, "verify", [](std::size_t n, benchmark::State& state) {
    const geometry::Surface surface = geometry::triangulate({jittered(n), {}, {}, 0}).surface;
    for (auto _ : state) benchmark::DoNotOptimize(geometry::verify(surface).size());
  });
  add(count, "locator", [](std::size_t n, benchmark::State& state) {
    const geometry::Surface surface = geometry::triangulate({jittered(n), {}, {}, 0}).surface;
    for (auto _ : state) {
      const geometry::Locator locator(surface);
      benchmark::DoNotOptimize(locator.height_at({1, 1}));
    }
  });
}

}  // namespace
}  // namespace squaredig::speed

int main(int argc, char** argv) {
  benchmark::Initialize(&argc, argv);
  for (const std::size_t count : {100000U, 1000000U, 10000000U}) {
    squaredig::speed::register_triangulation(count);
    squaredig::speed::register_ground(count);
    squaredig::speed::register_surfaces(count);
  }
  squaredig::speed::RatioReport report({"raw_cgal"});
  benchmark::RunSpecifiedBenchmarks(&report);
  return 0;
}
