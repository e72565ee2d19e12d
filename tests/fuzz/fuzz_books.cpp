// Fuzzer of the field books and the small tables.
#include "formats/compaction_csv.h"
#include "formats/gnss_csv.h"
#include "formats/levels_csv.h"
#include "formats/lift_log_csv.h"
#include "formats/pairs_csv.h"
#include "formats/stations_csv.h"
#include "formats/tape_csv.h"
#include "fuzz/fuzz_target.h"

namespace squaredig::fuzz {

void read_input(const formats::SourceFile& file) {
  reading([&] { formats::read_stations_csv(file, AngleNotation::DegreesMinutesSeconds); });
  reading([&] { formats::read_levels_csv(file); });
  reading([&] { formats::read_two_peg_csv(file); });
  reading([&] { formats::read_gnss_csv(file); });
  reading([&] { formats::read_pairs_csv(file); });
  reading([&] { formats::read_tape_csv(file); });
  reading([&] { formats::read_compaction_csv(file); });
  reading([&] { formats::read_lift_log_csv(file); });
}

}  // namespace squaredig::fuzz
