// Fuzzer of the field books and the small tables.
#include "formats/compaction_csv.h"
#include "formats/gnss_csv.h"
#include "formats/levels_csv.h"
#include "formats/lift_log_csv.h"
#include "formats/pairs_csv.h"
#include "formats/stations_csv.h"
#include "formats/tape_csv.h"
#include "fuzz/fuzz_target.h"

using namespace squaredig;
using fuzz::reading;
using fuzz::sound;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const fuzz::FuzzFile file(data, size);
  const auto& source = file.source();
  reading([&] { formats::read_stations_csv(source, AngleNotation::DegreesMinutesSeconds); });
  reading([&] { formats::read_levels_csv(source); });
  reading([&] { formats::read_two_peg_csv(source); });
  reading([&] { formats::read_gnss_csv(source); });
  reading([&] { formats::read_pairs_csv(source); });
  reading([&] { formats::read_tape_csv(source); });
  reading([&] { formats::read_compaction_csv(source); });
  reading([&] { formats::read_lift_log_csv(source); });
  return 0;
}
