#include "formats/csv_text.h"

#include <gtest/gtest.h>

#include <limits>

#include "quantity/problem.h"

namespace squaredig::formats {
namespace {

TEST(CsvText, WritesShortestNumbersAndQuotesWhatNeedsIt) {
  CsvText table({"point", "easting", "northing", "height", "note"});
  table.label("A1").place(grid_position(715830.25, 734697.6, 62.35)).word("on line, \"A-B\"");
  table.end_row();
  table.label("a\nb").place(grid_point(0.1, 1.0 / 3)).blank().blank();
  table.end_row();
  EXPECT_EQ(table.take(),
            "point,easting,northing,height,note\n"
            "A1,715830.25,734697.6,62.35,\"on line, \"\"A-B\"\"\"\n"
            "\"a\nb\",0.1,0.3333333333333333,,\n");
}

// OWASP Application Security Verification Standard 5.0, requirement 1.2.10: = + - @ and tab, to be
// escaped by a single quote (seen); line breaks and full-width signs are our own addition.
TEST(CsvText, AFormulaStaysText_csv_text_1) {
  for (const char* formula :
       {"=1+1", "+A1", "-A1", "@SUM(A1)", "\t=1", "\r=1", "\n=1", "=cmd|' '!A",
        "\xEF\xBC\x9D"
        "1+1",
        "-1+1"})
    EXPECT_EQ(inert(formula), "'" + std::string(formula));
  for (const char* plain : {"A1", "-5", "+5.25", "P=1", "", " =1", "1-2", "'=1"})
    EXPECT_EQ(inert(plain), plain);
}

TEST(CsvText, RowsAreAsWideAsTheHeader_csv_text_2) {
  CsvText table({"a", "b"});
  table.word("1");
  EXPECT_THROW(table.end_row(), Refusal);
  table.word("2");
  EXPECT_THROW(table.word("3"), Refusal);
}

TEST(CsvText, RefusesWhatIsNoNumber) {
  CsvText table({"a"});
  EXPECT_THROW(table.number(std::numeric_limits<double>::quiet_NaN()), Refusal);
  EXPECT_THROW(table.number(std::numeric_limits<double>::infinity()), Refusal);
}

}  // namespace
}  // namespace squaredig::formats
