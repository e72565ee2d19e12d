// Fuzzer of DXF, in its three readings.
#include "formats/dxf_read.h"
#include "fuzz/fuzz_target.h"

namespace squaredig::fuzz {

void read_input(const formats::SourceFile& file) {
  reading([&] { sound(formats::read_dxf_points(file).points); });
  reading([&] { sound(formats::read_dxf_strings(file, formats::Heights::Needed).strings); });
  reading([&] { sound(formats::read_dxf_surface(file).mesh); });
}

}  // namespace squaredig::fuzz
