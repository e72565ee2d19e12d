#include "formats/csv_text.h"

#include <cmath>
#include <cstdint>

#include "quantity/label.h"
#include "quantity/number_text.h"
#include "quantity/problem.h"

namespace squaredig::formats {
namespace {

[[noreturn]] void fault_of_ours(const std::string& found) {
  refuse({"result"}, found, "a full row of finite numbers",
         "this is a fault of the program: please report it with the job");
}

}  // namespace

std::string inert(std::string_view label) {
  return spreadsheet_would_run(label) ? "'" + std::string(label) : std::string(label);
}

CsvText::CsvText(std::vector<std::string> header) : header_(std::move(header)) {
  for (const auto& name : header_) cell(name);
  end_row();
}

void CsvText::cell(std::string_view text) {
  if (filled_ == header_.size()) fault_of_ours("a row with more cells than the header");
  if (filled_++ > 0) text_.push_back(',');
  if (text.find_first_of(",\"\r\n") == std::string_view::npos) {
    text_.append(text);
    return;
  }
  text_.push_back('"');
  for (const char c : text) {
    if (c == '"') text_.push_back('"');
    text_.push_back(c);
  }
  text_.push_back('"');
}

CsvText& CsvText::label(std::string_view text) {
  cell(inert(text));
  return *this;
}

CsvText& CsvText::word(std::string_view text) {
  cell(text);
  return *this;
}

CsvText& CsvText::number(double value) {
  if (!std::isfinite(value))
    fault_of_ours("no finite number for " +
                  (filled_ < header_.size() ? header_[filled_] : std::string("a cell")));
  cell(shortest(value));
  return *this;
}

CsvText& CsvText::count(std::int64_t value) {
  cell(std::to_string(value));
  return *this;
}

CsvText& CsvText::blank() {
  cell({});
  return *this;
}

CsvText& CsvText::place(GridPoint at) {
  return number(at.easting.in_metres()).number(at.northing.in_metres());
}

CsvText& CsvText::place(GridPosition at) { return place(at.at).number(at.height.in_metres()); }

void CsvText::end_row() {
  if (filled_ != header_.size()) fault_of_ours("a row with fewer cells than the header");
  filled_ = 0;
  text_.push_back('\n');
}

}  // namespace squaredig::formats
