// Small invented results to draw: a tank of 4 by 3 metres, level, in flat ground, one metre deep.
#pragma once

#include "base/base_result.h"
#include "dig/dig_result.h"
#include "pegs/pegs_result.h"
#include "report/sheet.h"

namespace squaredig::report {

inline constexpr double kEast = 1000, kNorth = 2000, kGround = 51, kFloor = 50;

// A-B runs east, so `across` runs south.
inline GridPoint at_tank(double along, double across) {
  return grid_point(kEast + along, kNorth - across);
}
inline Length metres(double m) { return Length::metres(m); }
inline Elevation level(double m) { return Elevation::metres(m); }

inline ResultHead invented_head() {
  ResultHead head;
  head.job = "Alderbrook school, sample";
  head.inputs.push_back({"job.toml", std::string(64, 'a'), 1, 1, {}});
  return head;
}

inline SheetHead invented_sheet(const std::string& title) {
  return {title, "2026-03-20", "B", "104", "", "0.0.0"};
}

inline dig::Cell invented_cell(int column, int row, bool dug) {
  dig::Cell cell;
  cell.column = column;
  cell.row = row;
  cell.along = metres(column + 0.5);
  cell.across = metres(row + 0.5);
  cell.centre = at_tank(column + 0.5, row + 0.5);
  cell.ground = level(kGround);
  cell.mean_cut = metres(dug ? 1 : 0.25);
  cell.part = "floor and batters";
  if (!dug) return cell;
  cell.dig_level = level(kFloor);
  cell.cut_at_centre = metres(kGround - kFloor);
  cell.staff_reading = metres(2.345);
  return cell;
}

// `columns` by `rows` cells of the tank, and a rim of cells dug in part.
inline dig::DigResult invented_dig(int columns = 4, int rows = 3) {
  dig::DigResult dig;
  dig.head = invented_head();
  for (const char* at : {"A", "B", "C", "D"})
    for (const auto& [name, z] :
         {std::pair{"ground", kGround}, std::pair{"tank top", kFloor + 0.82},
          std::pair{"tank underside", kFloor + 0.02}, std::pair{"dig level", kFloor}})
      dig.levels.push_back({name, level(z), at, metres(52.345 - z)});
  dig.cut = BankVolume::cubic_metres(columns * rows);
  dig.deepest_cut = dig.mean_cut = metres(1);
  dig.tank_height = metres(0.8);
  dig.grid.size = metres(1);
  dig.grid.columns = columns + 2;
  dig.grid.rows = rows + 2;
  dig.grid.first_column = dig.grid.first_row = -1;
  dig.grid.origin = at_tank(-1, -1);
  dig.grid.bearing = Bearing::degrees(90);
  for (int row = -1; row <= rows; ++row)
    for (int column = -1; column <= columns; ++column)
      dig.grid.cells.push_back(
          invented_cell(column, row, column >= 0 && column < columns && row >= 0 && row < rows));
  const auto ring = [&](double out, double z) {
    std::vector<GridPosition> corners;
    for (const auto& [u, v] : {std::pair{-out, -out}, std::pair{columns + out, -out},
                               std::pair{columns + out, rows + out}, std::pair{-out, rows + out}})
      corners.push_back({at_tank(u, v), level(z)});
    return corners;
  };
  dig.tank = ring(0, kFloor + 0.02);
  dig.toe = ring(0.2, kFloor);
  dig.crest = {ring(0.8, kGround)};
  for (const auto& [name, to] :
       {std::pair{"long section", columns}, std::pair{"cross section", rows}}) {
    dig::Section section{
        name, "along", metres(0), metres(to), level(kFloor + 0.02), level(kFloor + 0.02), {}};
    for (const auto& [d, z] : {std::pair{-0.8, kGround}, std::pair{-0.2, kFloor},
                               std::pair{to + 0.2, kFloor}, std::pair{to + 0.8, kGround}})
      section.points.push_back({metres(d), level(kGround), level(z)});
    dig.sections.push_back(std::move(section));
  }
  return dig;
}

inline pegs::PegsResult invented_pegs() {
  pegs::PegsResult pegs;
  pegs.head = invented_head();
  const std::vector<std::pair<double, double>> corners{{0, 0}, {4, 0}, {4, 3}, {0, 3}};
  const std::vector<std::array<const char*, 3>> names{
      {"A1", "A1-B2", "A"}, {"A2", "D1-A2", "A"}, {"B1", "B1-C2", "B"}, {"B2", "A1-B2", "B"},
      {"C1", "C1-D2", "C"}, {"C2", "B1-C2", "C"}, {"D1", "D1-A2", "D"}, {"D2", "C1-D2", "D"}};
  const std::vector<std::pair<double, double>> places{{-2, 0}, {0, -2}, {4, -2}, {6, 0},
                                                      {6, 3},  {4, 5},  {0, 5},  {-2, 3}};
  for (std::size_t i = 0; i < names.size(); ++i) {
    pegs::ReferencePeg peg;
    peg.name = names[i][0];
    peg.string_line = names[i][1];
    peg.corner = names[i][2];
    peg.at = at_tank(places[i].first, places[i].second);
    peg.ground = level(kGround);
    peg.beyond_corner = metres(2);
    pegs.reference.push_back(peg);
  }
  for (std::size_t i = 0; i < corners.size(); ++i) {
    pegs::Corner corner;
    corner.name = std::string(1, static_cast<char>('A' + i));
    corner.at = {at_tank(corners[i].first, corners[i].second), level(kFloor + 0.02)};
    corner.dig_level = level(kFloor);
    corner.recovery = {{pegs.reference[2 * i].name, metres(2), metres(2)},
                       {pegs.reference[2 * i + 1].name, metres(2), metres(2)}};
    pegs.corners.push_back(corner);
  }
  pegs.sides = {{"AB", metres(4), metres(4)},
                {"BC", metres(3), metres(3)},
                {"CD", metres(4), metres(4)},
                {"DA", metres(3), metres(3)}};
  pegs.diagonals = {{"AC", metres(5), metres(5)}, {"BD", metres(5), metres(5)}};
  return pegs;
}

inline base::BaseResult invented_base() {
  base::BaseResult base;
  base.head = invented_head();
  base.verdict = Verdict::DoesNotConform;
  base.checks.push_back({"level high", Verdict::DoesNotConform, metres(0.0123), metres(0.005),
                         metres(0.002), at_tank(1, 1), "point \"B1\""});
  for (int i = 0; i < 9; ++i) {
    base::JudgedPoint p;
    p.point = "B" + std::to_string(i);
    p.along_ab = metres(0.5 + 1.5 * (i % 3));
    p.across_ab = metres(0.5 + i / 3);
    p.at = {at_tank(0.5 + 1.5 * (i % 3), 0.5 + i / 3), level(kFloor + 0.001 * i)};
    p.dig_level = level(kFloor);
    p.deviation = metres(0.001 * i);
    p.bedding = metres(0.02 - 0.001 * i);
    p.verdict = i < 6 ? Verdict::Conforms : Verdict::DoesNotConform;
    base.points.push_back(p);
  }
  base.ab = Bearing::degrees(90);
  base.tank = {at_tank(0, 0), at_tank(4, 0), at_tank(4, 3), at_tank(0, 3)};
  base.toe = {at_tank(-0.2, -0.2), at_tank(4.2, -0.2), at_tank(4.2, 3.2), at_tank(-0.2, 3.2)};
  return base;
}

}  // namespace squaredig::report
