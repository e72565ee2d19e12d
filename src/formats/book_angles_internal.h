// Angles in the cells of field books, and what a book's own faces say of their notation.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "field/field_input.h"
#include "formats/csv_table.h"

namespace squaredig::formats {

// The angle of a cell between 0 and the full circle; a fault where there is none.
std::optional<Angle> book_angle(CsvTable& table, std::size_t column, const std::string& name,
                                AngleNotation notation);

// The angle that a number such as 305.170172 means when it is packed degrees minutes seconds;
// nothing where minutes or seconds would be 60 or more.
std::optional<Angle> packed_angle(double number);

// Gathers a book's readings, to tell a wrong notation.
class NotationWitness {
 public:
  explicit NotationWitness(AngleNotation notation) : notation_(notation) {}
  void saw(CsvTable& table, const std::string& setup, const std::string& target,
           std::size_t zenith_column, field::Face face);
  void saw_number(std::string_view cell);
  // Adds a fault where both faces prove another notation; a caution where digits alone suggest it.
  void tell(CsvTable& table, std::vector<std::string>& cautions, const std::string& file) const;

 private:
  struct Zenith {
    double number;
    Place place;
  };
  AngleNotation notation_;
  std::map<std::pair<std::string, std::string>, std::vector<Zenith>> left_;
  std::vector<std::pair<Zenith, Zenith>> pairs_;
  std::size_t could_be_packed_ = 0;
  std::size_t cannot_be_packed_ = 0;
};

}  // namespace squaredig::formats
