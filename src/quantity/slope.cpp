#include "quantity/slope.h"

#include "quantity/number_text.h"

namespace squaredig {

Angle Batter::above_horizontal() const { return Angle::radians(std::atan2(1.0, run_)); }

std::string Batter::text() const { return shortest(run_) + ":1"; }

std::string Batter::words() const {
  if (vertical()) return "vertical (90 degrees)";
  return shortest(run_) + " across for each 1 up (" + fixed(above_horizontal().in_degrees(), 1) +
         " degrees)";
}

std::optional<Batter> Batter::parse(std::string_view text) {
  const auto colon = text.find(':');
  if (colon == std::string_view::npos) return std::nullopt;
  const auto run = parse_number(text.substr(0, colon));
  const auto rise = parse_number(text.substr(colon + 1));
  if (!run || !rise || *run < 0 || *rise <= 0) return std::nullopt;
  return run_per_rise(*run / *rise);
}

}  // namespace squaredig
