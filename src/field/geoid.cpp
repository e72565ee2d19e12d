#include "field/geoid.h"

#include <algorithm>
#include <cmath>

#include "quantity/number_text.h"

namespace squaredig::field {
namespace {

constexpr float kDeepest = -120, kHighest = 100;

std::string place_text(geodesy::Geographic at) {
  return "latitude " + fixed(at.latitude.in_degrees(), 6) + " longitude " +
         fixed(at.longitude.in_degrees(), 6);
}

constexpr const char* kRemedy = "name another geoid file under [grid]";

Problem outside(const GeoidGrid& geoid, geodesy::Geographic at, const Place& asked_by) {
  return {ProblemKind::Input, asked_by,
          place_text(at) + " lies outside the geoid file " + quoted(geoid.file),
          "a geoid file that covers the work", kRemedy};
}

}  // namespace

void examine(const GeoidGrid& geoid) {
  const std::string file = "the geoid file " + quoted(geoid.file);
  if (geoid.rows < 2 || geoid.columns < 2 ||
      geoid.separation_m.size() != geoid.rows * geoid.columns || !(geoid.step_latitude > Angle{}) ||
      !(geoid.step_longitude > Angle{}))
    refuse(geoid.place, file + " has no regular grid of nodes", "two rows and columns or more",
           "name another file");
  std::size_t with_value = 0;
  for (std::size_t i = 0; i < geoid.separation_m.size(); ++i) {
    const float n = geoid.separation_m[i];
    if (std::isnan(n)) continue;
    ++with_value;
    if (!std::isfinite(n) || n < kDeepest || n > kHighest)
      refuse(geoid.place,
             file + " holds " +
                 (std::isfinite(n) ? shortest(static_cast<double>(n)) + " m" : "infinity") +
                 " in row " + std::to_string(i / geoid.columns + 1) + ", column " +
                 std::to_string(i % geoid.columns + 1),
             "separations from -120 m to 100 m at every node",
             "get the file again: it is damaged, or no geoid");
  }
  if (with_value == 0)
    refuse(geoid.place, file + " has no node with a value", "separations", "get the file again");
}

Length separation(const GeoidGrid& geoid, geodesy::Geographic at, const Place& asked_by) {
  auto found = find_separation(geoid, at, asked_by);
  if (auto* problem = std::get_if<Problem>(&found)) throw Refusal(std::move(*problem));
  return std::get<Length>(found);
}

namespace {

// Between the four nodes round a place, counted in rows and columns; nothing where one has no
// value.
std::optional<Length> interpolated(const GeoidGrid& geoid, double row, double column,
                                   double east_end) {
  const double r = std::clamp(std::floor(row), 0.0, static_cast<double>(geoid.rows) - 2);
  const double c = std::clamp(std::floor(column), 0.0, east_end - 1);
  const double down = std::clamp(row - r, 0.0, 1.0), right = std::clamp(column - c, 0.0, 1.0);
  double sum = 0;
  for (const std::size_t i : {0U, 1U})
    for (const std::size_t j : {0U, 1U}) {
      const auto node = (static_cast<std::size_t>(r) + i) * geoid.columns +
                        (static_cast<std::size_t>(c) + j) % geoid.columns;
      const double weight = (i == 0 ? 1 - down : down) * (j == 0 ? 1 - right : right);
      const float n = geoid.separation_m[node];
      if (std::isnan(n)) return std::nullopt;
      sum += weight * static_cast<double>(n);
    }
  return Length::metres(sum);
}

}  // namespace

std::variant<Length, Problem> find_separation(const GeoidGrid& geoid, geodesy::Geographic at,
                                              const Place& asked_by) {
  const double row = (geoid.north - at.latitude) / geoid.step_latitude;
  double east = std::fmod((at.longitude - geoid.west).in_degrees(), 360.0);
  constexpr double kRounding = 1e-9;  // degrees
  if (east < -kRounding) east += 360;
  const double column = east / geoid.step_longitude.in_degrees();
  const auto last_row = static_cast<double>(geoid.rows - 1);
  const auto last_column = static_cast<double>(geoid.columns - 1);
  // a grid that goes round the earth has no edge in the east
  const bool round =
      std::abs(geoid.step_longitude.in_degrees() * static_cast<double>(geoid.columns) - 360) < 1e-6;
  const double east_end = round ? last_column + 1 : last_column;
  if (row < -kRounding || row > last_row + kRounding || column > east_end + kRounding)
    return outside(geoid, at, asked_by);
  if (const auto found = interpolated(geoid, row, column, east_end)) return *found;
  return Problem{ProblemKind::Input, asked_by,
                 place_text(at) + " stands beside a node without value of " + quoted(geoid.file),
                 "four nodes with values round the point", kRemedy};
}

}  // namespace squaredig::field
