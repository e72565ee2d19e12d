#include "formats/cells_csv.h"

#include "formats/csv_text.h"

namespace squaredig::formats {

std::string cells_csv(const dig::CellGrid& grid) {
  CsvText csv({"cell", "column", "row", "easting", "northing", "ground", "dig_level",
               "cut_at_centre", "mean_cut", "cut_m3", "area_m2", "part", "staff_reading",
               "along_ab", "across_ab"});
  for (const auto& cell : grid.cells) {
    csv.word(cell.name()).count(cell.column).count(cell.row).place(cell.centre);
    csv.metres(cell.ground).metres(cell.dig_level).metres(cell.cut_at_centre);
    csv.metres(cell.mean_cut).number(cell.cut.in_cubic_metres());
    csv.number(cell.area.in_square_metres()).word(cell.part).metres(cell.staff_reading);
    csv.metres(cell.along).metres(cell.across);
    csv.end_row();
  }
  return csv.take();
}

}  // namespace squaredig::formats
