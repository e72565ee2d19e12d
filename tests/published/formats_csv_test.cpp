// RFC 4180, "Common Format and MIME Type for Comma-Separated Values (CSV) Files", October 2005,
// section 2 (seen): its own examples, by the numbers of its rules.
#include <gtest/gtest.h>

#include "formats/csv_rows.h"
#include "unit/formats/text_file.h"

namespace squaredig::formats {
namespace {

using Rows = std::vector<std::vector<std::string>>;

Rows rows_of(const std::string& bytes) {
  FaultList faults;
  CsvRows in(squaredig::testing::text_file(bytes), faults);
  Rows rows;
  while (const CsvRow* row = in.next()) {
    rows.emplace_back();
    for (const CsvCell& cell : row->cells) rows.back().emplace_back(cell.text);
  }
  faults.throw_if_any();
  return rows;
}

TEST(Rfc4180, Rule1EachRecordOnItsLine) {
  EXPECT_EQ(rows_of("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n"),
            (Rows{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}}));
}

TEST(Rfc4180, Rule2TheLastLineBreakMayBeMissing) {
  EXPECT_EQ(rows_of("aaa,bbb,ccc\r\nzzz,yyy,xxx"),
            (Rows{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}}));
}

TEST(Rfc4180, Rule5QuotesRoundFieldsMayBeThereOrNot) {
  EXPECT_EQ(rows_of("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx"),
            (Rows{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}}));
  // "If fields are not enclosed with double quotes, then double quotes may not appear inside"
  EXPECT_THROW(rows_of("aaa,b\"bb,ccc\r\n"), Refusal);
}

TEST(Rfc4180, Rule6LineBreaksInsideQuotes) {
  EXPECT_EQ(rows_of("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx"),
            (Rows{{"aaa", "b\r\nbb", "ccc"}, {"zzz", "yyy", "xxx"}}));
}

TEST(Rfc4180, Rule7ADoubledQuoteIsAQuote) {
  EXPECT_EQ(rows_of("\"aaa\",\"b\"\"bb\",\"ccc\""), (Rows{{"aaa", "b\"bb", "ccc"}}));
}

// Rule 4 calls spaces part of a field. Here they are layout unless they stand inside quotes,
// because field files are typed by hand: a stated departure.
TEST(Rfc4180, Rule4SpacesArePartOfAFieldOnlyInsideQuotes) {
  EXPECT_EQ(rows_of(" aaa , \" bbb \" ,ccc"), (Rows{{"aaa", " bbb ", "ccc"}}));
}

}  // namespace
}  // namespace squaredig::formats
