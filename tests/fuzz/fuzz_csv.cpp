// Fuzzer of points and strings in CSV.
#include "formats/points_csv.h"
#include "formats/strings_csv.h"
#include "fuzz/fuzz_target.h"

using namespace squaredig;
using fuzz::reading;
using fuzz::sound;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const fuzz::FuzzFile file(data, size);
  const auto& source = file.source();
  reading([&] { sound(formats::read_points_csv(source).points); });
  reading([&] { sound(formats::read_strings_csv(source, formats::Heights::Needed).strings); });
  return 0;
}
