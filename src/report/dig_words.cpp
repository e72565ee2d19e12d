#include "report/dig_words.h"

namespace squaredig::report {
namespace {

std::string m(Length value, int decimals) { return metres_text(value, decimals) + " m"; }

}  // namespace

std::vector<Row> quantity_rows(const dig::DigResult& dig) {
  std::vector<Row> rows{{"cut, in the ground", volume_text(dig.cut)}};
  if (dig.uncertainty)
    rows.push_back({"    one standard deviation", volume_text(dig.uncertainty->sigma)});
  if (dig.by_part.size() > 1)
    for (const auto& part : dig.by_part)
      rows.push_back({"    " + part.part, volume_text(part.cut)});
  if (dig.topsoil) rows.push_back({"    of it topsoil", volume_text(*dig.topsoil)});
  if (dig.loose) rows.push_back({"loose", volume_text(*dig.loose)});
  if (dig.hauled && dig.loose && *dig.hauled != *dig.loose)
    rows.push_back({"    hauled away", volume_text(*dig.hauled)});
  if (dig.truckloads) rows.push_back({"loads", std::to_string(*dig.truckloads)});
  if (dig.fill_to_floor > Volume{})
    rows.push_back({"fill up to the floor", volume_text(dig.fill_to_floor)});
  rows.push_back({"deepest cut", m(dig.deepest_cut, 2)});
  rows.push_back({"mean cut", m(dig.mean_cut, 2)});
  rows.push_back({"floor", area_text(dig.floor_area)});
  rows.push_back({"area dug", area_text(dig.crest_area)});
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
