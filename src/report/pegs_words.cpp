#include "report/pegs_words.h"

#include "quantity/number_text.h"

namespace squaredig::report {
namespace {

Table reference_table(const pegs::PegsResult& pegs) {
  Table table{
      "Reference pegs",
      {words_column("peg"), words_column("string"), figures_column("easting"),
       figures_column("northing"), figures_column("beyond corner"),
       figures_column("clear of crest"), figures_column("ground"), figures_column("cut"),
       figures_column("staff")},
      {},
      {"Cut: from the ground at the peg down to the dig level at its corner. Staff: what it "
       "reads on the ground at the peg under the job's laser."}};
  for (const auto& peg : pegs.reference)
    table.rows.push_back({peg.name, peg.string_line, easting_text(peg.at), northing_text(peg.at),
                          metres_text(peg.beyond_corner, 3), metres_text(peg.clear_of_crest, 2),
                          level_text(peg.ground), metres_text(peg.cut, 2),
                          metres_text(peg.staff_reading, 3)});
  return table;
}

Table corner_table(const pegs::PegsResult& pegs) {
  Table table{"Tank corners",
              {words_column("corner"), figures_column("easting"), figures_column("northing"),
               figures_column("underside"), figures_column("dig level"), figures_column("angle")},
              {},
              {}};
  for (const auto& corner : pegs.corners)
    table.rows.push_back({corner.name, easting_text(corner.at.at), northing_text(corner.at.at),
                          level_text(corner.at.height), level_text(corner.dig_level),
                          turn_text(corner.interior_angle)});
  return table;
}

Table lengths_table(const std::string& title, const std::vector<pegs::NamedLength>& sides,
                    const std::vector<pegs::NamedLength>& diagonals) {
  Table table{title,
              {words_column("line"), figures_column("to tape, on the ground"),
               figures_column("on the grid")},
              {},
              {}};
  for (const auto* lengths : {&sides, &diagonals})
    for (const auto& line : *lengths)
      table.rows.push_back({line.name, metres_text(line.ground, 3), metres_text(line.grid, 3)});
  return table;
}

Table polar_table(const std::string& title, const std::vector<pegs::PolarRow>& rows) {
  Table table{
      title,
      {words_column("station"), words_column("backsight"), words_column("point"),
       figures_column("bearing"), figures_column("turn"), figures_column("distance"),
       figures_column("height diff."), figures_column("tape check"), figures_column("staff")},
      {},
      {"Turn: clockwise from the backsight. Distance: horizontal, on the ground. Tape "
       "check: from the point in the line above."}};
  for (const auto& row : rows)
    table.rows.push_back({row.station, row.backsight, row.point, bearing_text(row.bearing),
                          turn_text(row.turn), metres_text(row.ground_distance, 3),
                          metres_text(row.height_difference, 3), metres_text(row.check_distance, 3),
                          metres_text(row.staff_reading, 3)});
  return table;
}

Table pipe_table(const pegs::PegsResult& pegs) {
  Table table{
      "Pipes at the tank's outer face",
      {words_column("pipe"), words_column("side"), figures_column("along"),
       figures_column("invert"), figures_column("above base"), words_column("from peg"),
       figures_column("along string"), figures_column("easting"), figures_column("northing")},
      {},
      {}};
  for (const auto& pipe : pegs.pipes)
    table.rows.push_back({pipe.name, pipe.side, metres_text(pipe.along, 3), level_text(pipe.invert),
                          metres_text(pipe.above_base, 3), pipe.peg,
                          metres_text(pipe.along_string, 3), easting_text(pipe.at),
                          northing_text(pipe.at)});
  return table;
}

Table shaft_table(const pegs::PegsResult& pegs) {
  Table table{
      "Shafts",
      {words_column("shaft"), figures_column("cover level"), figures_column("above top"),
       words_column("from peg"), figures_column("along string"), figures_column("square to it"),
       figures_column("easting"), figures_column("northing")},
      {},
      {}};
  for (const auto& shaft : pegs.shafts)
    table.rows.push_back(
        {shaft.name, level_text(shaft.cover_level), metres_text(shaft.above_top, 3), shaft.peg,
         metres_text(shaft.along_string, 3), metres_text(shaft.square_to_string, 3),
         easting_text(shaft.at), northing_text(shaft.at)});
  return table;
}

Table check_table(const std::string& title, const std::vector<pegs::Check>& checks) {
  Table table{title,
              {words_column("check"), words_column("answer"), figures_column("value, mm"),
               figures_column("uncertainty, mm"), figures_column("limit, mm")},
              {},
              {}};
  for (const auto& check : checks)
    table.rows.push_back({check.name, words(check.verdict), mm_text(check.value),
                          mm_text(check.uncertainty), mm_text(check.limit)});
  return table;
}

Table delta_table(const pegs::AsSetResult& set) {
  Table deltas{"As set less design",
               {words_column("point"), figures_column("easting"), figures_column("northing"),
                figures_column("dE, mm"), figures_column("dN, mm"), figures_column("along, mm"),
                figures_column("across, mm")},
               {},
               {"Along is away from the peg's corner, across to the right facing that way."}};
  for (const auto& p : set.points)
    deltas.rows.push_back({p.name, easting_text(p.measured), northing_text(p.measured),
                           signed_mm_text(p.delta_e), signed_mm_text(p.delta_n),
                           signed_mm_text(p.along), signed_mm_text(p.across)});
  return deltas;
}

Table corner_table(const pegs::AsSetResult& set) {
  Table corners{"Corners re-made from the string lines",
                {words_column("corner"), figures_column("easting"), figures_column("northing"),
                 figures_column("dE, mm"), figures_column("dN, mm"), figures_column("off, mm")},
                {},
                {}};
  for (const auto& c : set.corners)
    corners.rows.push_back({c.name, easting_text(c.at), northing_text(c.at),
                            signed_mm_text(c.delta_e), signed_mm_text(c.delta_n), mm_text(c.off)});
  if (set.diagonal_difference)
    corners.notes.push_back("Diagonals differ by " + signed_mm_text(set.diagonal_difference) +
                            " mm.");
  if (set.out_of_square)
    corners.notes.push_back("Out of square: " + fixed(set.out_of_square->in_seconds(), 0) +
                            " seconds.");
  return corners;
}

void add_as_set(const pegs::AsSetResult& set, std::vector<Table>& tables) {
  tables.push_back(delta_table(set));
  tables.push_back(corner_table(set));
  tables.push_back(check_table("Pegs as set, judged", set.checks));
  Table moves{"Moves that put it right",
              {words_column("peg"), figures_column("along, mm"), figures_column("across, mm")},
              {},
              {}};
  for (const auto& move : set.moves)
    moves.rows.push_back({move.name, signed_mm_text(move.along), signed_mm_text(move.across)});
  if (!set.moves_words.empty()) moves.notes.push_back(set.moves_words);
  if (!moves.rows.empty() || !moves.notes.empty()) tables.push_back(std::move(moves));
}

void add_tape(const pegs::TapeResult& tape, std::vector<Table>& tables) {
  Table lines{"Taped lengths",
              {words_column("line"), figures_column("taped"), figures_column("horizontal"),
               figures_column("design"), figures_column("as the others have it")},
              {},
              {}};
  for (const auto& line : tape.lines)
    lines.rows.push_back({line.name, metres_text(line.taped, 3), metres_text(line.horizontal, 3),
                          metres_text(line.design, 3), metres_text(line.by_the_others, 3)});
  if (tape.likely_wrong)
    lines.notes.push_back(
        "Most likely wrong: " + *tape.likely_wrong +
        (tape.likely_wrong_by ? ", by " + signed_mm_text(tape.likely_wrong_by) + " mm." : "."));
  if (!tape.words.empty()) lines.notes.push_back(tape.words);
  tables.push_back(std::move(lines));
  tables.push_back(check_table("Taped lengths, judged", tape.checks));
}

}  // namespace

std::vector<Table> peg_tables(const pegs::PegsResult& pegs) {
  std::vector<Table> tables{reference_table(pegs), corner_table(pegs),
                            lengths_table("Sides and diagonals", pegs.sides, pegs.diagonals)};
  if (!pegs.scale.words.empty()) tables.back().notes.push_back(pegs.scale.words);
  if (!pegs.polar.empty()) tables.push_back(polar_table("Polar schedule", pegs.polar));
  if (!pegs.backsight_checks.empty())
    tables.push_back(polar_table("Backsight checks", pegs.backsight_checks));
  if (!pegs.pipes.empty()) tables.push_back(pipe_table(pegs));
  if (!pegs.shafts.empty()) tables.push_back(shaft_table(pegs));
  return tables;
}

std::vector<Table> squareness_tables(const pegs::PegsResult& pegs) {
  std::vector<Table> tables;
  if (pegs.as_set) add_as_set(*pegs.as_set, tables);
  if (pegs.tape) add_tape(*pegs.tape, tables);
  return tables;
}

std::vector<std::string> peg_verdicts(const pegs::PegsResult& pegs) {
  std::vector<std::string> lines;
  if (pegs.as_set) lines.push_back(std::string("Pegs as set: ") + words(pegs.as_set->verdict));
  if (pegs.tape) lines.push_back(std::string("Taped lengths: ") + words(pegs.tape->verdict));
  return lines;
}

}  // namespace squaredig::report
