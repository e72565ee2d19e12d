// What the dig's sheet and page say in words and rows.
#pragma once

#include "dig/dig_result.h"
#include "report/sheet.h"
#include "report/words.h"

namespace squaredig::report {

std::vector<Row> quantity_rows(const dig::DigResult& dig);

// One stop: the dig level at a corner, and what the staff reads on it; empty without a laser.
struct Stop {
  std::string corner;
  std::string level;
  std::string staff;
};
std::vector<Stop> stops_of(const dig::DigResult& dig);

// The levels as a table, a line for each corner; empty where a rung is not known.
struct LadderLine {
  std::string corner;
  std::vector<std::string> levels;  // in the order of ladder_names
};
const std::vector<std::string>& ladder_names();
std::vector<LadderLine> ladder_lines(const dig::DigResult& dig);

// The batter of each side, sides alike in one row, and who gave it.
std::vector<Row> batter_rows(const dig::DigResult& dig);
std::string batter_source(const dig::DigResult& dig);
Table batter_table(const dig::DigResult& dig);
// What is too near, the room in front of each side, services: those that are there.
std::vector<Table> around_tables(const dig::DigResult& dig);
// The surveys during the dig.
std::vector<Table> progress_tables(const dig::DigResult& dig);

// A cell as a line of the list.
const std::vector<std::string>& cell_headings();
std::vector<std::string> cell_values(const dig::Cell& cell);

inline constexpr const char* kBiggerIsDeeper = "Bigger reading = deeper.";
inline constexpr const char* kHowToTape =
    "Tape along string A-B from A, then square to it into the tank.";

}  // namespace squaredig::report
