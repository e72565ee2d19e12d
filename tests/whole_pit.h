// One pit with every part a pit can have.
#pragma once

#include "grounds.h"

namespace squaredig::testing {

inline design::DesignInput whole_pit() {
  const auto ab = Bearing::degrees(37.5);
  auto input = plain_pit(18, 8, 0, Batter::run_per_rise(1), grid_point(0.3, -0.7), ab);
  input.tank.fall = Fall::percent(0.5);
  input.tank.fall_bearing = ab + Angle::degrees(90);
  input.pit.gap.all = Length::metres(0.2);
  input.pit.batter = {
      Batter::run_per_rise(1), {{"BC", Batter{}}, {"DA", Batter::run_per_rise(1.5)}}, {}};
  input.pit.benches = {{Length::metres(1.5), Length::metres(0.9), std::nullopt, {}}};
  input.pit.ramps = {{"CD",
                      Length::metres(6),
                      Length::metres(4),
                      Batter::run_per_rise(5),
                      Batter::run_per_rise(1),
                      {}}};
  const auto a = std::get<GridPoint>(*input.tank.corner_a);
  const auto at = [&](double along, double across) {
    return ahead(a, ab, Length::metres(along), Length::metres(across));
  };
  input.pit.sumps = {{{at(15, 1), at(16.5, 1), at(16.5, 2.2), at(15, 2.2)},
                      Elevation::metres(-0.8),
                      Batter{},
                      {}}};
  const auto invert = [&](double along, double across, double level) {
    return GridPosition{at(along, across), Elevation::metres(level)};
  };
  input.pit.trenches = {{{invert(4, 1, 0.3), invert(4, -8, 0.45), invert(1, -16, 0.6)},
                         Length::metres(0.9),
                         Length::millimetres(10),
                         Length::millimetres(100),
                         Batter::run_per_rise(0.25),
                         {}}};
  return input;
}

}  // namespace squaredig::testing
