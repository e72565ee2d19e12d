// Units of the tank counted in rows against a published count.
#include <gtest/gtest.h>

#include "unit/base/base_fixture.h"

namespace squaredig::base {
namespace {

// A supplier's case page (seen): a tank 6 x 5.5 x 1.2 of units 1 x 0.5 x 0.4 holds 6 x 11 x 3 =
// 198, and 39.6 m3 / 0.2 m3 says the same.
TEST(PublishedUnits, CountOfATank) {
  testing::BaseFixture fixture;
  fixture.length = 6;
  fixture.width = 5.5;
  fixture.height = 1.2;
  fixture.module_along = 1;
  fixture.module_into = 0.5;
  for (int i = 0; i <= 6; ++i)
    for (int k = 0; k <= 6; ++k) fixture.add(i, 5.5 * k / 6, 0);
  const auto result = check_base(fixture.input, fixture.planned());
  ASSERT_TRUE(result.stack_gap);
  EXPECT_EQ(result.stack_gap->columns, 6);
  EXPECT_EQ(result.stack_gap->rows, 11);
  const int courses = 3;  // 1.2 of 0.4
  EXPECT_EQ(result.stack_gap->columns * result.stack_gap->rows * courses, 198);
  EXPECT_NEAR(6 * 5.5 * 1.2 / (1 * 0.5 * 0.4), 198, 1e-9);
}

}  // namespace
}  // namespace squaredig::base
