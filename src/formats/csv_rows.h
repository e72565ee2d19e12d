// CSV in: the rows of a file as cells of text, one after the other.
//
// What: cells are cut at the separator; a cell in quotes may hold separators, line breaks and
// doubled
//   quotes. Blanks round a cell are layout and fall away, unless they stand inside its quotes.
//   Lines whose first character is # and rows without any content are passed over. Line breaks are
//   LF or CRLF; a UTF-8 byte order mark is passed over.
// Requires: views of a row live until the next call.
// Laws: csv_rows.1  cells written in quotes with their quotes doubled are read back byte for byte;
//       csv_rows.2  a place is the line and the character, both from 1, at which the cell starts.
//       csv_rows.3  whoever takes lines in stretches and goes on behind them finds the same rows.
// Accuracy: memory is one chunk of the file, 256 KiB, or two of 2 MiB where others read stretches;
//   the longest row where that is longer, 1 MiB at most.
// Errors: an unbalanced quote, text beside a quoted cell, a quote inside an unquoted cell, bytes
//   that are not UTF-8 and NUL go to the list of faults, and reading goes on after them; UTF-16, a
//   lone CR as line break and rows over 1 MiB end the reading there.
// Source: RFC 4180, section 2.
#pragma once

#include <cstdint>
#include <deque>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "formats/fault_list.h"
#include "formats/input_file.h"

namespace squaredig::formats {

constexpr std::size_t kLongestCsvRow = std::size_t{1} << 20;

struct CsvCell {
  std::string_view text;
  const char* start = nullptr;  // where the cell starts in the row's bytes
};

struct CsvRow {
  std::vector<CsvCell> cells;
  std::string_view bytes;  // of the whole row, without its line break
  int line = 0;            // of its first byte
};

// Whole lines, line breaks included.
struct CsvLines {
  std::string_view bytes;
  int line = 0;  // of the first byte
};

// A line without its CR that holds a row: neither blank nor a comment.
bool holds_row(std::string_view line);
std::string_view without_cr(std::string_view line);
// The cells of a line without quotes.
void cut_plain(std::string_view line, char separator, std::vector<CsvCell>& cells);
// True where a cell holds anything.
bool any_content(const std::vector<CsvCell>& cells);

class CsvRows {
 public:
  // Faults of the text are added to `faults`, which outlives this.
  CsvRows(const SourceFile& source, FaultList& faults);

  // The first row with content, as it stands in the file, without taking it; nothing in an empty
  // file.
  std::optional<std::string_view> first_line();
  // Rows are cut at this character from now on.
  void cut_at(char separator) { separator_ = separator; }
  // The next row with content, or null at the end.
  const CsvRow* next();
  Place place(const CsvRow& row, const CsvCell& cell) const;
  // The place just behind the last cell of a row.
  Place end_place(const CsvRow& row) const;
  std::string sha256() { return file_.sha256(); }
  // How many rows the file may have, by the length of those in the buffer: room to reserve, no
  // more.
  std::size_t rows_likely() const;

  // The lines that lie in memory, in up to so many stretches, for others to read; they live until
  // the next call of next(). Once for each chunk of the file; none where it has quotes or bytes
  // beyond ASCII.
  std::vector<CsvLines> stretches(std::size_t most);
  // Fetches the next chunk. The one call that may be made while others read the stretches.
  void read_ahead();
  // Goes on at this line of a stretch.
  void go_on_at(const char* at, int line);

 private:
  struct Chunk {
    std::vector<char> bytes;
    std::size_t size = 0;
    bool plain = true;
    bool ready = false;
  };
  bool more();
  void look_at_start();
  std::optional<std::string_view> line();
  std::optional<std::size_t> record_length();
  void take(std::size_t bytes);
  void take_plain(std::string_view bytes);
  bool take_quoted();
  const char* cut_cells();
  const char* cut_quoted_cell(const char* at, const char* end);
  bool text_is_sound();
  void give_up(std::string found, std::string needed, std::string remedy);
  void fault_at(const char* at, std::string found, std::string needed, std::string remedy);

  InputFile file_;
  std::string name_;
  FaultList& faults_;
  std::vector<char> buffer_;
  std::size_t begin_ = 0;  // of what is not yet taken
  std::size_t end_ = 0;
  Chunk ahead_;
  std::size_t chunk_ = 0;
  bool ended_ = false;
  bool fresh_ = true;  // the buffer has not been read in stretches
  bool plain_ = true;  // the buffer has neither quotes nor bytes beyond ASCII nor NUL
  char separator_ = ',';
  int line_ = 1;  // of begin_
  CsvRow row_;
  std::deque<std::string> unquoted_;
};

}  // namespace squaredig::formats
