// Fuzzer of LAS.
#include "formats/las_read.h"
#include "fuzz/fuzz_target.h"

using namespace squaredig;
using fuzz::reading;
using fuzz::sound;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const fuzz::FuzzFile file(data, size);
  const auto& source = file.source();
  reading([&] { sound(formats::read_las_points(source).points); });
  return 0;
}
