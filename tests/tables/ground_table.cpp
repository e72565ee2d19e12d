// Runs tests/tables/ground.table: makes each ground, builds and examines it.
#include <algorithm>

#include "tables/table.h"
#include "unit/ground/made_input.h"

namespace squaredig::ground {
namespace {

using namespace testing;

// The heights of a grid whose point in the middle stands `by` above the rest.
GroundInput grid(tables::Line& line, double by) {
  const double spacing = line.value_or("spacing", "m", 5);
  const double fall = line.value_or("falls", "percent", 0) / 100;
  const double mid = 4 * spacing;
  GroundInput input = grid_input(9, 9, spacing, [=](double x, double y) {
    return 60 - fall * x + (x == mid && y == mid ? by : 0);
  });
  input.sigma_height = Length::millimetres(line.value_or("sigma", "mm", 15));
  return input;
}

double told(const GroundResult& result, const std::string& code) {
  const auto codes = codes_of(result);
  return static_cast<double>(std::count(codes.begin(), codes.end(), code));
}

void tell(tables::Line& line, const GroundInput& input) {
  const GroundResult result = examined(input);
  line.answer("plan area", result.plan_area.in_square_metres(), "m2");
  line.answer("surface area", result.surface_area.in_square_metres(), "m2");
  line.answer("lowest", result.lowest.in_metres(), "m");
  line.answer("highest", result.highest.in_metres(), "m");
  line.answer("triangles", static_cast<double>(result.triangles), "");
  line.answer("suspects", static_cast<double>(result.suspects.size()), "");
  line.answer("doubled points", told(result, "doubled point"), "");
  line.answer("near points", told(result, "near points"), "");
  line.answer("crossings", static_cast<double>(result.crossings.size()), "");
  if (!result.crossings.empty())
    line.answer("height difference", result.crossings[0].height_difference.in_millimetres(), "mm");
}

void work(tables::Line& line) {
  GroundInput input = grid(line, line.value_or("one point higher by", "mm", 0) / 1000);
  if (line.what() == "another point") {
    add_point(input, 10 + line.value("beside a point", "mm") / 1000, 10,
              60 + line.value_or("higher", "mm", 0) / 1000);
  } else if (line.what() == "two strings cross") {
    const double dz = line.value("one higher by", "mm") / 1000;
    input.breaklines = {string_of("kerb", {{2, 12, 60}, {23, 12, 60}}),
                        string_of("wall", {{12, 2, 60 + dz}, {12, 23, 60 + dz}})};
  } else if (line.what() != "grid") {
    throw tables::UnknownWords{line.what()};
  }
  tell(line, input);
}

}  // namespace
}  // namespace squaredig::ground

int main(int argc, char** argv) {
  return squaredig::tables::run_lines(argc, argv, squaredig::ground::work);
}
