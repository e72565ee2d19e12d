#include "formats/strings_csv.h"

#include <gtest/gtest.h>

#include "refusal_text.h"
#include "unit/formats/text_file.h"

namespace squaredig::formats {
namespace {

using squaredig::testing::text_file;

TEST(StringsCsv, RowsOfAStringStayInOrder) {
  const StringsFile file = read_strings_csv(
      text_file("string,easting,northing,height\nK1,1,2,3\nK2,10,20,30\nK1,4,5,6\nK2,40,50,60\n"),
      Heights::Needed);
  ASSERT_EQ(file.strings.size(), 2U);
  EXPECT_EQ(file.strings[0].name, "K1");
  EXPECT_EQ(file.strings[0].file, "g.csv");
  ASSERT_EQ(file.strings[0].vertices.size(), 2U);
  EXPECT_EQ(file.strings[0].vertices[1].at, grid_position(4, 5, 6));
  EXPECT_EQ(file.strings[0].vertices[1].line, 4);
  EXPECT_EQ(file.strings[1].vertices[0].at, grid_position(10, 20, 30));
  EXPECT_EQ(file.record.read, 4U);
  EXPECT_EQ(file.record.used, 4U);
}

TEST(StringsCsv, HeightMayBeMissingWherePlanIsEnough) {
  const auto plan = read_strings_csv(text_file("string,e,n\nB,1,2\nB,3,4\n"), Heights::Optional);
  EXPECT_FALSE(plan.strings[0].vertices[0].has_height);
  const auto mixed =
      read_strings_csv(text_file("string,e,n,h\nB,1,2,\nB,3,4,5\n"), Heights::Optional);
  EXPECT_FALSE(mixed.strings[0].vertices[0].has_height);
  EXPECT_TRUE(mixed.strings[0].vertices[1].has_height);
  EXPECT_EQ(squaredig::testing::refusal_text([] {
              read_strings_csv(text_file("string,e,n,h\nB,1,2,\nB,3,4,5\n"), Heights::Needed);
            }),
            "g.csv:2:7: no height of string \"B\"; a number; fill it in or take out the row\n");
}

TEST(StringsCsv, Faults) {
  EXPECT_EQ(squaredig::testing::refusal_text([] {
              read_strings_csv(text_file("string,e,n,h\nB,1,2,3\nC,3,4,5\nC,3,4,6\n"),
                               Heights::Needed);
            }),
            "g.csv:2:1: string \"B\" has a single vertex; two vertices or more; add the others or "
            "take it out\n");
  EXPECT_EQ(squaredig::testing::refusal_text([] {
              read_strings_csv(text_file("string,e,n,h\n,1,2,3\nC,3,4,5\n"), Heights::Needed);
            }),
            "g.csv:2:1: no name in column string; a name; fill it in or take out the row\n");
  EXPECT_EQ(squaredig::testing::refusal_text(
                [] { read_strings_csv(text_file("string,e,n,h\n"), Heights::Needed); }),
            "g.csv:1:1: a header without rows; strings; export the file again\n");
}

TEST(StringsCsv, CodesAndFeet) {
  SourceFile source = text_file("string,e,n,h,code\nB,10,20,30,TOB\nx,,,,NOTE\nB,1,2,3,TOB\n");
  source.codes = {"TOB"};
  source.unit = LengthUnit::Foot;
  const auto file = read_strings_csv(source, Heights::Needed);
  ASSERT_EQ(file.strings.size(), 1U);
  EXPECT_EQ(file.strings[0].vertices[0].at, grid_position(10 * 0.3048, 20 * 0.3048, 30 * 0.3048));
  EXPECT_EQ(file.record.used, 2U);
  EXPECT_EQ(file.record.set_aside.size(), 1U);
}

}  // namespace
}  // namespace squaredig::formats
