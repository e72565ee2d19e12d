// Runs tests/tables/field.table: reduces single sights and two-peg tests.
#include "field/level_book.h"
#include "field/ray.h"
#include "field/two_peg.h"
#include "tables/table.h"

namespace squaredig::field {
namespace {

Length m(double v) { return Length::metres(v); }

Earth earth_of(tables::Line& line) {
  return {m(1000 * line.value_or("radius", "km", 6371)),
          Ratio::of(line.value_or("refraction", "", 0))};
}

void sight(tables::Line& line) {
  const Ray ray{m(line.value("slope distance", "m")), line.angle("zenith")};
  const Reach reach = reach_of(ray, earth_of(line), m(line.value_or("height", "m", 0)));
  line.answer("level distance", reach.arc.in_metres(), "m");
  line.answer("rise", reach.rise.in_metres(), "m");
}

void curvature(tables::Line& line) {
  const Earth earth = earth_of(line);
  const Length bend =
      curvature_and_refraction(m(line.value("distance", "m")), earth.radius, earth.refraction);
  line.answer("rise", bend.in_metres(), "m");
}

// From the middle, then from beyond one end: two staffs, each read twice.
void two_peg(tables::Line& line) {
  const Length middle = m(line.value("middle distance", "m"));
  const std::vector<TwoPegReading> seen = {
      {"middle", "A", middle, m(line.value("middle A", "m"))},
      {"middle", "B", middle, m(line.value("middle B", "m"))},
      {"end", "A", m(line.value("distance A", "m")), m(line.value("end A", "m"))},
      {"end", "B", m(line.value("distance B", "m")), m(line.value("end B", "m"))}};
  const Collimation found = two_peg_test(seen, std::nullopt);
  line.answer("in 100 m", found.slope.value() * 100, "m");
  line.answer("correct A", found.correct[2].reading.in_metres(), "m");
  line.answer("correct B", found.correct[3].reading.in_metres(), "m");
}

void work(tables::Line& line) {
  if (line.what() == "sight") return sight(line);
  if (line.what() == "curvature") return curvature(line);
  if (line.what() == "two-peg test") return two_peg(line);
  throw tables::UnknownWords{line.what()};
}

}  // namespace
}  // namespace squaredig::field

int main(int argc, char** argv) {
  return squaredig::tables::run_lines(argc, argv, squaredig::field::work);
}
