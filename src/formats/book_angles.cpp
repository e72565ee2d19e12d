#include <algorithm>
#include <cmath>

#include "formats/book_angles_internal.h"
#include "quantity/number_text.h"

namespace squaredig::formats {
namespace {

const char* example_of(AngleNotation notation) {
  switch (notation) {
    case AngleNotation::DegreesMinutesSeconds:
      return "degrees minutes seconds such as 305 17 01.7";
    case AngleNotation::DecimalDegrees:
      return "decimal degrees from 0 to 360";
    default:
      return "gon from 0 to 400";
  }
}

bool plain_number(std::string_view cell) { return parse_number(cell).has_value(); }

std::string with_point(std::string_view cell) {
  std::string text(cell);
  std::replace(text.begin(), text.end(), ',', '.');
  return text;
}

}  // namespace

std::optional<Angle> packed_angle(double number) {
  const double size = std::abs(number);
  const double degrees = std::floor(size + 1e-12);
  const double rest = (size - degrees) * 100;
  const double minutes = std::floor(rest + 1e-9);
  const double seconds = std::max(0.0, (rest - minutes) * 100);
  if (minutes >= 60 || seconds >= 60 - 1e-7) return std::nullopt;
  const double value = degrees + (minutes * 60 + seconds) / 3600;
  return Angle::degrees(number < 0 ? -value : value);
}

std::optional<Angle> book_angle(CsvTable& table, std::size_t column, const std::string& name,
                                AngleNotation notation) {
  const std::string cell = with_point(table.text(column));
  if (cell.empty()) {
    table.fault(column, "no " + name, example_of(notation), "fill it in or take out the row");
    return std::nullopt;
  }
  const auto angle = parse_angle(cell, notation);
  if (!angle) {
    const bool packed = notation == AngleNotation::DegreesMinutesSeconds && plain_number(cell);
    table.fault(column,
                name + " " + quoted(table.text(column)) +
                    (packed ? " could be packed or decimal degrees" : " is no angle"),
                example_of(notation),
                packed ? "write degrees, minutes and seconds apart, or state angles in [field]"
                       : "correct it, or state in [field] how angles are written");
    return std::nullopt;
  }
  constexpr double kFullCircle = 360 + 1e-9;
  if (angle->in_degrees() < 0 || angle->in_degrees() > kFullCircle) {
    const bool gon = notation == AngleNotation::DecimalDegrees && angle->in_degrees() > 0 &&
                     angle->in_degrees() <= 400;
    table.fault(
        column, name + " " + quoted(table.text(column)) + " is outside the circle",
        example_of(notation),
        gon ? "write angles = \"gon\" in [field] if the instrument reads gon" : "correct the cell");
    return std::nullopt;
  }
  return angle;
}

void NotationWitness::saw_number(std::string_view cell) {
  const std::string text = with_point(cell);
  const auto mark = text.find('.');
  if (mark == std::string::npos || text.size() - mark - 1 < 4) return;
  const auto number = parse_number(text);
  if (!number) return;
  (packed_angle(*number) ? could_be_packed_ : cannot_be_packed_) += 1;
}

void NotationWitness::saw(CsvTable& table, const std::string& setup, const std::string& target,
                          std::size_t zenith_column, field::Face face) {
  const auto number = parse_number(with_point(table.text(zenith_column)));
  if (!number || face == field::Face::NotSaid) return;
  auto& waiting = left_[{setup, target}];
  if (face == field::Face::Left) {
    waiting.push_back({*number, table.place(zenith_column)});
  } else if (!waiting.empty()) {
    pairs_.push_back({waiting.back(), {*number, table.place(zenith_column)}});
    waiting.pop_back();
  }
}

void NotationWitness::tell(CsvTable& table, std::vector<std::string>& cautions,
                           const std::string& file) const {
  constexpr double kAlmost = 0.1;  // both faces of a whole circle, in degrees or gon
  constexpr std::size_t kEnoughDigits =
      12;  // 0.36 to the twelfth is below one in a hundred thousand
  if (notation_ == AngleNotation::DegreesMinutesSeconds) return;
  const bool degrees = notation_ == AngleNotation::DecimalDegrees;
  const double circle = degrees ? 360 : 400;
  std::size_t as_stated = 0, as_other = 0, as_packed = 0;
  for (const auto& [left, right] : pairs_) {
    const double sum = left.number + right.number;
    const auto a = packed_angle(left.number), b = packed_angle(right.number);
    as_stated += std::abs(sum - circle) < kAlmost ? 1U : 0U;
    as_other += std::abs(sum - (760 - circle)) < kAlmost ? 1U : 0U;
    as_packed += degrees && a && b && std::abs((*a + *b).in_degrees() - 360) < kAlmost ? 1U : 0U;
  }
  const std::size_t all = pairs_.size();
  if (all > 0 && as_stated < all && (as_other == all || as_packed == all)) {
    const bool packed = as_packed == all;
    const std::string other = packed    ? "packed degrees minutes seconds"
                              : degrees ? "gon"
                                        : "degrees";
    table.faults().add(pairs_.front().second.place,
                       "both faces sum to a whole circle only when read as " + other,
                       degrees ? "decimal degrees, as [field] states" : "gon, as [field] states",
                       packed ? "write degrees, minutes and seconds apart and angles = \"dms\""
                              : "correct angles in [field]");
  } else if (degrees && all == 0 && cannot_be_packed_ == 0 && could_be_packed_ >= kEnoughDigits) {
    cautions.push_back(file +
                       ": every angle could also be packed degrees minutes seconds; taken as " +
                       "decimal degrees, as [field] states");
  }
}

}  // namespace squaredig::formats
