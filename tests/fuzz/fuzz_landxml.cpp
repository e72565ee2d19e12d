// Fuzzer of LandXML, in its three readings.
#include "formats/landxml_read.h"
#include "fuzz/fuzz_target.h"

using namespace squaredig;
using fuzz::reading;
using fuzz::sound;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const fuzz::FuzzFile file(data, size);
  const auto& source = file.source();
  reading([&] { sound(formats::read_landxml_surface(source).mesh); });
  reading([&] { sound(formats::read_landxml_points(source).points); });
  reading(
      [&] { sound(formats::read_landxml_breaklines(source, formats::Heights::Needed).strings); });
  return 0;
}
