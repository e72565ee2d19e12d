// Large files in: a LAS file of 1 GB read for the window round a pit and read whole, and a LandXML
// surface of 150 MB on a single line. Beside the time each line tells the greatest memory the
// reading took (peak_MB) and how much of that every point kept costs (bytes_kept). The files are
// made first, in TMPDIR. One size with, for instance, --benchmark_filter=las_1GB.
#include <benchmark/benchmark.h>

#include <cmath>
#include <cstring>
#include <fstream>

#include "formats/input_file.h"
#include "formats/landxml_read.h"
#include "formats/las_read.h"
#include "quantity/number_text.h"

namespace squaredig::speed {
namespace {

constexpr std::size_t kPoints = 50'000'000;  // of 20 bytes each
constexpr std::size_t kAcross = 7072;        // to a row, a metre apart

formats::SourceFile source_of(const std::string& name) {
  const char* folder = std::getenv("TMPDIR");
  formats::SourceFile source;
  source.path = std::string(folder == nullptr ? "/tmp" : folder) + "/squaredig_speed_" + name;
  source.name = name;
  return source;
}

template <class Number>
void put(char* at, Number value) {
  std::memcpy(at, &value, sizeof value);
}

// Jittered points of class 2 at a scale of 1 mm.
formats::SourceFile las_file() {
  const auto source = source_of("scan.las");
  std::ofstream file(source.path, std::ios::binary);
  std::string head(227, '\0');
  std::memcpy(head.data(), "LASF", 4);
  head[24] = 1;
  head[25] = 2;
  put(&head[94], std::uint16_t{227});
  put(&head[96], std::uint32_t{227});
  put(&head[105], std::uint16_t{20});
  put(&head[107], static_cast<std::uint32_t>(kPoints));
  for (std::size_t i = 0; i < 3; ++i) {
    put(&head[131 + 8 * i], 0.001);
    put(&head[155 + 8 * i], i == 0 ? 300000.0 : i == 1 ? 5800000.0 : 0.0);
    put(&head[179 + 16 * i], 1e7);
  }
  file << head;
  std::string row(20 * kAcross, '\0');
  std::uint32_t dice = 1;
  for (std::size_t done = 0; done < kPoints;) {
    const std::size_t now = std::min(kAcross, kPoints - done);
    for (std::size_t i = 0; i < now; ++i) {
      dice = dice * 1664525U + 1013904223U;
      char* const at = row.data() + 20 * i;
      put(at, static_cast<std::int32_t>(1000 * i + (dice >> 23U)));
      put(at + 4, static_cast<std::int32_t>(1000 * (done / kAcross) + (dice >> 14U) % 500));
      put(at + 8, static_cast<std::int32_t>(62000 + (dice >> 8U) % 300));
      at[15] = 2;
    }
    file.write(row.data(), static_cast<std::streamsize>(20 * now));
    done += now;
  }
  return source;
}

// A square of triangles, written without one line break.
formats::SourceFile landxml_file() {
  constexpr int kSide = 1250;
  const auto source = source_of("surface.xml");
  std::ofstream file(source.path, std::ios::binary);
  file << "<LandXML xmlns=\"http://www.landxml.org/schema/LandXML-1.2\" "
          "version=\"1.2\"><Units><Metric "
          "linearUnit=\"meter\"/></Units><Surfaces><Surface name=\"ground\"><Definition "
          "surfType=\"TIN\"><Pnts>";
  for (int i = 0; i < kSide * kSide; ++i)
    file << "<P id=\"" << i + 1 << "\">" << fixed(5800000.125 + i / kSide, 4) << ' '
         << fixed(300000.375 + i % kSide, 4) << ' ' << fixed(62 + std::sin(i), 4) << "</P>";
  file << "</Pnts><Faces>";
  for (int i = kSide + 1; i < kSide * kSide; ++i)
    if (i % kSide != 0)
      file << "<F>" << i - kSide << ' ' << i + 1 - kSide << ' ' << i + 1 << "</F><F>" << i - kSide
           << ' ' << i + 1 << ' ' << i << "</F>";
  file << "</Faces></Definition></Surface></Surfaces></LandXML>";
  return source;
}

// The greatest memory of this process since forget_peak, in bytes.
double peak() {
  std::ifstream status("/proc/self/status");
  for (std::string word; status >> word;)
    if (word == "VmHWM:") {
      double kilobytes = 0;
      status >> kilobytes;
      return kilobytes * 1024;
    }
  return 0;
}
double forget_peak() {
  std::ofstream("/proc/self/clear_refs") << 5;
  return peak();
}

template <class Read>
void add(const std::string& name, formats::SourceFile (*make)(), Read read) {
  benchmark::RegisterBenchmark(
      name.c_str(),
      [make, read](benchmark::State& state) {
        const auto source = make();
        const auto size = formats::InputFile(source).size();
        double kept = 0, most = 0;
        for (auto _ : state) {
          const double before = forget_peak();
          kept = static_cast<double>(read(source));
          most = peak() - before;
        }
        state.SetBytesProcessed(state.iterations() * static_cast<std::int64_t>(size));
        state.counters["file_MB"] = static_cast<double>(size) / 1e6;
        state.counters["kept"] = kept;
        state.counters["peak_MB"] = most / 1e6;
        state.counters["bytes_kept"] = most / kept;
        std::remove(source.path.c_str());
      })
      ->Unit(benchmark::kMillisecond)
      ->Iterations(1);
}

std::size_t window(const formats::SourceFile& source) {
  formats::PointsWanted wanted;
  wanted.keep = [](const GridPosition& p) {
    return p.at.easting < Easting::metres(300150) && p.at.northing < Northing::metres(5800150);
  };
  return formats::read_las_points(source, wanted).points.size();
}

}  // namespace
}  // namespace squaredig::speed

int main(int argc, char** argv) {
  using namespace squaredig;
  speed::add("las_1GB/window", speed::las_file, speed::window);
  speed::add("las_1GB/whole", speed::las_file, [](const formats::SourceFile& source) {
    return formats::read_las_points(source).points.size();
  });
  speed::add("landxml_one_line/surface", speed::landxml_file,
             [](const formats::SourceFile& source) {
               return formats::read_landxml_surface(source).mesh.vertices.size();
             });
  benchmark::Initialize(&argc, argv);
  benchmark::RunSpecifiedBenchmarks();
}
