// CSV out: the bytes of a table, row by row.
//
// What: comma between cells, line feed after rows, decimal point, shortest numbers that read back
//   to the last bit; cells with a comma, a quote or a line break stand in quotes.
// Laws: csv_text.1  a label that a spreadsheet would execute (it starts with = + - @, their
// full-width
//       forms, a tab, a carriage return or a line feed) gets an apostrophe in front and so stays
//       text; a label that is a plain number, such as -5, stays as it is; csv_text.2  every row has
//       as many cells as the header: number and text of other rows are refused.
// Errors: NaN and infinity are refused by the column's name.
// Source: RFC 4180, section 2, with LF in place of CRLF.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "quantity/position.h"

namespace squaredig::formats {

class CsvText {
 public:
  explicit CsvText(std::vector<std::string> header);

  // Text that came from a file or a person: made inert.
  CsvText& label(std::string_view text);
  // A word of our own.
  CsvText& word(std::string_view text);
  CsvText& number(double value);
  CsvText& number(std::optional<double> value) { return value ? number(*value) : blank(); }
  CsvText& metres(Length v) { return number(v.in_metres()); }
  CsvText& metres(std::optional<Length> v) { return v ? metres(*v) : blank(); }
  CsvText& metres(std::optional<Elevation> v) { return v ? number(v->in_metres()) : blank(); }
  CsvText& millimetres(Length v) { return number(v.in_millimetres()); }
  CsvText& millimetres(std::optional<Length> v) { return v ? millimetres(*v) : blank(); }
  CsvText& count(std::int64_t value);
  CsvText& blank();
  // Easting and northing, two cells.
  CsvText& place(GridPoint at);
  // Easting, northing and height, three cells.
  CsvText& place(GridPosition at);
  void end_row();

  // The whole file.
  std::string take() { return std::move(text_); }

 private:
  void cell(std::string_view text);
  std::vector<std::string> header_;
  std::size_t filled_ = 0;
  std::string text_;
};

// The label with an apostrophe in front where a spreadsheet would take it for a formula.
std::string inert(std::string_view label);

}  // namespace squaredig::formats
