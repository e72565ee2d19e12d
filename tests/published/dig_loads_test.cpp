// Loads against published counts: rounded up, but never by the rounding of an exact number.
#include <gtest/gtest.h>

#include "dig/dig.h"

namespace squaredig {
namespace {

long loads(double loose, double truck) {
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

}  // namespace
}  // namespace squaredig
