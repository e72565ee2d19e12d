// Fuzzer of ASCII grids.
#include "formats/raster_read.h"
#include "fuzz/fuzz_target.h"

namespace squaredig::fuzz {

void read_input(const formats::SourceFile& file) {
  reading([&] { sound(formats::read_ascii_grid_points(file).points); });
}

}  // namespace squaredig::fuzz
