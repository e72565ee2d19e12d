// Fuzzer of geoid grids.
#include "formats/geoid_file.h"
#include "fuzz/fuzz_target.h"

namespace squaredig::fuzz {

void read_input(const formats::SourceFile& file) {
  reading([&] { formats::read_geoid_file(file, {"job.toml"}); });
}

}  // namespace squaredig::fuzz
