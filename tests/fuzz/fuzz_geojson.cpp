// Fuzzer of GeoJSON, in its two readings.
#include "formats/geojson_read.h"
#include "fuzz/fuzz_target.h"

using namespace squaredig;
using fuzz::reading;
using fuzz::sound;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const fuzz::FuzzFile file(data, size);
  const auto& source = file.source();
  reading([&] { sound(formats::read_geojson_points(source).points); });
  reading([&] { sound(formats::read_geojson_strings(source, formats::Heights::Needed).strings); });
  return 0;
}
