#include "formats/csv_stretch.h"

#include "quantity/number_text.h"

namespace squaredig::formats {

CsvStretch::CsvStretch(CsvColumns columns, const CsvLines& lines)
    : columns_(std::move(columns)), rest_(lines.bytes), rest_line_(lines.line) {}

bool CsvStretch::next() {
  while (!left_) {
    if (line_size_ > 0) {
      rest_.remove_prefix(line_size_);
      ++rest_line_;
      rows_ += line_rows_;
      line_size_ = line_rows_ = 0;
    }
    if (rest_.empty()) return false;
    const std::size_t size = rest_.find('\n');
    line_size_ = size + 1;
    row_.bytes = without_cr(rest_.substr(0, size));
    row_.line = rest_line_;
    if (!holds_row(row_.bytes)) continue;
    cut_plain(row_.bytes, columns_.separator, row_.cells);
    if (!any_content(row_.cells)) continue;
    left_ = row_.cells.size() != columns_.width || size > kLongestCsvRow;
    line_rows_ = 1;
    return !left_;
  }
  return false;
}

std::string_view CsvStretch::name(std::size_t column) {
  left_ = left_ || is_blank(column);
  return text(column);
}

// A decimal comma is read once the table has met one: the first decides for the file.
std::optional<double> CsvStretch::number(std::size_t column) {
  const std::string_view cell = text(column);
  auto value = parse_number(cell);
  const char mark = columns_.decimal_mark;
  if (columns_.separator != ',' && mark != '.' && cell.find('.') != std::string_view::npos)
    value = std::nullopt;
  if (!value && mark == ',') value = number_with_comma(cell, columns_.separator);
  left_ = left_ || !value;
  return value;
}

}  // namespace squaredig::formats
