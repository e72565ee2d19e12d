// The surface's level lines and its rim, as they are drawn.
#include "geometry/contours.h"

#include <array>
#include <cmath>

#include "ground/findings_internal.h"

namespace squaredig::ground {
namespace {

// Whole multiples of an interval of so many decimetres, above the lowest ground, up to the highest.
std::vector<Elevation> levels_at(double decimetres, const GroundResult& result) {
  std::vector<Elevation> levels;
  // a quotient of whole numbers, so that a level is the double that its figures say
  for (double n = std::floor(10 * result.lowest.in_metres() / decimetres);
       n * decimetres / 10 <= result.highest.in_metres(); ++n)
    if (n * decimetres / 10 > result.lowest.in_metres())
      levels.push_back(Elevation::metres(n * decimetres / 10));
  return levels;
}

constexpr std::array kDecimetres{1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0};

}  // namespace

void add_contours(const BuiltGround& built, GroundResult& result) {
  const auto& surface = built.ground.surface;
  const auto& frame = built.ground.frame;
  for (const auto& ring : geometry::rim_of(surface)) {
    result.rim.emplace_back();
    for (const auto p : ring) result.rim.back().push_back(frame.to_grid(p));
  }
  for (const double decimetres : kDecimetres) {
    const Length interval = Length::metres(decimetres / 10);
    if (interval > result.highest - result.lowest) return;
    const auto levels = levels_at(decimetres, result);
    if (levels.size() > kMostContourLevels) continue;
    std::vector<double> heights;
    heights.reserve(levels.size());
    for (const Elevation level : levels) heights.push_back(frame.to_site(level));
    const auto lines = geometry::level_lines_within(kMostContourStretches, surface, heights);
    if (!lines) continue;
    result.contour_interval = interval;
    for (const auto& line : *lines) {
      Contour contour{levels[line.level], {}, line.closed};
      for (const auto p : line.points) contour.line.push_back(frame.to_grid(p));
      result.contours.push_back(std::move(contour));
    }
    return;
  }
}

}  // namespace squaredig::ground
