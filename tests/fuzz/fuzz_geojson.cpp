// Fuzzer of GeoJSON, in its two readings.
#include "formats/geojson_read.h"
#include "fuzz/fuzz_target.h"

namespace squaredig::fuzz {

void read_input(const formats::SourceFile& file) {
  reading([&] { sound(formats::read_geojson_points(file).points); });
  reading([&] { sound(formats::read_geojson_strings(file, formats::Heights::Needed).strings); });
}

}  // namespace squaredig::fuzz
