// Runs tests/tables/pegs.table: places pegs, tapes sides, and checks figures as set.
#include "tables/table.h"
#include "unit/pegs/as_set.h"

namespace squaredig::pegs {
namespace {

Length m(double v) { return Length::metres(v); }

// A-B north from 15 m west and 25 m south of the origin of the made ground.
Site rectangle(double length, double width, const testing::Height& ground) {
  Site site(ground, 90, 3);
  site.design.tank.length = m(length);
  site.design.tank.width = m(width);
  site.design.tank.bearing_ab = Bearing::degrees(0);
  site.design.tank.corner_a = grid_point(715825, 734665);
  give_tolerances(site, 10);
  return site;
}

double level(double, double) { return 3.0; }

// The peg on A-B produced beyond B, in ground that rises outward from B.
void peg(tables::Line& line) {
  const double rising = line.value_or("ground rises", "percent", 0) / 100;
  const double at_b = 2.33 + line.value("depth", "m");  // dig level 62.330
  Site site = rectangle(24, 12, [=](double, double y) { return at_b + rising * (y + 1); });
  site.design.pit.gap.all = m(line.value("gap", "m"));
  site.design.pit.batter.all = line.batter("batter");
  site.pegs.offset = m(line.value("offset", "m"));
  site.pegs.setback = m(line.value("setback", "m"));
  const PegsResult result = site.run();
  const ReferencePeg& b2 = squaredig::pegs::peg(result, "B2");
  line.answer("beyond the corner", b2.beyond_corner.in_metres(), "m");
  line.answer("clear of the crest", b2.clear_of_crest.in_metres(), "m");
}

void rectangle_as_designed(tables::Line& line) {
  const PegsResult result =
      rectangle(line.value("length", "m"), line.value("width", "m"), level).run();
  line.answer("diagonal", result.diagonals[0].grid.in_metres(), "m");
}

void tape(tables::Line& line) {
  Site site = rectangle(12, 6, level);
  site.pegs.tape = {
      {"A", "B", m(line.value("reads", "m")), m(line.value("rise", "m")), {"tape.csv", 2, 1}}};
  line.answer("level length", site.run().tape->sides[0]->in_metres(), "m");
}

// Side A-B as designed, C and D moved along it.
void as_set(tables::Line& line) {
  const double length = line.value("length", "m"), width = line.value("width", "m");
  const double c = line.value_or("C moved along A-B", "mm", 0) / 1000;
  const double d = line.value_or("D moved along A-B", "mm", 0) / 1000;
  Site site = rectangle(length, width, level);
  const auto at = [](double north, double east) {
    return grid_point(715825 + east, 734665 + north);
  };
  site.pegs.as_set = pegs_round({at(0, 0), at(length, 0), at(length + c, width), at(d, width)}, 3);
  const AsSetResult set = *site.run().as_set;
  line.answer("diagonal difference", set.diagonal_difference->in_millimetres(), "mm");
  line.answer("out of square", set.out_of_square->in_seconds(), "sec");
  line.answer("diagonals", words(verdict_of(set.checks, "diagonal difference")));
  line.answer("verdict", words(set.verdict));
}

void work(tables::Line& line) {
  if (line.what() == "peg") return peg(line);
  if (line.what() == "rectangle") return rectangle_as_designed(line);
  if (line.what() == "tape") return tape(line);
  if (line.what() == "as set") return as_set(line);
  throw tables::UnknownWords{line.what()};
}

}  // namespace
}  // namespace squaredig::pegs

int main(int argc, char** argv) {
  return squaredig::tables::run_lines(argc, argv, squaredig::pegs::work);
}
