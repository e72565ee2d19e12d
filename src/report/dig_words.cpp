#include "report/dig_words.h"

#include "quantity/number_text.h"

namespace squaredig::report {
namespace {

template <class AnyVolume>
std::string m3(AnyVolume value) {
  return fixed(value.in_cubic_metres(), 1) + " m\xC2\xB3";
}
std::string m2(Area value) { return fixed(value.in_square_metres(), 1) + " m\xC2\xB2"; }
std::string m(Length value, int decimals) { return fixed(value.in_metres(), decimals) + " m"; }

}  // namespace

std::string metres_text(const std::optional<Length>& value, int decimals) {
  return value ? fixed(value->in_metres(), decimals) : "";
}

std::string level_text(const std::optional<Elevation>& value) {
  return value ? fixed(value->in_metres(), 3) : "";
}

std::vector<Row> quantity_rows(const dig::DigResult& dig) {
  std::vector<Row> rows{{"cut, in the ground", m3(dig.cut)}};
  if (dig.uncertainty) rows.push_back({"    one standard deviation", m3(dig.uncertainty->sigma)});
  if (dig.by_part.size() > 1)
    for (const auto& part : dig.by_part) rows.push_back({"    " + part.part, m3(part.cut)});
  if (dig.topsoil) rows.push_back({"    of it topsoil", m3(*dig.topsoil)});
  if (dig.loose) rows.push_back({"loose", m3(*dig.loose)});
  if (dig.hauled && dig.loose && *dig.hauled != *dig.loose)
    rows.push_back({"    hauled away", m3(*dig.hauled)});
  if (dig.truckloads) rows.push_back({"loads", std::to_string(*dig.truckloads)});
  if (dig.fill_to_floor > Volume{}) rows.push_back({"fill up to the floor", m3(dig.fill_to_floor)});
  rows.push_back({"deepest cut", m(dig.deepest_cut, 2)});
  rows.push_back({"mean cut", m(dig.mean_cut, 2)});
  rows.push_back({"floor", m2(dig.floor_area)});
  rows.push_back({"area dug", m2(dig.crest_area)});
  rows.push_back({"crest, round", m(dig.crest_length, 1)});
  return rows;
}

std::vector<Stop> stops_of(const dig::DigResult& dig) {
  std::vector<Stop> stops;
  for (const auto& rung : dig.levels)
    if (rung.name == "dig level") stops.push_back({rung.at, level_text(rung.level)});
  return stops;
}

const std::vector<std::string>& ladder_names() {
  static const std::vector<std::string> names{"ground", "tank top", "tank underside", "dig level"};
  return names;
}

std::vector<LadderLine> ladder_lines(const dig::DigResult& dig) {
  std::vector<LadderLine> lines;
  for (const auto& rung : dig.levels) {
    if (lines.empty() || lines.back().corner != rung.at)
      lines.push_back({rung.at, std::vector<std::string>(ladder_names().size())});
    for (std::size_t i = 0; i < ladder_names().size(); ++i)
      if (ladder_names()[i] == rung.name) lines.back().levels[i] = level_text(rung.level);
  }
  return lines;
}

const std::vector<std::string>& cell_headings() {
  static const std::vector<std::string> names{"cell", "along A-B", "in",
                                              "cut",  "dig level", "staff"};
  return names;
}

std::vector<std::string> cell_values(const dig::Cell& cell) {
  return {cell.name(),
          metres_text(cell.along, 2),
          metres_text(cell.across, 2),
          metres_text(cell.cut_at_centre, 2),
          level_text(cell.dig_level),
          metres_text(cell.staff_reading, 3)};
}

}  // namespace squaredig::report
