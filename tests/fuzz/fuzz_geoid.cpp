// Fuzzer of geoid grids.
#include "formats/geoid_file.h"
#include "fuzz/fuzz_target.h"

using namespace squaredig;
using fuzz::reading;
using fuzz::sound;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const fuzz::FuzzFile file(data, size);
  const auto& source = file.source();
  reading([&] { formats::read_geoid_file(source, {"job.toml"}); });
  return 0;
}
