#include "formats/csv_rows.h"

#include <algorithm>
#include <cstring>

#include "formats/utf8.h"

namespace squaredig::formats {
namespace {

constexpr std::size_t kChunk = std::size_t{1} << 18;
constexpr std::size_t kChunkForStretches = std::size_t{1} << 21;

bool blank(char c) { return c == ' ' || c == '\t'; }

bool has(std::string_view bytes, char c) {
  return !bytes.empty() && std::memchr(bytes.data(), c, bytes.size()) != nullptr;
}

// Neither quotes, nor NUL, nor anything beyond ASCII.
bool is_plain(std::string_view bytes) {
  unsigned char all = 0;
  for (const char c : bytes) all = static_cast<unsigned char>(all | static_cast<unsigned char>(c));
  return all < 0x80 && !has(bytes, '"') && !has(bytes, '\0');
}

const char* behind_blanks(const char* at, const char* end, char separator) {
  while (at != end && blank(*at) && *at != separator) ++at;
  return at;
}

CsvCell unquoted_cell(const char* start, const char* end, char separator) {
  const char* first = behind_blanks(start, end, separator);
  while (end != first && (blank(end[-1]) || end[-1] == '\r')) --end;
  return {{first, static_cast<std::size_t>(end - first)}, first};
}

}  // namespace

std::string_view without_cr(std::string_view line) {
  if (!line.empty() && line.back() == '\r') line.remove_suffix(1);
  return line;
}

bool holds_row(std::string_view line) {
  const auto content = line.find_first_not_of(" \t\r");
  return content != std::string_view::npos && line[content] != '#';
}

void cut_plain(std::string_view line, char separator, std::vector<CsvCell>& cells) {
  cells.clear();
  const char* start = line.data();
  const char* const end = start + line.size();
  for (const char* at = start; at != end; ++at)
    if (*at == separator) {
      cells.push_back(unquoted_cell(start, at, separator));
      start = at + 1;
    }
  cells.push_back(unquoted_cell(start, end, separator));
}

bool any_content(const std::vector<CsvCell>& cells) {
  return std::any_of(cells.begin(), cells.end(), [](const CsvCell& c) { return !c.text.empty(); });
}

CsvRows::CsvRows(const SourceFile& source, FaultList& faults)
    : file_(source),
      name_(source.name),
      faults_(faults),
      chunk_(file_.chunk(source.together ? kChunkForStretches : kChunk)) {
  more();
  look_at_start();
}

void CsvRows::look_at_start() {
  const std::string_view start(buffer_.data(), end_);
  if (start.starts_with("\xFF\xFE") || start.starts_with("\xFE\xFF"))
    refuse({name_}, "text in UTF-16", "text in UTF-8", "save the file again as CSV in UTF-8");
  if (start.starts_with("\xEF\xBB\xBF")) begin_ = 3;
}

// Reads on behind what is not yet taken. Nothing more: false.
bool CsvRows::more() {
  if (ended_) return false;
  const std::size_t kept = end_ - begin_;
  if (kept > 0) std::memmove(buffer_.data(), buffer_.data() + begin_, kept);
  if (buffer_.size() < kept + chunk_) buffer_.resize(kept + chunk_);
  begin_ = 0;
  std::size_t got = ahead_.size;
  if (ahead_.ready)
    std::copy_n(ahead_.bytes.data(), got, buffer_.data() + kept);
  else
    got = file_.read({buffer_.data() + kept, chunk_});
  end_ = kept + got;
  ended_ = got < chunk_;
  plain_ = ahead_.ready ? ahead_.plain && is_plain({buffer_.data(), kept})
                        : is_plain({buffer_.data(), end_});
  ahead_.ready = false;
  fresh_ = true;
  return got > 0;
}

void CsvRows::read_ahead() {
  if (ended_ || ahead_.ready) return;
  ahead_.bytes.resize(chunk_);
  ahead_.size = file_.read(ahead_.bytes);
  ahead_.plain = is_plain({ahead_.bytes.data(), ahead_.size});
  ahead_.ready = true;
}

std::vector<CsvLines> CsvRows::stretches(std::size_t most) {
  if (!fresh_ || !plain_) return {};
  fresh_ = false;
  std::string_view rest(buffer_.data() + begin_, end_ - begin_);
  rest = rest.substr(0, rest.rfind('\n') + 1);
  const std::size_t size = rest.size() / most;
  std::vector<CsvLines> stretches;
  for (int line = line_; !rest.empty();) {
    const std::string_view bytes =
        rest.substr(0, rest.find('\n', std::min(size, rest.size() - 1)) + 1);
    stretches.push_back({bytes, line});
    line += static_cast<int>(std::count(bytes.begin(), bytes.end(), '\n'));
    rest.remove_prefix(bytes.size());
  }
  return stretches;
}

void CsvRows::go_on_at(const char* at, int line) {
  begin_ = static_cast<std::size_t>(at - buffer_.data());
  line_ = line;
}

// The line at the beginning of the buffer with its CR but without its LF; nothing at the end.
std::optional<std::string_view> CsvRows::line() {
  for (std::size_t looked = 0;;) {
    const char* start = buffer_.data() + begin_;
    const std::size_t size = end_ - begin_;
    const void* feed = size > looked ? std::memchr(start + looked, '\n', size - looked) : nullptr;
    looked =
        feed == nullptr ? size : static_cast<std::size_t>(static_cast<const char*>(feed) - start);
    if (looked > kLongestCsvRow)
      give_up("a line of more than 1 MiB", "rows of a CSV file",
              "check that this is a text file with line breaks");
    if (feed != nullptr) return std::string_view(start, looked);
    if (!more()) return size == 0 ? std::nullopt : std::optional(std::string_view(start, size));
  }
}

void CsvRows::give_up(std::string found, std::string needed, std::string remedy) {
  faults_.add({name_, line_, 1}, std::move(found), std::move(needed), std::move(remedy));
  faults_.throw_if_any();
}

void CsvRows::take(std::size_t bytes) {
  begin_ += bytes;
  if (begin_ < end_ && buffer_[begin_] == '\n') ++begin_;
  ++line_;
}

std::optional<std::string_view> CsvRows::first_line() {
  while (const auto bytes = line()) {
    const auto content = bytes->find_first_not_of(" \t,;\r");
    if (content != std::string_view::npos && (*bytes)[content] != '#') {
      if (has(without_cr(*bytes), '\r'))
        give_up("a carriage return alone as line break", "LF or CRLF",
                "save the file again with line breaks of this kind");
      return without_cr(*bytes);
    }
    take(bytes->size());
  }
  return std::nullopt;
}

const CsvRow* CsvRows::next() {
  while (const auto bytes = line()) {
    if (!holds_row(*bytes)) {
      take(bytes->size());
      continue;
    }
    row_.line = line_;
    const bool plain = plain_ || !has(*bytes, '"');
    if (plain)
      take_plain(*bytes);
    else if (!take_quoted())
      continue;
    if (text_is_sound() && any_content(row_.cells)) return &row_;
  }
  return nullptr;
}

void CsvRows::take_plain(std::string_view bytes) {
  row_.bytes = without_cr(bytes);
  cut_plain(row_.bytes, separator_, row_.cells);
  take(bytes.size());
}

// The length of the row at the beginning of the buffer, quotes minded; nothing where a quote is not
// closed within the longest row.
std::optional<std::size_t> CsvRows::record_length() {
  enum { CellStart, Inside, Quoted, QuoteInQuoted } state = CellStart;
  for (std::size_t i = 0;; ++i) {
    if (i > kLongestCsvRow && state != Quoted)
      give_up("a row of more than 1 MiB", "rows of a CSV file", "check the quotes of this row");
    if (i > kLongestCsvRow || (begin_ + i == end_ && !more()))
      return state == Quoted ? std::nullopt : std::optional(i);
    const char c = buffer_[begin_ + i];
    if (state == Quoted) {
      if (c == '"') state = QuoteInQuoted;
      continue;
    }
    if (c == '\n') return i;
    if (c == '"' && (state == CellStart || state == QuoteInQuoted))
      state = Quoted;
    else if (c == separator_)
      state = CellStart;
    else if (!(state == CellStart && blank(c)))
      state = Inside;
  }
}

void CsvRows::fault_at(const char* at, std::string found, std::string needed, std::string remedy) {
  faults_.add(place(row_, {{}, at}), std::move(found), std::move(needed), std::move(remedy));
}

// A quoted cell, from its opening quote. Gives what follows it, or null with a fault.
const char* CsvRows::cut_quoted_cell(const char* at, const char* end) {
  const char* const start = at++;
  const char* piece = at;
  std::string* text = nullptr;
  while (at != end) {
    if (*at != '"') {
      ++at;
    } else if (at + 1 != end && at[1] == '"') {
      if (text == nullptr) text = &unquoted_.emplace_back();
      text->append(piece, at + 1);
      piece = at += 2;
    } else {
      break;
    }
  }
  if (text != nullptr) text->append(piece, at);
  const std::string_view content =
      text != nullptr ? std::string_view(text->data(), text->size())
                      : std::string_view(piece, static_cast<std::size_t>(at - piece));
  const char* const behind = at == end ? end : behind_blanks(at + 1, end, separator_);
  if (at == end || (behind != end && *behind != separator_)) {
    fault_at(start, at == end ? "a quote that is not closed" : "text beside a quoted cell",
             "a cell wholly inside its quotes, quotes inside it doubled",
             "close the quote or double it");
    return nullptr;
  }
  row_.cells.push_back({content, start});
  return behind;
}

// Cuts the row's bytes. Gives the start of the cell that has a fault, or null where none has.
const char* CsvRows::cut_cells() {
  const char* at = row_.bytes.data();
  const char* const end = at + row_.bytes.size();
  while (true) {
    const char* const start = behind_blanks(at, end, separator_);
    if (start != end && *start == '"') {
      at = cut_quoted_cell(start, end);
      if (at == nullptr) return start;
    } else {
      at = std::find_if(start, end, [this](char c) { return c == separator_ || c == '"'; });
      if (at != end && *at == '"') {
        fault_at(start, "a quote inside an unquoted cell",
                 "the whole cell in quotes, quotes inside it doubled", "put the cell in quotes");
        return start;
      }
      row_.cells.push_back(unquoted_cell(start, at, separator_));
    }
    if (at == end) return nullptr;
    ++at;  // the separator
  }
}

// Where a quote does not fit, the rest of its line is given up and reading goes on behind it.
bool CsvRows::take_quoted() {
  row_.cells.clear();
  unquoted_.clear();
  const std::size_t size = record_length().value_or(std::min(end_ - begin_, kLongestCsvRow));
  row_.bytes = without_cr({buffer_.data() + begin_, size});
  const char* const begin = row_.bytes.data();
  const char* const end = begin + row_.bytes.size();
  const char* const fault = cut_cells();
  const char* const stop = fault == nullptr ? end : std::find(fault, end, '\n');
  line_ += static_cast<int>(std::count(begin, stop, '\n'));
  take(stop == end ? size : static_cast<std::size_t>(stop - begin));
  return fault == nullptr;
}

bool CsvRows::text_is_sound() {
  if (plain_) return true;
  for (const CsvCell& cell : row_.cells) {
    if (has(cell.text, '\0'))
      fault_at(cell.start, "a byte of value zero", "text in UTF-8",
               "save the file again as CSV in UTF-8");
    else if (!is_utf8(cell.text))
      fault_at(cell.start, "bytes that are not UTF-8", "text in UTF-8",
               "save the file again as CSV in UTF-8");
    else
      continue;
    return false;
  }
  return true;
}

std::size_t CsvRows::rows_likely() const {
  const auto lines = static_cast<std::size_t>(
      std::count(buffer_.begin(), buffer_.begin() + static_cast<std::ptrdiff_t>(end_), '\n'));
  return lines == 0 ? 1 : file_.size() / (end_ / lines) + 1;
}

Place CsvRows::place(const CsvRow& row, const CsvCell& cell) const {
  const std::string_view before(row.bytes.data(),
                                static_cast<std::size_t>(cell.start - row.bytes.data()));
  const auto feed = before.rfind('\n');
  const auto in_line = feed == std::string_view::npos ? before : before.substr(feed + 1);
  const auto breaks = std::count(before.begin(), before.end(), '\n');
  return {name_, row.line + static_cast<int>(breaks), 1 + characters(in_line)};
}

Place CsvRows::end_place(const CsvRow& row) const {
  return place(row, {{}, row.bytes.data() + row.bytes.size()});
}

}  // namespace squaredig::formats
