// Random footprints on random rough ground, each made from its seed alone.
#pragma once

#include <algorithm>

#include "grounds.h"

namespace squaredig::testing {

// Jittered points in a square of half width 24 round the origin, heights uniform about `level`.
inline geometry::Surface jittered_ground(std::mt19937& random, double level, double rough) {
  std::uniform_real_distribution<double> shift(-1.2, 1.2), height(-rough, rough);
  auto surface = grid_surface(24, 4, [&](double, double) { return level + height(random); });
  for (auto& v : surface.vertices)
    if (std::abs(v.x) < 23 && std::abs(v.y) < 23) v.x += shift(random), v.y += shift(random);
  return surface;
}

// Clockwise seen from above, as outlines of a tank are given; corners on a circle are convex.
inline std::vector<GridPoint> convex_outline(std::mt19937& random) {
  std::uniform_int_distribution<int> count(3, 7);
  std::uniform_real_distribution<double> radius(3, 7), turn(0.25, 1), start(0, 6.28);
  std::vector<double> angles;
  double whole = 0;
  for (int i = count(random); i > 0; --i) angles.push_back(whole += turn(random));
  const double r = radius(random), flat = 0.5 + 0.5 * turn(random), first = start(random);
  std::vector<GridPoint> outline;
  for (const double a : angles) {
    const double t = first - 6.283185307179586 * a / whole;
    outline.push_back(grid_point(r * std::cos(t), flat * r * std::sin(t)));
  }
  return outline;
}

// Rays at growing angles, lengths at will: seldom convex.
inline std::vector<GridPoint> star_outline(std::mt19937& random) {
  std::uniform_int_distribution<int> count(5, 9);
  std::uniform_real_distribution<double> radius(2.5, 7.5), turn(0.5, 1), start(0, 6.28);
  std::vector<double> angles;
  double whole = 0;
  for (int i = count(random); i > 0; --i) angles.push_back(whole += turn(random));
  const double first = start(random);
  std::vector<GridPoint> outline;
  for (const double a : angles) {
    const double t = first - 6.283185307179586 * a / whole, r = radius(random);
    outline.push_back(grid_point(r * std::cos(t), r * std::sin(t)));
  }
  return outline;
}

// L, T or U: steps along two square axes, turned at will.
inline std::vector<GridPoint> stepped_outline(std::mt19937& random) {
  std::uniform_real_distribution<double> step(1.5, 4), start(0, 6.28);
  std::uniform_int_distribution<int> kind(0, 2);
  const double a = step(random), b = step(random), c = step(random), d = step(random),
               e = step(random);
  std::vector<std::pair<double, double>> corners;
  switch (kind(random)) {
    case 0:
      corners = {{0, 0}, {0, a + b}, {c, a + b}, {c, a}, {c + d, a}, {c + d, 0}};
      break;
    case 1:
      corners = {{0, a}, {0, a + b}, {c + d + e, a + b}, {c + d + e, a}, {c + d, a}, {c + d, 0},
                 {c, 0}, {c, a}};
      break;
    default:
      corners = {{0, 0},
                 {0, a + b},
                 {c, a + b},
                 {c, a},
                 {c + d, a},
                 {c + d, a + 0.7 * b},
                 {c + d + e, a + 0.7 * b},
                 {c + d + e, 0}};
  }
  const double t = start(random), x = (c + d) / 2, y = (a + b) / 2;
  std::vector<GridPoint> outline;
  for (const auto& [u, v] : corners)
    outline.push_back(grid_point((u - x) * std::cos(t) - (v - y) * std::sin(t),
                                 (u - x) * std::sin(t) + (v - y) * std::cos(t)));
  return outline;
}

struct RandomPit {
  design::DesignInput design;
  geometry::Surface ground;
};

inline RandomPit random_pit(unsigned seed) {
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> unit(0, 1);
  RandomPit pit{plain_pit(1, 1, 0, Batter::run_per_rise(1)), {}};
  pit.design.tank.corner_a.reset();
  switch (seed % 3) {
    case 0:
      pit.design.tank.outline = convex_outline(random);
      break;
    case 1:
      pit.design.tank.outline = star_outline(random);
      break;
    default:
      pit.design.tank.outline = stepped_outline(random);
  }
  pit.design.tank.fall = Fall::percent(3 * unit(random));
  pit.design.tank.fall_bearing = Bearing::degrees(360 * unit(random));
  pit.design.pit.gap.all = Length::metres(seed % 5 == 0 ? 0.3 * unit(random) : 0);
  pit.design.pit.batter.all = Batter::run_per_rise(0.3 + unit(random));
  for (std::size_t i = 0; i < pit.design.tank.outline.size(); ++i) {
    const std::string name = design::Tank::corner_name(i) +
                             design::Tank::corner_name((i + 1) % pit.design.tank.outline.size());
    if (const double kind = unit(random); kind < 0.2)
      pit.design.pit.batter.by_side.emplace_back(name, Batter{});
    else if (kind < 0.4)
      pit.design.pit.batter.by_side.emplace_back(name, Batter::run_per_rise(0.2 + unit(random)));
  }
  if (seed % 4 == 0) pit.design.pit.corners = design::Corners::Round;
  if (seed % 7 == 0)
    pit.design.pit.benches = {{Length::metres(0.8), Length::metres(0.6), std::nullopt, {}}};
  pit.ground = jittered_ground(random, 0.5 + 2 * unit(random), 0.2 + 0.9 * unit(random));
  return pit;
}

}  // namespace squaredig::testing
