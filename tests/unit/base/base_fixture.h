// A base to judge: a tank, its toe, and points given by their place in the tank and their
// deviation.
#pragma once

#include <string>
#include <vector>

#include "base/check_base.h"

namespace squaredig::base::testing {

struct BaseFixture {
  double length = 24, width = 9.6;
  GridPoint corner_a = grid_point(715830.250, 734697.600);
  double bearing = 37.5;
  double underside = 62.350;
  double fall_percent = 0.5, fall_bearing = 127.5;
  double gap = 0.2;
  double height = 1.32;
  double module_along = 1.2, module_into = 0.6;  // zero: not given
  double thickness_mm = 20, least_mm = 15, most_mm = 30;
  BaseInput input;

  BaseFixture() {
    input.codes = {"BASE"};
    input.toe_codes = {"TOE"};
    input.sigma_height = Length::millimetres(2);
    input.sigma_plan = Length::millimetres(0);
    input.sigma_common = Length::millimetres(2);
    input.confidence = Ratio::of(0.95);
    input.place = {"job.toml", 60, 1};
  }

  PlannedBase planned() const {
    PlannedBase p;
    design::Tank& tank = p.tank;
    tank.ab = Bearing::degrees(bearing);
    tank.corners = {corner_a};
    const auto at = [&](double along, double across) {
      return ahead(corner_a, tank.ab, Length::metres(along), Length::metres(across));
    };
    tank.corners = {at(0, 0), at(length, 0), at(length, width), at(0, width)};
    tank.underside = {corner_a, Elevation::metres(underside), Fall::percent(fall_percent),
                      Bearing::degrees(fall_bearing)};
    tank.dig_level = tank.underside.lowered(Length::millimetres(thickness_mm));
    p.toe = {at(-gap, -gap), at(length + gap, -gap), at(length + gap, width + gap),
             at(-gap, width + gap)};
    tank.height = Length::metres(height);
    if (module_along > 0)
      p.module = std::pair(Length::metres(module_along), Length::metres(module_into));
    p.thickness = Length::millimetres(thickness_mm);
    p.least = Length::millimetres(least_mm);
    p.most = Length::millimetres(most_mm);
    p.gap.assign(4, Length::metres(gap));
    return p;
  }

  // A base point at (along, across) in the tank, so much above the dig level.
  void add(double along, double across, double deviation_mm, std::string label = {}) {
    const design::Tank tank = planned().tank;
    const GridPoint at = tank.from_a(Length::metres(along), Length::metres(across));
    SurveyPoint p;
    p.at = {at, tank.dig_level.at(at) + Length::millimetres(deviation_mm)};
    p.line = static_cast<std::uint32_t>(input.points.size() + 2);
    if (input.points.files.empty()) input.points.add_file("as-dug.csv");
    if (label.empty()) label = "F" + std::to_string(input.points.size() + 1);
    input.points.add(p, label, "BASE");
  }

  // A grid of points from toe to toe, no wider than `spacing`; deviation(along, across) in mm.
  template <class Deviation>
  void add_grid(double spacing, const Deviation& deviation) {
    const auto steps = [&](double l) { return static_cast<int>((l + 2 * gap) / spacing + 0.999); };
    const int columns = steps(length), rows = steps(width);
    for (int r = 0; r <= rows; ++r)
      for (int c = 0; c <= columns; ++c) {
        const double along = -gap + (length + 2 * gap) * c / columns;
        const double across = -gap + (width + 2 * gap) * r / rows;
        add(along, across, deviation(along, across));
      }
  }

  void ask_for_all() {
    input.level_tolerance = Tolerance{Length::millimetres(5), Length::millimetres(10)};
    input.mean_tolerance = Length::millimetres(5);
    input.flatness_tolerance = Length::millimetres(10);
    input.fall_tolerance = Fall::percent(0.1);
    input.spacing = Length::metres(1.5);
  }

  BaseResult check() const { return check_base(input, planned()); }
};

inline const Check& named(const BaseResult& result, const std::string& name) {
  for (const Check& c : result.checks)
    if (c.name == name) return c;
  throw std::out_of_range("no check is named " + name);
}
inline double mm(const std::optional<Amount>& a) {
  return std::get<Length>(a.value()).in_millimetres();
}
inline double percent(const std::optional<Amount>& a) {
  return std::get<Fall>(a.value()).in_percent();
}

}  // namespace squaredig::base::testing
