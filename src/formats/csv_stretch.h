// The rows of a stretch of a CSV table that have nothing to be told of, for another thread to read.
//
// What: cells, numbers and lengths as CsvTable gives them. It ends before the first row that
//   CsvTable would find a fault in, or that decides how the file's numbers are written: the table
//   goes on there.
// Requires: the table has not gone on since it gave the stretch.
// Laws: csv_stretch.1  the rows of a table's stretches and those it goes on with are the rows it
//       finds alone.
// Errors: none of its own.
// Source: the house's own.
#pragma once

#include <optional>
#include <string_view>

#include "formats/csv_columns.h"

namespace squaredig::formats {

class CsvStretch {
 public:
  CsvStretch(CsvColumns columns, const CsvLines& lines);

  bool has(std::size_t column) const { return columns_.has(column); }
  // On to the next row; false at the end, and behind a row that is left to the table.
  bool next();
  int line() const { return row_.line; }
  std::string_view text(std::size_t column) const { return columns_.text(row_, column); }
  bool is_blank(std::size_t column) const { return text(column).empty(); }
  std::string_view name(std::size_t column);
  std::optional<double> number(std::size_t column);
  std::optional<double> metres(std::size_t column) { return columns_.metres(number(column)); }
  // What is wrong is for the table to say.
  void fault(std::size_t, std::string_view, std::string_view, std::string_view) { left_ = true; }
  bool row_has_fault() const { return left_; }

  // Where the table goes on, and the rows before that.
  const char* rest() const { return rest_.data(); }
  int rest_line() const { return rest_line_; }
  std::size_t rows() const { return rows_; }

 private:
  CsvColumns columns_;
  std::string_view rest_;
  int rest_line_ = 0;
  CsvRow row_;
  std::size_t line_size_ = 0;  // of the line read last, with its break
  std::size_t line_rows_ = 0;
  bool left_ = false;
  std::size_t rows_ = 0;
};

}  // namespace squaredig::formats
