#include "formats/csv_rows.h"

#include <gtest/gtest.h>

#include <random>

#include "formats/utf8.h"
#include "unit/formats/text_file.h"

namespace squaredig::formats {
namespace {

using squaredig::testing::text_file;

// Cells written in quotes whatever they hold, quotes doubled.
std::string quoted_cell(const std::string& text) {
  std::string cell = "\"";
  for (const char c : text) cell += c == '"' ? std::string("\"\"") : std::string(1, c);
  return cell + "\"";
}

TEST(CsvRows, QuotedCellsAreReadBackByteForByte_csv_rows_1) {
  constexpr unsigned kSeed = 4180;
  std::mt19937 draw(kSeed);
  const std::vector<std::string> pieces = {"a",
                                           "7",
                                           " ",
                                           "\"",
                                           ",",
                                           ";",
                                           "\t",
                                           "\n",
                                           "\r\n",
                                           "#",
                                           "'",
                                           "\xC3\xBC",
                                           "\xE2\x82\xAC",
                                           "\xF0\x9F\x8C\x8D",
                                           "\\"};
  std::vector<std::vector<std::string>> rows;
  std::string bytes;
  for (int r = 0; r < 20000; ++r) {
    std::vector<std::string> row;
    for (int c = 0; c < 3; ++c) {
      std::string text = c == 0 ? "x" : "";  // a row is never blank
      for (auto n = draw() % 6; n > 0; --n) text += pieces[draw() % pieces.size()];
      bytes += (c == 0 ? "" : ",") + quoted_cell(text);
      row.push_back(text);
    }
    bytes += r % 2 == 0 ? "\n" : "\r\n";
    rows.push_back(row);
  }
  FaultList faults;
  CsvRows in(text_file(bytes), faults);
  for (const auto& row : rows) {
    const CsvRow* read = in.next();
    ASSERT_NE(read, nullptr) << "seed " << kSeed;
    ASSERT_EQ(read->cells.size(), row.size());
    for (std::size_t c = 0; c < row.size(); ++c)
      ASSERT_EQ(read->cells[c].text, row[c]) << "seed " << kSeed << " line " << read->line;
  }
  EXPECT_EQ(in.next(), nullptr);
  EXPECT_TRUE(faults.empty());
}

TEST(CsvRows, PlacesCountLinesAndCharacters_csv_rows_2) {
  FaultList faults;
  CsvRows in(text_file("\xEF\xBB\xBF"
                       "a,b\n\"\xC3\xBC\r\n\xE2\x82\xAC\", x,\"y\"\r\n"),
             faults);
  const CsvRow* row = in.next();
  ASSERT_NE(row, nullptr);
  EXPECT_EQ(in.place(*row, row->cells[1]), (Place{"g.csv", 1, 3}));
  row = in.next();
  ASSERT_NE(row, nullptr);
  EXPECT_EQ(in.place(*row, row->cells[0]), (Place{"g.csv", 2, 1}));
  EXPECT_EQ(in.place(*row, row->cells[1]), (Place{"g.csv", 3, 5}));
  EXPECT_EQ(in.place(*row, row->cells[2]), (Place{"g.csv", 3, 7}));
  EXPECT_EQ(in.end_place(*row), (Place{"g.csv", 3, 10}));
}

// Any bytes at all: rows come out or faults are told; it neither crashes nor runs on.
TEST(CsvRows, AnyBytesEnd) {
  constexpr unsigned kSeed = 90210;
  std::mt19937 draw(kSeed);
  const std::string letters("\",;\n\r\t #a1.\0\xFF\xC3\xBC", 15);
  for (int file = 0; file < 100; ++file) {
    std::string bytes;
    for (auto n = draw() % 400; n > 0; --n) bytes += letters[draw() % letters.size()];
    FaultList faults;
    CsvRows in(text_file(bytes), faults);
    std::size_t rows = 0;
    int line = 0;
    try {
      while (const CsvRow* row = in.next()) {
        ++rows;
        ASSERT_GT(row->line, line) << "seed " << kSeed << " file " << file;
        line = row->line;
        for (const CsvCell& cell : row->cells) ASSERT_TRUE(is_utf8(cell.text));
      }
    } catch (const Refusal&) {
      continue;
    }
    ASSERT_LE(rows, bytes.size());
  }
}

// RFC 3629, section 3 and 4 (from memory): the shortest form alone, no surrogates, up to U+10FFFF.
TEST(CsvRows, Utf8IsWellFormedOrNot) {
  for (const char* good : {"", "A", "\xC2\x80", "\xDF\xBF", "\xE0\xA0\x80", "\xED\x9F\xBF",
                           "\xEF\xBF\xBF", "\xF0\x90\x80\x80", "\xF4\x8F\xBF\xBF"})
    EXPECT_TRUE(is_utf8(good)) << good;
  for (const char* bad :
       {"\x80", "\xC0\x80", "\xC1\xBF", "\xC3", "\xE0\x9F\xBF", "\xED\xA0\x80", "\xE2\x82",
        "\xF0\x8F\xBF\xBF", "\xF4\x90\x80\x80", "\xF5\x80\x80\x80", "\xFF"})
    EXPECT_FALSE(is_utf8(bad)) << bad;
  EXPECT_EQ(characters("S\xC3\xBC"
                       "d\xE2\x82\xAC"),
            4);
}

}  // namespace
}  // namespace squaredig::formats
