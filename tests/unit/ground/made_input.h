// Ground inputs made for the tests of this room.
#pragma once

#include <functional>
#include <random>

#include "ground/examine.h"

namespace squaredig::ground::testing {

inline geometry::SiteFrame frame() {
  return geometry::SiteFrame::around(grid_position(715830, 734700, 60));
}

// Adds a point near the frame's origin, named P1, P2, ... as they come, one per line from line 2.
inline void add_point(GroundInput& input, double x, double y, double z) {
  if (input.points.files.empty()) input.points.add_file("ground.csv");
  SurveyPoint p;
  p.at = grid_position(715830 + x, 734700 + y, z);
  p.line = static_cast<std::uint32_t>(input.points.size() + 2);
  input.points.add(p, "P" + std::to_string(input.points.size() + 1), "GL");
}

using Height = std::function<double(double, double)>;

// A grid of points over a height function, columns first.
inline GroundInput grid_input(int columns, int rows, double step, const Height& height) {
  GroundInput input;
  for (int r = 0; r < rows; ++r)
    for (int c = 0; c < columns; ++c)
      add_point(input, c * step, r * step, height(c * step, r * step));
  return input;
}

inline SurveyString string_of(const std::string& name,
                              const std::vector<std::array<double, 3>>& vertices,
                              const std::string& file = "breaklines.csv") {
  SurveyString s{name, file, {}};
  for (const auto& v : vertices)
    s.vertices.push_back({grid_position(715830 + v[0], 734700 + v[1], v[2]), true,
                          static_cast<int>(s.vertices.size() + 2)});
  return s;
}

inline std::vector<std::string> codes_of(const GroundResult& result) {
  std::vector<std::string> codes;
  for (const Finding& f : result.head.findings) codes.push_back(f.code);
  return codes;
}

inline GroundResult examined(const GroundInput& input) {
  return examine(input, build_ground(input, frame()));
}

// Rolling ground: smooth, with a curvature that a coarse rule would take for spikes.
inline double rolling(double x, double y) {
  return 62 + 1.5 * std::sin(x / 9) + 1.2 * std::cos(y / 7) + 0.02 * x;
}

}  // namespace squaredig::ground::testing
