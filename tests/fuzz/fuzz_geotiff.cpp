// Fuzzer of GeoTIFF.
#include "formats/raster_read.h"
#include "fuzz/fuzz_target.h"

namespace squaredig::fuzz {

void read_input(const formats::SourceFile& file) {
  reading([&] { sound(formats::read_geotiff_points(file).points); });
}

}  // namespace squaredig::fuzz
