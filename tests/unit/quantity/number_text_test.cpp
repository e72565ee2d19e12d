#include "quantity/number_text.h"

#include <gtest/gtest.h>

namespace squaredig {
namespace {

TEST(NumberText, RefusesWhatIsNotOneFiniteNumber) {
  for (const char* text : {"", "1,5", "1 2", "nan", "inf", "1e400", "0x10", "+-1", "1O2.35"})
    EXPECT_FALSE(parse_number(text)) << text;
  EXPECT_EQ(parse_number(" +1.50 "), 1.5);
}

}  // namespace
}  // namespace squaredig
