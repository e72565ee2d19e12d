// The exact volume beside a general library's boolean of closed meshes, and the cells' cut and its
// GeoTIFF beside a general library's interpolation of the same points on as many cells.
//
// One convex pit: its volume by geometry::cut, and by CGAL's corefinement of the closed solid of
// the ground and the closed solid of what lies above the pit; both volumes are printed.
// GDAL's linear gridding triangulates the points and reads heights at cell centres, which is less
// than the stage does: it clips the cut exactly to each cell as well.
#include <CGAL/Exact_predicates_inexact_constructions_kernel.h>
#include <CGAL/Polygon_mesh_processing/corefinement.h>
#include <CGAL/Polygon_mesh_processing/measure.h>
#include <CGAL/Surface_mesh.h>
#include <gdal_alg.h>
#include <gdal_priv.h>

#include "dig/dig.h"
#include "formats/geotiff_write.h"
#include "geometry/cut.h"
#include "geometry/triangulate.h"
#include "grounds.h"
#include "speed/ratio_report.h"

namespace squaredig::speed {
namespace {

using Kernel = CGAL::Exact_predicates_inexact_constructions_kernel;
using Mesh = CGAL::Surface_mesh<Kernel::Point_3>;
using geometry::Index;

constexpr unsigned kSeed = 4;

// One point to a square metre, over a square round the origin.
std::vector<geometry::Point3> scattered(double half) {
  std::mt19937 random(kSeed);
  std::uniform_real_distribution<double> at(-half, half);
  const auto height = testing::rough_ground(kSeed, 5, 0.4);
  std::vector<geometry::Point3> points;
  for (int i = 0; i < static_cast<int>(4 * half * half); ++i) {
    const double x = at(random), y = at(random);
    points.push_back({x, y, height(x, y)});
  }
  return points;
}

geometry::Surface surface_of(double half) {
  return geometry::triangulate({scattered(half), {}, {}, 0}).surface;
}

// A turned rectangle at level 0 whose sides rise one to one.
geometry::ConvexCut pit() {
  const double c = std::cos(0.4), n = std::sin(0.4);
  geometry::ConvexCut cut;
  for (const auto& [u, v] : {std::pair{-44, -38}, {44, -38}, {44, 38}, {-44, 38}})
    cut.toe.push_back({c * u - n * v, n * u + c * v});
  cut.floor = {cut.toe[0], 0, 0, 0};
  for (std::size_t i = 0; i < 4; ++i) {
    const auto in = geometry::HalfPlane::left_of(cut.toe[i], cut.toe[(i + 1) % 4]);
    cut.faces.push_back({{cut.toe[i], 0, -in.a, -in.b}, static_cast<Index>(i)});
  }
  return cut;
}

// What lies above the pit up to a level, closed: a toe below, a larger one above.
Mesh solid_above(const geometry::ConvexCut& cut, double level) {
  Mesh mesh;
  std::vector<Mesh::Vertex_index> low, high;
  const std::size_t n = cut.toe.size();
  for (std::size_t i = 0; i < n; ++i) {
    const auto before = geometry::HalfPlane::left_of(cut.toe[(i + n - 1) % n], cut.toe[i]);
    const auto after = geometry::HalfPlane::left_of(cut.toe[i], cut.toe[(i + 1) % n]);
    const auto p = cut.toe[i];
    low.push_back(mesh.add_vertex({p.x, p.y, 0}));
    // the sides are square to each other
    high.push_back(mesh.add_vertex(
        {p.x - level * (before.a + after.a), p.y - level * (before.b + after.b), level}));
  }
  mesh.add_face(low[0], low[2], low[1]);
  mesh.add_face(low[0], low[3], low[2]);
  mesh.add_face(high[0], high[1], high[2]);
  mesh.add_face(high[0], high[2], high[3]);
  for (std::size_t i = 0; i < n; ++i) {
    const std::size_t j = (i + 1) % n;
    mesh.add_face(low[i], low[j], high[j]);
    mesh.add_face(low[i], high[j], high[i]);
  }
  return mesh;
}

// The ground down to a level, closed: its own triangles above and below, walls round the rim.
Mesh solid_below(const geometry::Surface& ground, double level) {
  Mesh mesh;
  std::vector<Mesh::Vertex_index> top, bottom;
  for (const auto& v : ground.vertices) {
    top.push_back(mesh.add_vertex({v.x, v.y, v.z}));
    bottom.push_back(mesh.add_vertex({v.x, v.y, level}));
  }
  const auto at = [](const auto& list, Index i) { return list[static_cast<std::size_t>(i)]; };
  for (std::size_t t = 0; t < ground.triangles.size(); ++t) {
    const auto& c = ground.triangles[t];
    mesh.add_face(at(top, c[0]), at(top, c[1]), at(top, c[2]));
    mesh.add_face(at(bottom, c[0]), at(bottom, c[2]), at(bottom, c[1]));
    for (std::size_t i = 0; i < 3; ++i) {
      if (ground.neighbours[t][i] != geometry::kNone) continue;
      const Index a = c[i], b = c[(i + 1) % 3];
      mesh.add_face(at(top, b), at(top, a), at(bottom, a));
      mesh.add_face(at(top, b), at(bottom, a), at(bottom, b));
    }
  }
  return mesh;
}

void volume_exact(benchmark::State& state, double half) {
  const auto ground = surface_of(half);
  const std::vector cuts{pit()};
  for (auto _ : state) state.counters["m3"] = geometry::cut(ground, cuts).volume;
}

void volume_by_corefinement(benchmark::State& state, double half) {
  const Mesh ground = solid_below(surface_of(half), -2), above = solid_above(pit(), 12);
  for (auto _ : state) {
    state.PauseTiming();
    Mesh one = ground, other = above, left;
    state.ResumeTiming();
    if (!CGAL::Polygon_mesh_processing::corefine_and_compute_difference(one, other, left))
      state.SkipWithError("no difference");
    const double volume = CGAL::to_double(CGAL::Polygon_mesh_processing::volume(left));
    state.PauseTiming();
    state.counters["m3"] = CGAL::to_double(CGAL::Polygon_mesh_processing::volume(ground)) - volume;
    state.ResumeTiming();
  }
}

constexpr double kAround = 80;  // m from the middle of the pit to the edge of the cells' ground

void cells(benchmark::State& state, double size) {
  testing::MadeSurvey survey(surface_of(kAround));
  const auto input = testing::plain_pit(88, 76, 0, Batter::run_per_rise(1), grid_point(0.3, -0.7),
                                        Bearing::degrees(37.5));
  const auto excavation = design::excavate(input, survey);
  dig::DigInput stage;
  stage.cell = Length::metres(size);
  for (auto _ : state) {
    const auto result = dig::dig(stage, input, excavation, survey);
    formats::Raster raster{result.raster.origin,
                           result.raster.bearing,
                           result.raster.size,
                           result.raster.columns,
                           result.raster.rows,
                           {},
                           "local",
                           "cut"};
    for (const auto& value : result.raster.cut)
      raster.cells.push_back(value ? std::optional(value->in_metres()) : std::nullopt);
    state.counters["MB"] = static_cast<double>(formats::geotiff_bytes(raster).size()) / 1e6;
    state.counters["cells"] = raster.columns * raster.rows;
  }
}

void gdal_linear(benchmark::State& state, double size) {
  const auto points = scattered(kAround);
  std::vector<double> x, y, z;
  for (const auto& p : points) x.push_back(p.x), y.push_back(p.y), z.push_back(p.z);
  GDALRegister_GTiff();
  const int side = static_cast<int>(97 / size);  // a square of as many cells as the pit's rectangle
  GDALGridLinearOptions options{};
  options.nSizeOfStructure = sizeof options;
  options.dfRadius = -1;
  options.dfNoDataValue = -9999;
  const std::size_t count = static_cast<std::size_t>(side) * static_cast<std::size_t>(side);
  for (auto _ : state) {
    std::vector<float> band(count);
    const double half = side * size / 2;
    if (GDALGridCreate(GGA_Linear, &options, static_cast<GUInt32>(x.size()), x.data(), y.data(),
                       z.data(), -half, half, -half, half, static_cast<GUInt32>(side),
                       static_cast<GUInt32>(side), GDT_Float32, band.data(), nullptr,
                       nullptr) != CE_None)
      state.SkipWithError("GDAL cannot grid");
    GDALDataset* file = GetGDALDriverManager()->GetDriverByName("GTiff")->Create(
        "/vsimem/beside.tif", side, side, 1, GDT_Float32, nullptr);
    if (file->GetRasterBand(1)->RasterIO(GF_Write, 0, 0, side, side, band.data(), side, side,
                                         GDT_Float32, 0, 0) != CE_None)
      state.SkipWithError("GDAL cannot write");
    GDALClose(file);
    state.counters["cells"] = static_cast<double>(count);
  }
}

template <class Work>
void add(const std::string& name, double size, Work work) {
  benchmark::RegisterBenchmark(name.c_str(),
                               [size, work](benchmark::State& state) { work(state, size); })
      ->Unit(benchmark::kMillisecond)
      ->Iterations(1)
      ->Repetitions(3);
}

void register_all() {
  add("volume_2e5_triangles/exact", 158, volume_exact);
  add("volume_2e5_triangles/corefinement", 158, volume_by_corefinement);
  for (const auto& [name, size] : {std::pair{"cells_1e4", 1.0}, {"cells_1e6", 0.1}}) {
    add(std::string(name) + "/exact", size, cells);
    add(std::string(name) + "/gdal_linear", size, gdal_linear);
  }
}

}  // namespace
}  // namespace squaredig::speed

int main(int argc, char** argv) {
  benchmark::Initialize(&argc, argv);
  squaredig::speed::register_all();
  squaredig::speed::RatioReport report({"exact"});
  benchmark::RunSpecifiedBenchmarks(&report);
  return 0;
}
