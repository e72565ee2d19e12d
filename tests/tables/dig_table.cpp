// Runs tests/tables/dig.table: digs each pit and cutting through the whole kernel, counts its
// loads.
#include "dig/dig.h"
#include "grounds.h"
#include "tables/table.h"

namespace squaredig {
namespace {

using testing::grid_surface;
using testing::MadeSurvey;
using testing::plain_pit;

void tell(tables::Line& line, const dig::DigInput& stage, const design::DesignInput& input,
          const testing::Height& ground) {
  MadeSurvey survey(grid_surface(400, 31, ground));
  if (line.has("shared sigma")) {
    auto& sigmas = survey.ground();
    sigmas.sigma_height.assign(sigmas.sigma_height.size(), Length{});
    sigmas.sigma_common = Length::millimetres(line.value("shared sigma", "mm"));
  }
  const auto result = dig::dig(stage, input, design::excavate(input, survey), survey);
  line.answer("cut", result.cut.in_cubic_metres(), "m3");
  if (result.uncertainty) line.answer("sigma", result.uncertainty->sigma.in_cubic_metres(), "m3");
  line.answer("deepest cut", result.deepest_cut.in_metres(), "m");
  line.answer("floor", result.floor_area.in_square_metres(), "m2");
  line.answer("crest", result.crest_area.in_square_metres(), "m2");
  line.answer("end areas", result.comparison.end_area.in_cubic_metres(), "m3");
  if (result.loose) line.answer("loose", result.loose->in_cubic_metres(), "m3");
  if (result.hauled) line.answer("hauled", result.hauled->in_cubic_metres(), "m3");
  if (result.truckloads) line.answer("truckloads", static_cast<double>(*result.truckloads), "");
}

dig::DigInput stage_of(tables::Line& line) {
  dig::DigInput stage;
  stage.cell = Length::metres(10);
  if (line.has("bulking")) stage.bulking = Ratio::of(line.value("bulking", ""));
  if (line.has("carries"))
    stage.truck_mass = {Mass::tonnes(line.value("carries", "t")),
                        Density::tonnes_per_cubic_metre(line.value("weighs", "t/m3"))};
  if (line.has("truck")) stage.truck = LooseVolume::cubic_metres(line.value("truck", "m3"));
  stage.keep = BankVolume::cubic_metres(line.value_or("kept", "m3", 0));
  return stage;
}

// A pit of four sides in ground that is level, or falls along the length from its middle.
void pit(tables::Line& line) {
  const double depth = line.value("depth", "m");
  const double fall = line.value_or("ground falls", "percent", 0) / 100;
  auto input =
      plain_pit(line.value("length", "m"), line.value("width", "m"), 0, line.batter("batter"));
  if (line.has("batter of the ends")) {
    const Batter ends = line.batter("batter of the ends");
    input.pit.batter.by_side = {{"BC", ends}, {"DA", ends}};
  }
  tell(line, stage_of(line), input, [=](double x, double) { return depth - fall * x; });
}

// A cutting between two vertical ends, the ground sloping square to it.
void cutting(tables::Line& line) {
  const double depth = line.value("depth", "m");
  const double cross = line.value_or("cross slope", "percent", 0) / 100;
  auto input =
      plain_pit(line.value("length", "m"), line.value("width", "m"), 0, line.batter("batter"));
  input.pit.batter.by_side = {{"BC", Batter{}}, {"DA", Batter{}}};
  tell(line, stage_of(line), input, [=](double, double y) { return depth + cross * y; });
}

void work(tables::Line& line) {
  if (line.what() == "pit") return pit(line);
  if (line.what() == "cutting") return cutting(line);
  throw tables::UnknownWords{line.what()};
}

}  // namespace
}  // namespace squaredig

int main(int argc, char** argv) {
  return squaredig::tables::run_lines(argc, argv, squaredig::work);
}
