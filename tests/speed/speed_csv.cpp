// Points CSV in: read_points_csv() with plain loops of std::from_chars and of strtod beside it, in
// one run. The plain loops take the file as it comes: they check nothing, hash nothing, keep no
// line and know no header. Run one size with, for instance, --benchmark_filter=1e6.
#include <array>
#include <charconv>
#include <cmath>
#include <cstdlib>
#include <cstring>
#include <fstream>
#include <random>

#include "formats/input_file.h"
#include "formats/landxml_read.h"
#include "formats/landxml_write.h"
#include "formats/points_csv.h"
#include "quantity/number_text.h"
#include "speed/ratio_report.h"

namespace squaredig::speed {
namespace {

std::string size_name(std::size_t count) {
  return "1e" + std::to_string(std::lround(std::log10(static_cast<double>(count))));
}

formats::SourceFile source_of(const std::string& name) {
  const char* folder = std::getenv("TMPDIR");
  formats::SourceFile source;
  source.path = std::string(folder == nullptr ? "/tmp" : folder) + "/squaredig_speed_" + name;
  source.name = name;
  return source;
}

// Points to the millimetre, numbered upward, of two codes.
formats::SourceFile points_file(std::size_t count) {
  const auto source = source_of("points_" + size_name(count) + ".csv");
  std::mt19937 random(11);
  std::ofstream file(source.path, std::ios::binary);
  file << "point,easting,northing,height,code\n";
  const auto metres = [&](unsigned low, unsigned range) {
    return fixed(low + static_cast<double>(random() % (range * 1000)) / 1000, 3);
  };
  for (std::size_t i = 1; i <= count; ++i)
    file << i << ',' << metres(300000, 1000) << ',' << metres(5800000, 1000) << ','
         << metres(60, 10) << (i % 100 < 70 ? ",GL\n" : ",TOB\n");
  return source;
}

template <class Number>
std::size_t plain(const formats::SourceFile& source, Number number) {
  const std::string bytes = formats::read_whole(source);
  const char* at = bytes.data();
  const char* const end = at + bytes.size();
  const auto behind = [end](const char* from, char c) {
    const auto left = static_cast<std::size_t>(end - from);
    return static_cast<const char*>(std::memchr(from, c, left)) + 1;
  };
  std::vector<std::array<double, 3>> points;
  for (at = behind(at, '\n'); at < end; at = behind(at, '\n')) {
    std::array<double, 3> point{};
    for (double& coordinate : point) {
      at = behind(at, ',');
      coordinate = number(at, end);
    }
    points.push_back(point);
  }
  return points.size();
}

double by_from_chars(const char* at, const char* end) {
  double value = 0;
  std::from_chars(at, end, value);
  return value;
}

double by_strtod(const char* at, const char*) { return std::strtod(at, nullptr); }

void add_csv(std::size_t count) {
  const auto add = [&](const std::string& method, auto work) {
    benchmark::RegisterBenchmark(
        ("csv_" + size_name(count) + "/" + method).c_str(),
        [count, work](benchmark::State& state) {
          const auto source = points_file(count);
          for (auto _ : state) benchmark::DoNotOptimize(work(source));
          state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(count));
          std::remove(source.path.c_str());
        })
        ->Unit(benchmark::kMillisecond);
  };
  add("from_chars", [](const auto& source) { return plain(source, by_from_chars); });
  add("strtod", [](const auto& source) { return plain(source, by_strtod); });
  add("hash_alone", [](const auto& source) { return formats::sha256_of_file(source).size(); });
  add("read_points_csv",
      [](const auto& source) { return formats::read_points_csv(source).points.size(); });
  add("read_points_csv_window", [](const auto& source) {
    formats::PointsWanted window;
    window.keep = [](const GridPosition& p) { return p.at.easting < Easting::metres(300010); };
    return formats::read_points_csv(source, window).points.size();
  });
}

// A square of triangles, two to a square metre.
formats::LandXmlOut mesh_document(std::size_t count) {
  formats::LandXmlOut document;
  document.job = "speed";
  document.crs = "local";
  SurfaceMesh mesh;
  mesh.name = "ground";
  const auto side = static_cast<std::int32_t>(std::sqrt(static_cast<double>(count)));
  for (std::int32_t row = 0; row < side; ++row)
    for (std::int32_t column = 0; column < side; ++column) {
      mesh.vertices.push_back(
          grid_position(300000.125 + column, 5800000.375 + row, 60 + std::sin(row + column)));
      const std::int32_t here = row * side + column;
      if (row == 0 || column == 0) continue;
      mesh.faces.push_back({here - side - 1, here - side, here});
      mesh.faces.push_back({here - side - 1, here, here - 1});
    }
  document.surfaces.push_back({std::move(mesh), ""});
  return document;
}

void add_landxml(std::size_t count) {
  benchmark::RegisterBenchmark(("landxml_" + size_name(count) + "/write").c_str(),
                               [count](benchmark::State& state) {
                                 const auto document = mesh_document(count);
                                 for (auto _ : state)
                                   benchmark::DoNotOptimize(formats::landxml_text(document).size());
                               })
      ->Unit(benchmark::kMillisecond);
  benchmark::RegisterBenchmark(
      ("landxml_" + size_name(count) + "/read").c_str(),
      [count](benchmark::State& state) {
        const auto source = source_of("surface.xml");
        std::ofstream(source.path, std::ios::binary) << formats::landxml_text(mesh_document(count));
        for (auto _ : state)
          benchmark::DoNotOptimize(formats::read_landxml_surface(source).mesh.faces.size());
        std::remove(source.path.c_str());
      })
      ->Unit(benchmark::kMillisecond);
}

}  // namespace
}  // namespace squaredig::speed

int main(int argc, char** argv) {
  for (const std::size_t count : {100000U, 1000000U, 10000000U}) squaredig::speed::add_csv(count);
  for (const std::size_t count : {100000U, 1000000U}) squaredig::speed::add_landxml(count);
  benchmark::Initialize(&argc, argv);
  squaredig::speed::RatioReport report({"from_chars"});
  benchmark::RunSpecifiedBenchmarks(&report);
}
