#include "formats/csv_rows.h"

#include <algorithm>
#include <cstring>

namespace squaredig::formats {
namespace {

constexpr std::size_t kChunk = std::size_t{1} << 18;
constexpr std::size_t kLongestRow = std::size_t{1} << 20;

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

std::string_view without_cr(std::string_view bytes) {
  if (!bytes.empty() && bytes.back() == '\r') bytes.remove_suffix(1);
  return bytes;
}

const char* behind_blanks(const char* at, const char* end, char separator) {
  while (at != end && blank(*at) && *at != separator) ++at;
  return at;
}

// The number of bytes a UTF-8 sequence takes by its first byte, and the range of its second.
struct Sequence {
  std::size_t size;
  unsigned char low;
  unsigned char high;
};

Sequence sequence_of(unsigned char first) {
  if (first < 0x80) return {1, 0, 0};
  if (first < 0xC2) return {0, 0, 0};
  if (first < 0xE0) return {2, 0x80, 0xBF};
  if (first == 0xE0) return {3, 0xA0, 0xBF};
  if (first == 0xED) return {3, 0x80, 0x9F};
  if (first < 0xF0) return {3, 0x80, 0xBF};
  if (first == 0xF0) return {4, 0x90, 0xBF};
  if (first < 0xF4) return {4, 0x80, 0xBF};
  if (first == 0xF4) return {4, 0x80, 0x8F};
  return {0, 0, 0};
}

}  // namespace

bool is_utf8(std::string_view bytes) {
  for (std::size_t i = 0; i < bytes.size();) {
    const Sequence s = sequence_of(static_cast<unsigned char>(bytes[i]));
    if (s.size == 0 || i + s.size > bytes.size()) return false;
    for (std::size_t k = 1; k < s.size; ++k) {
      const auto c = static_cast<unsigned char>(bytes[i + k]);
      if (c < (k == 1 ? s.low : 0x80) || c > (k == 1 ? s.high : 0xBF)) return false;
    }
    i += s.size;
  }
  return true;
}

int characters(std::string_view bytes) {
  return static_cast<int>(std::count_if(bytes.begin(), bytes.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xC0) != 0x80;
  }));
}

CsvRows::CsvRows(const SourceFile& source, FaultList& faults)
    : file_(source), name_(source.name), faults_(faults) {
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
  const std::size_t chunk = file_.chunk(kChunk);
  if (buffer_.size() < kept + chunk) buffer_.resize(kept + chunk);
  begin_ = 0;
  const std::size_t got = file_.read({buffer_.data() + kept, chunk});
  end_ = kept + got;
  ended_ = got < chunk;
  plain_ = is_plain({buffer_.data(), end_});
  return got > 0;
}

// The line at the beginning of the buffer with its CR but without its LF; nothing at the end.
std::optional<std::string_view> CsvRows::line() {
  for (std::size_t looked = 0;;) {
    const char* start = buffer_.data() + begin_;
    const std::size_t size = end_ - begin_;
    const void* feed = size > looked ? std::memchr(start + looked, '\n', size - looked) : nullptr;
    if (feed != nullptr)
      return std::string_view(start,
                              static_cast<std::size_t>(static_cast<const char*>(feed) - start));
    looked = size;
    if (size > kLongestRow)
      give_up("a line of more than 1 MiB", "rows of a CSV file",
              "check that this is a text file with line breaks");
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
    const auto content = bytes->find_first_not_of(" \t\r");
    if (content == std::string_view::npos || (*bytes)[content] == '#') {
      take(bytes->size());
      continue;
    }
    row_.cells.clear();
    row_.line = line_;
    const bool plain = plain_ || !has(*bytes, '"');
    const bool whole = plain ? cut_plain(*bytes) : cut_quoted();
    if (!whole || !text_is_sound()) continue;
    for (const CsvCell& cell : row_.cells)
      if (!cell.text.empty()) return &row_;
  }
  return nullptr;
}

void CsvRows::cut_unquoted_cell(const char* start, const char* end) {
  const char* first = behind_blanks(start, end, separator_);
  while (end != first && (blank(end[-1]) || end[-1] == '\r')) --end;
  row_.cells.push_back({{first, static_cast<std::size_t>(end - first)}, first});
}

bool CsvRows::cut_plain(std::string_view bytes) {
  row_.bytes = without_cr(bytes);
  const char* start = row_.bytes.data();
  const char* const end = start + row_.bytes.size();
  for (const char* at = start; at != end; ++at)
    if (*at == separator_) {
      cut_unquoted_cell(start, at);
      start = at + 1;
    }
  cut_unquoted_cell(start, end);
  take(bytes.size());
  return true;
}

// The length of the row at the beginning of the buffer, quotes minded; nothing where a quote is not
// closed within the longest row.
std::optional<std::size_t> CsvRows::record_length() {
  enum { CellStart, Inside, Quoted, QuoteInQuoted } state = CellStart;
  for (std::size_t i = 0;; ++i) {
    if (begin_ + i == end_ && (i > kLongestRow || !more()))
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
      cut_unquoted_cell(start, at);
    }
    if (at == end) return nullptr;
    ++at;  // the separator
  }
}

// Where a quote does not fit, the rest of its line is given up and reading goes on behind it.
bool CsvRows::cut_quoted() {
  unquoted_.clear();
  const std::size_t size = record_length().value_or(std::min(end_ - begin_, kLongestRow));
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
