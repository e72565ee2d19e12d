// Fuzzer of LAS.
#include "formats/las_read.h"
#include "fuzz/fuzz_target.h"

namespace squaredig::fuzz {

void read_input(const formats::SourceFile& file) {
  reading([&] { sound(formats::read_las_points(file).points); });
}

}  // namespace squaredig::fuzz
