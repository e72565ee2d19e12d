// Runs tests/tables/record.table: what a tank stores, up to its outlet and whole.
#include "grounds.h"
#include "record/storage.h"
#include "tables/table.h"

namespace squaredig {
namespace {

void work(tables::Line& line) {
  if (line.what() != "tank") throw tables::UnknownWords{line.what()};
  auto input = testing::plain_pit(line.value("length", "m"), line.value("width", "m"), 10, Batter{},
                                  grid_point(500, 600), Bearing::degrees(37));
  input.tank.height = Length::metres(line.value("height", "m"));
  input.tank.fall = Fall::percent(line.value_or("falls", "percent", 0));
  input.tank.fall_toward = "CD";
  const auto tank = design::place_tank(input);
  std::optional<Elevation> outlet;
  if (line.has("outlet above A"))
    outlet = Elevation::metres(10 + line.value("outlet above A", "m"));
  const auto storage = record::storage_of({tank, tank.underside, "as designed",
                                           Ratio::percent(line.value("voids", "percent")), outlet});
  line.answer("gross", storage.gross.in_cubic_metres(), "m3");
  line.answer("net", storage.net->in_cubic_metres(), "m3");
  if (outlet) line.answer("below outlet", storage.below_outlet->in_cubic_metres(), "m3");
}

}  // namespace
}  // namespace squaredig

int main(int argc, char** argv) {
  return squaredig::tables::run_lines(argc, argv, squaredig::work);
}
