// Measures how exact the program is and prints docs/accuracy.md. Errors are rounded up to the next
// power of ten, so that the page says what may be relied on and stays the same from machine to
// machine.
#include <cmath>
#include <cstdio>

#include "dig/dig.h"
#include "fill/fill.h"
#include "geometry/closure.h"
#include "geometry/fit_plane.h"
#include "grounds.h"

namespace squaredig {
namespace {

using testing::grid_surface;
using testing::MadeSurvey;
using testing::plain_pit;
using testing::rough_ground;

std::string ceiling(double error) {
  if (error == 0) return "0";
  const int power = static_cast<int>(std::ceil(std::log10(error)));
  return "below 1e" + std::to_string(std::max(power, -15));
}

void row(const std::string& what, const std::string& against, double error) {
  std::printf("| %s | %s | %s |\n", what.c_str(), against.c_str(), ceiling(error).c_str());
}

double closed_form(double l, double w, double z, double d) {
  return l * w * d + (l + w) * z * d * d + 4.0 / 3 * z * z * d * d * d;
}

// The worst relative error over some batters and depths.
double pit_error(GridPoint at, double bearing) {
  double worst = 0;
  for (const double z : {0.0, 0.5, 1.0, 1.5, 3.0})
    for (const double d : {0.5, 2.0, 4.0}) {
      MadeSurvey survey(grid_surface(45, 3.7, [=](double, double) { return d; }),
                        {at, Elevation::metres(0)});
      const auto pit = design::excavate(
          plain_pit(24.4, 10, 0, Batter::run_per_rise(z), at, Bearing::degrees(bearing)), survey);
      const double exact = closed_form(24.4, 10, z, d);
      worst = std::max(worst, std::abs(pit.dug.volume - exact) / exact);
    }
  return worst;
}

design::DesignInput falling_pit(unsigned seed) {
  const auto ab = Bearing::degrees(23.0 * seed);
  auto input = plain_pit(24, 9.6, 0.02, Batter::run_per_rise(1), grid_point(0.3, -0.7), ab);
  input.tank.height = Length::metres(1.32);
  input.tank.fall = Fall::percent(0.5);
  input.tank.fall_bearing = ab + Angle::degrees(90);
  input.bedding.thickness = Length::millimetres(20);
  input.pit.gap.all = Length::metres(0.7);
  input.pit.batter = {Batter::run_per_rise(1), {{"BC", Batter{}}}, {}};
  input.pit.ramps = {{"CD",
                      Length::metres(6),
                      Length::metres(4),
                      Batter::run_per_rise(6),
                      Batter::run_per_rise(1),
                      {}}};
  return input;
}

fill::FillInput usual_fill() {
  fill::FillInput input;
  input.side_lift = Length::metres(0.3);
  input.special_height = Length::metres(0.6);
  input.capping = {Length::metres(0.15), Length::metres(0.15)};
  input.capping_beyond = Length::metres(0.5);
  input.finish = fill::ExistingGround{};
  input.compacted_per_bank = Ratio::of(0.9);
  return input;
}

struct Rough {
  double cells = 0, flux = 0, open = 0, fill = 0;
};

Rough rough_errors() {
  Rough worst;
  for (unsigned seed = 1; seed <= 12; ++seed) {
    MadeSurvey survey(grid_surface(60, 2.9, rough_ground(seed, 3, 0.7)));
    const auto input = falling_pit(seed);
    const auto pit = design::excavate(input, survey);
    dig::DigInput stage;
    stage.cell = Length::metres(1);
    const auto result = dig::dig(stage, input, pit, survey);
    const double cut = result.cut.in_cubic_metres();
    const auto relative = [&](double v) { return std::abs(v) / cut; };
    worst.cells = std::max(worst.cells, relative(result.closure.cells_sum.in_cubic_metres() - cut));
    worst.flux = std::max(worst.flux, relative(result.closure.difference.in_cubic_metres()));
    worst.open = std::max(worst.open, relative(result.closure.open.in_square_metres()));
    const auto filled = fill::fill(usual_fill(), {input, pit, std::nullopt, nullptr});
    worst.fill = std::max(worst.fill, relative(filled.closure.difference.in_cubic_metres()));
  }
  return worst;
}

double plane_error(double x0, double y0) {
  std::vector<geometry::Point3> points;
  for (int r = 0; r < 9; ++r)
    for (int c = 0; c < 17; ++c)
      points.push_back({x0 + 1.5 * c, y0 + 1.5 * r, 62.35 + 0.0125 * c * 1.5 - 0.005 * r * 1.5});
  const auto fit = geometry::fit_least_squares(points);
  return std::max(
      {fit->range, std::abs(fit->plane.slope_x - 0.0125), std::abs(fit->plane.slope_y + 0.005)});
}

}  // namespace
}  // namespace squaredig

int main() {
  using namespace squaredig;
  std::printf(
      "# Accuracy, measured\n\n"
      "This page is printed by the test `accuracy.table`, which fails where the page differs. "
      "Each\n"
      "error is the worst of its cases, rounded up to a power of ten.\n\n"
      "| what | against | worst error |\n| --- | --- | --- |\n");
  const std::string closed =
      "L W D + (L + W) Z D2 + 4/3 Z2 D3 (FHWA HEC-22, 4th ed. 2024), relative";
  row("cut of a pit in level ground, 15 pits, at the origin", closed,
      pit_error(grid_point(0, 0), 90));
  row("the same at E 500 000 N 6 100 000", closed, pit_error(grid_point(500000, 6100000), 90));
  row("the same at E 1 525 748 N 5 021 772, A-B bearing 37.5 degrees", closed,
      pit_error(grid_point(1525748, 5021772), 37.5));
  const Rough rough = rough_errors();
  row("cells of 1 m, 12 pits with ramp in rough ground", "the total cut, relative", rough.cells);
  row("the total cut of the same pits", "flux of x through the closed solid, relative", rough.flux);
  row("vector area of that solid", "zero, in m2 for each m3 cut", rough.open);
  row("all fills of the same pits", "cut + fill to floor + above ground - left open, relative",
      rough.fill);
  row("least-squares plane through 153 points of one plane, near the site frame's origin",
      "the plane: residual range in m, slopes", plane_error(-12, 8));
  row("the same 3 km from it", "the plane: residual range in m, slopes", plane_error(3000, -2800));
  std::printf(
      "\nWhat the volume is worth is another matter: its standard deviation follows from those of "
      "the\n"
      "ground points, see the dig stage.\n");
  return 0;
}
