// Fuzzer of DXF, in its three readings.
#include "formats/dxf_read.h"
#include "fuzz/fuzz_target.h"

using namespace squaredig;
using fuzz::reading;
using fuzz::sound;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const fuzz::FuzzFile file(data, size);
  const auto& source = file.source();
  reading([&] { sound(formats::read_dxf_points(source).points); });
  reading([&] { sound(formats::read_dxf_strings(source, formats::Heights::Needed).strings); });
  reading([&] { sound(formats::read_dxf_surface(source).mesh); });
  return 0;
}
