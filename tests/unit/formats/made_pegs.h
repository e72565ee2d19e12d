// A made result of the pegs stage: a rectangle with hard names, for the writers' tests.
#pragma once

#include <string>
#include <vector>

#include "pegs/pegs_result.h"

namespace squaredig::formats {

// Labels with commas, quotes, a formula, other scripts, markup, and 64 characters.
inline const std::vector<std::string>& hard_labels() {
  static const std::vector<std::string> labels = {
      "inlet, north",      "the \"old\" drain",     "=1+1",
      "@SUM(A1)",          "Zufluss Süd 入口 Ø300", "<a & 'b'>",
      "%%d 100% \\U+0041", std::string(64, 'x')};
  return labels;
}

inline pegs::PegsResult made_pegs() {
  pegs::PegsResult r;
  r.head.job = "Alderbrook school, car park tank";
  const double e[] = {715830.25, 715854.25, 715854.25, 715830.25};
  const double n[] = {734697.6, 734697.6, 734688.0, 734688.0};
  const char* names[] = {"A", "B", "C", "D"};
  for (std::size_t i = 0; i < 4; ++i) {
    pegs::Corner c;
    c.name = names[i];
    c.at = grid_position(e[i], n[i], 62.35);
    c.dig_level = Elevation::metres(62.33);
    c.interior_angle = c.crossing_angle = Angle::degrees(90);
    c.geographic = pegs::LatLong{Angle::degrees(53.35 + (n[i] - n[0]) * 9e-6),
                                 Angle::degrees(-6.25 + (e[i] - e[0]) * 1.5e-5)};
    r.corners.push_back(c);
    r.toe.push_back(grid_point(e[i], n[i]));
  }
  const char* pegs[] = {"A1", "A2", "B1", "B2", "C1", "C2", "D1", "D2"};
  const char* strings[] = {"A1-B2", "D1-A2", "B1-C2", "A1-B2", "C1-D2", "B1-C2", "D1-A2", "C1-D2"};
  for (std::size_t i = 0; i < 8; ++i) {
    pegs::ReferencePeg p;
    p.name = pegs[i];
    p.corner = names[i / 2];
    p.string_line = strings[i];
    const double way = i / 2 == 0 || i / 2 == 3 ? -1 : 1;
    p.at = i % 2 == 0 ? grid_point(e[i / 2] + way * 3.1234567890123, n[i / 2])
                      : grid_point(e[i / 2], n[i / 2] + 3);
    p.ground =
        i == 7 ? std::nullopt : std::optional(Elevation::metres(65 + 0.1 * static_cast<double>(i)));
    p.beyond_corner = Length::metres(3.1);
    p.clear_of_crest = Length::metres(1);
    p.geographic =
        pegs::LatLong{Angle::degrees(53.35), Angle::degrees(-6.25 - 1e-5 * static_cast<double>(i))};
    r.reference.push_back(p);
  }
  for (const char* side : {"AB", "BC", "CD", "DA"})
    r.sides.push_back({side, Length::metres(24), Length::metres(24.001)});
  for (const char* diagonal : {"AC", "BD"})
    r.diagonals.push_back({diagonal, Length::metres(25.8), Length::metres(25.801)});
  r.scale.combined = Ratio::of(0.99985);
  r.geographic_way = pegs::GeographicWay{"IRENET95 to WGS 84 (1)", Length::metres(1), "PROJ"};
  for (const std::string& label : hard_labels()) {
    pegs::PipePoint pipe;
    pipe.name = label;
    pipe.side = "AB";
    pipe.at = grid_point(715840, 734697.6);
    pipe.invert = Elevation::metres(63.15);
    pipe.geographic = pegs::LatLong{Angle::degrees(53.35), Angle::degrees(-6.25)};
    r.pipes.push_back(pipe);
  }
  r.crest = {{grid_position(715820, 734707, 65), grid_position(715864, 734707, 65.1),
              grid_position(715864, 734678, 65.2)}};
  return r;
}

}  // namespace squaredig::formats
