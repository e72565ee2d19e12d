// A second, dumber answer to the straightedge: rules thrown at random on seeded surfaces, the best
// of them climbed at random. Prints and fails where it finds more than 0.05 mm beyond the search.
#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <iostream>
#include <random>

#include "base/straightedge_internal.h"

namespace squaredig::base {
namespace {

using geometry::Point2;

constexpr unsigned kSeed = 20260314;

struct Surveyed {
  Floor floor;
  DugSurface dug;
};

// Grids, scattered points, smooth and rough, a convex and a re-entrant floor.
Surveyed surface(unsigned number) {
  std::mt19937 random(kSeed + number);
  std::uniform_real_distribution<double> unit(0, 1);
  std::normal_distribution<double> rough(0, 1);
  Surveyed s;
  s.floor.toe = {{0, 0}, {14, 0}, {14, 8}, {0, 8}};
  if (number % 5 == 4) s.floor.toe = {{0, 0}, {14, 0}, {14, 4}, {6, 4}, {6, 8}, {0, 8}};
  s.floor.footprint = s.floor.toe;
  const int n = 12 + static_cast<int>(80 * unit(random));
  const double wave = 1 + 6 * unit(random), noise = 0.004 * unit(random),
               swell = 0.008 * unit(random);
  const auto add = [&](Point2 p) {
    if (geometry::side_of(s.floor.toe, p, 0.001) < 0) return;
    const double z = swell * std::sin(p.x / wave) * std::cos(p.y / wave) + noise * rough(random);
    s.floor.points.push_back({p, z, 0.001, s.floor.points.size()});
  };
  if (number % 3 == 0) {
    for (int i = 0; i <= 9; ++i)
      for (int j = 0; j <= 5; ++j) add({14.0 * i / 9, 8.0 * j / 5});
  } else {
    for (int i = 0; i < n; ++i) add({14 * unit(random), 8 * unit(random)});
  }
  s.dug = *build_surface(s.floor);
  return s;
}

double random_climb(const Surveyed& s, double length, std::mt19937& random) {
  std::uniform_real_distribution<double> unit(0, 1);
  std::normal_distribution<double> normal(0, 1);
  Profiles profiles(s.dug, s.floor.toe);
  struct Try {
    double width;
    Point2 middle;
    double angle;
  };
  const auto width = [&](Point2 middle, double angle) {
    const auto rule = lay_rule(profiles, middle, {std::cos(angle), std::sin(angle)}, length);
    return rule ? rule->width : 0.0;
  };
  std::vector<Try> tries;
  for (int i = 0; i < 3000; ++i) {
    const Point2 middle{14 * unit(random), 8 * unit(random)};
    const double angle = 3.141592653589793 * unit(random);
    tries.push_back({width(middle, angle), middle, angle});
  }
  std::sort(tries.begin(), tries.end(), [](auto& a, auto& b) { return a.width > b.width; });
  double best = 0;
  for (int k = 0; k < 8; ++k) {
    Try here = tries[static_cast<std::size_t>(k)];
    double step = 0.5;
    for (int i = 0; i < 1000; ++i) {
      const Point2 middle = here.middle + Point2{step * normal(random), step * normal(random)};
      const double angle = here.angle + step * normal(random);
      const double w = width(middle, angle);
      if (w > here.width) {
        here = {w, middle, angle};
      } else {
        step = std::max(step * 0.99, 1e-5);
      }
    }
    best = std::max(best, here.width);
  }
  return best;
}

int run(int count) {
  int beaten = 0;
  double most = 0;
  for (int i = 0; i < count; ++i) {
    const Surveyed s = surface(static_cast<unsigned>(i));
    const double length = i % 2 ? 3.0 : 4.5;
    const auto found = widest_opening(s.dug, s.floor.toe, length);
    std::mt19937 random(kSeed * 7 + static_cast<unsigned>(i));
    const double climbed = random_climb(s, length, random);
    const double beyond = 1000 * (climbed - (found ? found->width : 0));
    most = std::max(most, beyond);
    if (beyond <= 0.05) continue;
    ++beaten;
    std::cout << "seed " << kSeed << ", surface " << i << ": search "
              << 1000 * (found ? found->width : 0) << " mm, climb " << 1000 * climbed << " mm\n";
  }
  std::cout << count << " surfaces, beaten on " << beaten << ", at most by " << most << " mm\n";
  return beaten == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}

}  // namespace
}  // namespace squaredig::base

int main(int argc, char** argv) {
  return squaredig::base::run(argc > 1 ? std::stoi(argv[1]) : 200);
}
