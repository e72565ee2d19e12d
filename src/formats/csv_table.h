// A CSV file as a table whose columns are known by name: the base of every field file's reader.
//
// What: the header row names the columns in any order and any case; the separator (comma, semicolon
//   or tab) is the one that yields the names. A file without a header is read in the order its
//   source states. Numbers have a decimal point, or with semicolon or tab a decimal comma; one file
//   keeps to one of them. Lengths come in metres whatever the file's unit.
// Requires: views of a row live until the next call of next(). The first column wanted is the row's
//   name, said in messages.
// Errors: all faults of the file are gathered, then thrown by finish() as one Refusal: missing,
//   doubled and ambiguous columns (x, y, z: their order is ambiguous), short and long rows, the
//   header again, text that is not one finite number. Columns nobody asked for are told as a
//   caution.
// Source: RFC 4180; the rules of docs/formats.md.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "formats/csv_columns.h"
#include "formats/csv_stretch.h"
#include "quantity/result_head.h"

namespace squaredig::formats {

// Foreign: a column of another kind of file, told where a needed one is missing.
enum class Column { Needed, Optional, Foreign };

struct ColumnWanted {
  std::string name;
  std::string also = "";  // a second name that will do; empty: none
  Column need = Column::Needed;
  std::string remedy = "";  // of a foreign column: where such a file belongs
};

class CsvTable {
 public:
  // Reads the header; columns are numbered in the order of `wanted`. `what` names the kind of file
  // in messages: "a points file".
  CsvTable(const SourceFile& source, std::vector<ColumnWanted> wanted, std::string what);

  bool has(std::size_t column) const { return columns_.has(column); }
  // On to the next row; false at the end of the file.
  bool next();
  int line() const { return row_->line; }
  std::string_view text(std::size_t column) const { return columns_.text(*row_, column); }
  // Text that may not be blank: adds a fault where it is.
  std::string_view name(std::size_t column);
  // One finite number; adds a fault and gives nothing where the cell holds none.
  std::optional<double> number(std::size_t column);
  // The same, in metres by the file's unit.
  std::optional<double> metres(std::size_t column) { return columns_.metres(number(column)); }
  bool is_blank(std::size_t column) const { return text(column).empty(); }
  Place place(std::size_t column) const;
  // The place of the column's name in the header; the first row's cell where there is no header.
  Place header_place(std::size_t column) const { return header_places_[column]; }
  void fault(std::size_t column, std::string found, std::string needed, std::string remedy);
  // Notes that the row of that line takes no part, and why, up to a thousand of them.
  void set_aside(int line, std::string why);
  bool row_has_fault() const { return row_has_fault_; }
  std::size_t rows() const { return rows_; }
  std::size_t rows_likely() const { return rows_in_.rows_likely(); }
  std::size_t rows_set_aside() const { return set_aside_; }
  const std::vector<std::string>& cautions() const { return cautions_; }
  FaultList& faults() { return faults_; }

  // Rows ahead that others may read (csv_rows.h: stretches, read_ahead), and on behind them.
  std::vector<CsvStretch> stretches(std::size_t most);
  void read_ahead() { rows_in_.read_ahead(); }
  void go_on_behind(const CsvStretch& stretch);

  // Throws all faults there are, or tells what was read.
  InputRecord finish();

 private:
  void take_header(const CsvRow& row);
  void take_names(const std::vector<std::string>& names, const std::vector<Place>& places);
  void miss_columns(int line);
  void number_fault(std::size_t column);
  void mixed_marks_fault(std::size_t column);
  std::string of_row() const;
  char best_separator(std::string_view line) const;
  std::optional<std::size_t> column_of(const std::string& name) const;

  std::string what_;
  SourceFile source_;
  FaultList faults_;
  CsvRows rows_in_;
  std::vector<ColumnWanted> wanted_;
  CsvColumns columns_;
  std::vector<Place> header_places_;
  Place decimal_place_;
  const CsvRow* row_ = nullptr;
  bool row_has_fault_ = false;
  bool row_is_header_ = false;
  std::size_t rows_ = 0;
  std::size_t set_aside_ = 0;
  InputRecord record_;
  std::vector<std::string> cautions_;
};

}  // namespace squaredig::formats
