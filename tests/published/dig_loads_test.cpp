// Loads against published counts: rounded up, but never by the rounding of an exact number.
#include <gtest/gtest.h>

#include <cstdint>

#include "dig/dig.h"

namespace squaredig {
namespace {

std::int64_t loads(double loose, double truck) {
  return dig::loads_for(LooseVolume::cubic_metres(loose), LooseVolume::cubic_metres(truck));
}

// qammunity 6725372 (seen): 1 490 / 0.95 x 1.14 / 12 is exactly 149, which no rounding may make
// 150. qammunity 6615277 (seen): 8 640 by 30 is 288. Estimating in Building Construction, example
// 9-2 (seen): 1 300 by 7 is 186; 9-3 (derived): 605.26 by 7 is 87.
TEST(PublishedLoads, ExactNumbersTakeNoLoadMore) {
  EXPECT_EQ(loads(1490 / 0.95 * 1.14, 12), 149);
  EXPECT_EQ(loads(1490 / 0.95 * 1.14 + 0.001, 12), 150);
  EXPECT_EQ(loads(5400 / 0.75 * 1.2, 30), 288);
  EXPECT_EQ(loads(1000 * 1.3, 7), 186);
  EXPECT_EQ(loads(500 / 0.95 * 1.15, 7), 87);
}

// qammunity 6615277 (seen): 8 640 yd3 loose of 2 500 lb each by trucks of 30 yd3 or 40 short tons
// (2 000 lb, from memory): 288 by volume, 270 by mass, the volume governs. Numbers of any unit
// will do where only their quotients count.
TEST(PublishedLoads, ByVolumeOrByMass) {
  const dig::TruckMass truck{Mass::tonnes(40 * 2000), Density::tonnes_per_cubic_metre(2500)};
  const auto loose = LooseVolume::cubic_metres(5400 / 0.75 * 1.2);
  EXPECT_EQ(dig::loads_for(loose, truck), 270);
  EXPECT_EQ(loads(loose.in_cubic_metres(), 30), 288);
}

// FM 5-434, compactor example (seen): 1 500 loose an hour are 1 305 compacted at 0.87; by a roller
// that does 16.3 x 5 x 6 x 6 x 0.83 / 5 = 487 of them, that takes 2.68: 3 rollers. Whole machines
// are counted as whole loads are.
TEST(PublishedLoads, WholeMachines) {
  const double roller = 16.3 * 5 * 6 * 6 * 0.83 / 5;
  EXPECT_EQ(loads(1500 * 0.87, roller), 3);
  EXPECT_EQ(loads(2 * roller, roller), 2);
}

}  // namespace
}  // namespace squaredig
