// Fuzzer of LandXML, in its three readings.
#include "formats/landxml_read.h"
#include "fuzz/fuzz_target.h"

namespace squaredig::fuzz {

void read_input(const formats::SourceFile& file) {
  reading([&] { sound(formats::read_landxml_surface(file).mesh); });
  reading([&] { sound(formats::read_landxml_points(file).points); });
  reading([&] { sound(formats::read_landxml_breaklines(file, formats::Heights::Needed).strings); });
}

}  // namespace squaredig::fuzz
