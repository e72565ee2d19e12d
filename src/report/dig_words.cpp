#include "report/dig_words.h"

#include <algorithm>

#include "quantity/number_text.h"

namespace squaredig::report {
namespace {

constexpr std::size_t kMostShown = 12;  // cells dug too deep, the largest first

std::string m(Length value, int decimals) { return metres_text(value, decimals) + " m"; }

// "0.42 clear", "0.20 past it", "inside the dig"
std::string clear_text(const dig::Nearby& nearby) {
  if (nearby.exposed && *nearby.exposed > Length{}) return "inside the dig";
  if (nearby.distance <= Length{}) return metres_text(-nearby.distance, 2) + " past it";
  return metres_text(nearby.distance, 2) + " clear";
}

bool is_service(const dig::Nearby& nearby) { return nearby.kind.starts_with("service"); }

Table clash_table(const dig::DigResult& dig) {
  Table table{"Too near: ask before digging there",
              {figures_column("mark"), words_column("line"), words_column("against"),
               figures_column("how near"), figures_column("wanted"), figures_column("easting"),
               figures_column("northing")},
              {},
              {"Marks stand on the plan."}};
  for (std::size_t i = 0; i < dig.clashes.size(); ++i) {
    const auto& clash = dig.clashes[i];
    const bool bare = clash.exposed && *clash.exposed > Length{};
    table.rows.push_back({std::to_string(i + 1), clash.string, clash.kind,
                          bare ? "bare over " + metres_text(clash.exposed, 2) : clear_text(clash),
                          metres_text(clash.wanted, 2), easting_text(clash.at),
                          northing_text(clash.at)});
  }
  return table;
}

Table room_table(const dig::DigResult& dig) {
  Table table{
      "Room in front of each side, where least is to spare",
      {words_column("side"), figures_column("toe to boundary"), figures_column("batter needs"),
       words_column("boundary"), figures_column("easting"), figures_column("northing")},
      {},
      {"Square to the side, from the toe. Blank: no boundary lies in front."}};
  for (const auto& room : dig.room)
    table.rows.push_back({room.side, metres_text(room.available, 2), metres_text(room.needed, 2),
                          room.string, easting_text(room.at), northing_text(room.at)});
  return table;
}

Table nearby_table(const dig::DigResult& dig, bool services) {
  Table table{services ? "Services, where they come nearest to what is dug" : "Boundaries",
              {words_column(services ? "service" : "boundary"), words_column("against"),
               figures_column("clearance"), figures_column("easting"), figures_column("northing")},
              {},
              {}};
  if (services) {
    table.columns[1] = figures_column("level there");
    table.columns.insert(table.columns.begin() + 3, figures_column("wanted"));
    table.columns.insert(table.columns.begin() + 4, figures_column("laid bare"));
    table.notes = {
        "In space, from the line as entered. Only services entered are shown: locate all "
        "of them."};
  }
  for (const auto& nearby : dig.nearby) {
    if (is_service(nearby) != services) continue;
    std::vector<std::string> row{nearby.string};
    if (services)
      row.insert(row.end(), {level_text(nearby.level), clear_text(nearby),
                             metres_text(nearby.wanted, 2), metres_text(nearby.exposed, 2)});
    else
      row.insert(row.end(), {nearby.kind, clear_text(nearby)});
    row.insert(row.end(), {easting_text(nearby.at), northing_text(nearby.at)});
    table.rows.push_back(std::move(row));
  }
  return table;
}

Table faces_table(const dig::DigResult& dig) {
  Table table{"Vertical faces, where they are highest",
              {words_column("face"), figures_column("height"), figures_column("easting"),
               figures_column("northing")},
              {},
              {}};
  for (const auto& face : dig.vertical_faces)
    table.rows.push_back(
        {face.name, metres_text(face.height, 2), easting_text(face.at), northing_text(face.at)});
  return table;
}

Table over_dig_table(const dig::ProgressResult& survey) {
  Table table{"Over-dig in survey " + survey.name,
              {words_column("cell"), figures_column("volume, m\xC2\xB3"),
               figures_column("over an area of, m\xC2\xB2")},
              {},
              {}};
  std::vector<dig::OverDigCell> cells = survey.over_dig_plan;
  std::stable_sort(cells.begin(), cells.end(),
                   [](const auto& a, const auto& b) { return a.volume > b.volume; });
  const std::size_t shown = std::min(cells.size(), kMostShown);
  if (shown < cells.size())
    table.notes.push_back("The largest of " + std::to_string(cells.size()) +
                          " cells; dig.json lists all.");
  cells.resize(shown);
  for (const auto& cell : cells)
    table.rows.push_back({cell.cell, fixed(cell.volume.in_cubic_metres(), 2),
                          fixed(cell.area.in_square_metres(), 1)});
  if (survey.deepest_at)
    table.notes.push_back("Deepest " + m(survey.deepest_over_dig, 2) + " at E " +
                          easting_text(*survey.deepest_at) + " N " +
                          northing_text(*survey.deepest_at) + ".");
  return table;
}

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
  if (dig.truckloads_by_volume && dig.truckloads_by_mass)
    rows.push_back({"    by volume, by mass", std::to_string(*dig.truckloads_by_volume) + ", " +
                                                  std::to_string(*dig.truckloads_by_mass)});
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
    if (rung.name == "dig level")
      stops.push_back({rung.at, level_text(rung.level), metres_text(rung.staff_reading, 3)});
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

std::vector<Row> batter_rows(const dig::DigResult& dig) {
  std::vector<Row> rows;
  for (const auto& [side, batter] : dig.batters) {
    if (!rows.empty() && rows.back().value == batter.words())
      rows.back().label += ", " + side;
    else
      rows.push_back({side, batter.words()});
  }
  if (rows.size() == 1 && dig.batters.size() > 1) rows[0].label = "all sides";
  return rows;
}

std::string batter_source(const dig::DigResult& dig) {
  return dig.batter_given_by ? "Batters given by: " + *dig.batter_given_by
                             : "Nobody is named who gave the batters.";
}

Table batter_table(const dig::DigResult& dig) {
  Table table{"Batters as entered", {words_column("side"), words_column("batter")}, {}, {}};
  for (const auto& row : batter_rows(dig)) table.rows.push_back({row.label, row.value});
  table.notes = {batter_source(dig)};
  const auto& around = dig.surroundings;
  if (around.influence)
    table.notes.push_back(
        "Influence line, from the toe upward: " + around.influence->words() +
        (around.influence_line.empty() ? "; it lies inside the crest." : "; drawn dotted."));
  return table;
}

std::vector<Table> around_tables(const dig::DigResult& dig) {
  std::vector<Table> tables;
  if (!dig.clashes.empty()) tables.push_back(clash_table(dig));
  if (!dig.room.empty()) tables.push_back(room_table(dig));
  for (const bool services : {false, true})
    if (auto table = nearby_table(dig, services); !table.rows.empty())
      tables.push_back(std::move(table));
  if (!dig.vertical_faces.empty()) tables.push_back(faces_table(dig));
  return tables;
}

std::vector<Table> progress_tables(const dig::DigResult& dig) {
  if (dig.progress.empty()) return {};
  Table table{"Surveys during the dig, m\xC2\xB3 in the ground",
              {words_column("survey"), figures_column("surveyed, m\xC2\xB2"),
               figures_column("dug since the last"), figures_column("still to dig"),
               figures_column("dug too deep"), figures_column("deepest, m")},
              {},
              {}};
  const auto m3 = [](BankVolume v, const std::optional<BankVolume>& sigma) {
    return fixed(v.in_cubic_metres(), 1) +
           (sigma ? " \xC2\xB1 " + fixed(sigma->in_cubic_metres(), 1) : "");
  };
  bool sigmas = false;
  for (const auto& survey : dig.progress) {
    table.rows.push_back(
        {survey.name, fixed(survey.surveyed.in_square_metres(), 1),
         m3(survey.dug, survey.dug_sigma), m3(survey.remaining, survey.remaining_sigma),
         m3(survey.over_dig, survey.over_dig_sigma), metres_text(survey.deepest_over_dig, 2)});
    sigmas = sigmas || survey.dug_sigma.has_value();
  }
  if (sigmas) table.notes.push_back("\xC2\xB1: one standard deviation.");
  std::vector<Table> tables{std::move(table)};
  for (const auto& survey : dig.progress)
    if (!survey.over_dig_plan.empty()) tables.push_back(over_dig_table(survey));
  return tables;
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
