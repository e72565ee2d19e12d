#include <algorithm>
#include <cmath>

#include "fill/untested_internal.h"

namespace squaredig::fill {
namespace {

using geometry::Circle;
using geometry::Point2;

// Along a segment the square of the distance to a test is t^2 and a line in t.
struct Line {
  double slope, height;
  double at(double t) const { return slope * t + height; }
};

}  // namespace

// The nearest test changes only where two lines cross; between, the distance is greatest at an end.
Circle furthest_on_segment(Point2 a, Point2 b, std::span<const Point2> tests) {
  const double length = std::hypot(b.x - a.x, b.y - a.y);
  const Point2 along{(b.x - a.x) / length, (b.y - a.y) / length};
  std::vector<Line> lines;
  for (const auto& p : tests) {
    const double dx = p.x - a.x, dy = p.y - a.y;
    lines.push_back({-2 * (dx * along.x + dy * along.y), dx * dx + dy * dy});
  }
  Circle furthest{a, -1};
  const auto take = [&](double t) {
    double least = lines[0].at(t);
    for (const auto& line : lines) least = std::min(least, line.at(t));
    const double distance = std::sqrt(std::max(0.0, t * t + least));
    if (distance > furthest.radius) furthest = {{a.x + along.x * t, a.y + along.y * t}, distance};
  };
  take(0);
  take(length);
  double t = 0;
  auto lowest = *std::min_element(lines.begin(), lines.end(), [](const Line& p, const Line& q) {
    return p.height != q.height ? p.height < q.height : p.slope < q.slope;
  });
  while (true) {
    double next = length;
    Line then = lowest;
    for (const auto& line : lines) {
      if (line.slope >= lowest.slope) continue;
      const double cross = (line.height - lowest.height) / (lowest.slope - line.slope);
      if (cross < next || (cross == next && line.slope < then.slope)) next = cross, then = line;
    }
    if (next >= length || then.slope == lowest.slope) break;
    t = std::max(t, next);
    take(t);
    lowest = then;
  }
  return furthest;
}

Circle largest_untested(const design::Excavation& pit, const std::vector<Point2>& tests) {
  geometry::Polygon tank;
  for (std::size_t i = pit.tank.sides(); i-- > 0;)
    tank.push_back(pit.frame.to_site(pit.tank.corners[i]));
  const bool beside = std::all_of(tests.begin(), tests.end(),
                                  [&](Point2 p) { return geometry::side_of(tank, p, 1e-9) <= 0; });
  if (!beside) return geometry::largest_empty_circle(tank, tests);
  Circle largest{tank[0], -1};
  for (std::size_t i = 0; i < tank.size(); ++i) {
    const Circle on = furthest_on_segment(tank[i], tank[(i + 1) % tank.size()], tests);
    if (on.radius > largest.radius) largest = on;
  }
  return largest;
}

}  // namespace squaredig::fill
