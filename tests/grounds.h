// Grounds and pits that tests dig in: a survey made from a height function, and a rectangular tank.
#pragma once

#include <functional>
#include <random>

#include "design/excavation.h"
#include "geometry/surface.h"
#include "ground/survey.h"

namespace squaredig::testing {

using Height = std::function<double(double, double)>;

// A regular grid of triangles over a square round the origin, diagonals alternating.
inline geometry::Surface grid_surface(double half, double step, const Height& height) {
  geometry::Surface s;
  const int n = static_cast<int>(std::lround(2 * half / step)) + 1;
  for (int r = 0; r < n; ++r)
    for (int c = 0; c < n; ++c) {
      const double x = -half + c * step, y = -half + r * step;
      s.vertices.push_back({x, y, height(x, y)});
    }
  for (int r = 0; r + 1 < n; ++r)
    for (int c = 0; c + 1 < n; ++c) {
      const int a = r * n + c, b = a + 1, d = a + n, e = d + 1;
      if ((r + c) % 2 == 0) {
        s.triangles.push_back({a, b, e});
        s.triangles.push_back({a, e, d});
      } else {
        s.triangles.push_back({a, b, d});
        s.triangles.push_back({b, e, d});
      }
    }
  geometry::link_neighbours(s);
  return s;
}

class MadeSurvey : public ground::Survey {
 public:
  // The surface is given in the frame whose origin is `origin` rounded to whole metres.
  explicit MadeSurvey(geometry::Surface surface, GridPosition origin = grid_position(0, 0, 0)) {
    ground_.frame = geometry::SiteFrame::around(origin);
    ground_.surface = std::move(surface);
    ground_.source.assign(ground_.surface.vertices.size(), geometry::kNone);
    ground_.sigma_height.assign(ground_.surface.vertices.size(), Length::millimetres(15));
  }
  const geometry::SiteFrame& frame() const override { return ground_.frame; }
  const ground::GroundSurface& surface_for(const ground::Region&) override { return ground_; }
  ground::GroundSurface& ground() { return ground_; }

 private:
  ground::GroundSurface ground_;
};

// A rectangular tank whose toe is `length` by `width`, dig level 0 at the first toe corner, toe
// centred on `centre`, side A-B along the bearing. No gap, no bedding to speak of: the toe is the
// tank.
inline design::DesignInput plain_pit(double length, double width, double dig_level, Batter batter,
                                     GridPoint centre = grid_point(0, 0),
                                     Bearing ab = Bearing::degrees(90)) {
  design::DesignInput input;
  input.tank.length = Length::metres(length);
  input.tank.width = Length::metres(width);
  input.tank.height = Length::metres(1);
  input.tank.corner_a =
      ahead(ahead(centre, ab, Length::metres(-length / 2)), ab, {}, Length::metres(-width / 2));
  input.tank.bearing_ab = ab;
  input.tank.underside_level = Elevation::metres(dig_level);
  input.pit.gap.all = Length{};
  input.pit.batter.all = batter;
  return input;
}

// Smooth rough ground without ties: a sum of waves with seeded phases.
inline Height rough_ground(unsigned seed, double level, double amplitude) {
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> phase(0, 6.28), wave(5, 25);
  std::vector<std::array<double, 4>> waves;
  for (int i = 0; i < 5; ++i)
    waves.push_back({1 / wave(random), 1 / wave(random), phase(random), amplitude / (i + 1)});
  return [=](double x, double y) {
    double z = level;
    for (const auto& w : waves) z += w[3] * std::sin(6.28 * (w[0] * x + w[1] * y) + w[2]);
    return z;
  };
}

}  // namespace squaredig::testing
