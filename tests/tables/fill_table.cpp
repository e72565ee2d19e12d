// Runs tests/tables/fill.table: sheets over and round a tank, and density tests.
#include <optional>

#include "fill/density.h"
#include "fill/sheets.h"
#include "tables/table.h"

namespace squaredig::fill {
namespace {

Length m(double v) { return Length::metres(v); }

void strips(tables::Line& line) {
  const double width = line.value("width", "m"), roll = line.value("roll", "m");
  const auto count = strips_across(m(width), m(roll), Length::millimetres(line.value("lap", "mm")));
  line.answer("strips", static_cast<double>(count), "");
}

void wrap(tables::Line& line) {
  const auto sheet = wrap_box(m(line.value("length", "m")), m(line.value("width", "m")),
                              m(line.value("height", "m")), std::nullopt, m(0.15));
  line.answer("net", sheet.net.in_square_metres(), "m2");
}

void layers(tables::Line& line) {
  const auto sheet = lay_layers(m(line.value("length", "m")), m(line.value("width", "m")),
                                static_cast<int>(line.value("layers", "")), std::nullopt, m(0.2));
  line.answer("net", sheet.net.in_square_metres(), "m2");
}

void density(tables::Line& line) {
  const CompactionTest test{"base",
                            grid_point(0, 0),
                            Density::tonnes_per_cubic_metre(line.value("dry", "t/m3")),
                            Density::tonnes_per_cubic_metre(line.value("most", "t/m3")),
                            {}};
  line.answer("ratio", relative_compaction(test).in_percent(), "percent");
  const auto judged =
      judge_densities({test}, Ratio::percent(line.value_or("asked", "percent", 95)));
  line.answer("verdict", judged.failed.empty() ? "conforms" : "does not conform");
}

void work(tables::Line& line) {
  if (line.what() == "strips") return strips(line);
  if (line.what() == "wrap") return wrap(line);
  if (line.what() == "layers") return layers(line);
  if (line.what() == "density") return density(line);
  throw tables::UnknownWords{line.what()};
}

}  // namespace
}  // namespace squaredig::fill

int main(int argc, char** argv) {
  return squaredig::tables::run_lines(argc, argv, squaredig::fill::work);
}
