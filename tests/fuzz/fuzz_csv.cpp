// Fuzzer of points and strings in CSV.
#include "formats/points_csv.h"
#include "formats/strings_csv.h"
#include "fuzz/fuzz_target.h"

namespace squaredig::fuzz {

void read_input(const formats::SourceFile& file) {
  reading([&] { sound(formats::read_points_csv(file).points); });
  reading([&] {
    sound(formats::read_points_csv(file, {formats::Heights::Optional, formats::Names::Unique})
              .points);
  });
  reading([&] { sound(formats::read_strings_csv(file, formats::Heights::Needed).strings); });
}

}  // namespace squaredig::fuzz
