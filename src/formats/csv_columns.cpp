#include "formats/csv_columns.h"

#include <algorithm>
#include <array>

#include "quantity/number_text.h"

namespace squaredig::formats {

std::optional<double> number_with_comma(std::string_view cell, char separator) {
  std::array<char, 64> buffer{};
  const auto mark = cell.find(',');
  if (separator == ',' || mark == std::string_view::npos || cell.size() > buffer.size() ||
      cell.find_first_of(".,", mark + 1) != std::string_view::npos)
    return std::nullopt;
  std::copy(cell.begin(), cell.end(), buffer.begin());
  buffer[mark] = '.';
  return parse_number({buffer.data(), cell.size()});
}

}  // namespace squaredig::formats
