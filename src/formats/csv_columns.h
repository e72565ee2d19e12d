// Where the columns that are wanted stand in the rows of a CSV file, and how its numbers are
// written.
//
// Accuracy: a number is the double nearest to its text; one rounding more for feet.
// Errors: none; what cannot be read is nothing.
// Source: the house's own.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "formats/csv_rows.h"

namespace squaredig::formats {

struct CsvColumns {
  std::vector<int> position = {};  // of each column wanted; below zero: the file has none such
  std::size_t width = 0;
  char separator = ',';
  char decimal_mark = 0;  // of the numbers so far; 0: all were whole
  std::optional<LengthUnit> unit = std::nullopt;

  bool has(std::size_t column) const { return position[column] >= 0; }
  std::string_view text(const CsvRow& row, std::size_t column) const {
    return has(column) ? row.cells[static_cast<std::size_t>(position[column])].text
                       : std::string_view();
  }
  std::optional<double> metres(std::optional<double> length) const {
    return length && unit ? *length * metres_per(*unit) : length;
  }
};

// The number of a cell with a decimal comma, in a file that is not cut at commas.
std::optional<double> number_with_comma(std::string_view cell, char separator);

}  // namespace squaredig::formats
