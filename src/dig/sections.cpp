#include <algorithm>
#include <cmath>
#include <tuple>

#include "dig/dig_internal.h"

namespace squaredig::dig {
namespace {

using geometry::Point2;

// A straight line through the pit: distances count from `zero` along `unit`.
struct SectionLine {
  Point2 zero;
  Point2 unit;
  Point2 at(double distance) const { return zero + distance * unit; }
};

// Where the line crosses the edges of a convex outline: two distances, or none.
std::optional<std::pair<double, double>> crossings(const SectionLine& line,
                                                   std::span<const Point2> outline) {
  std::vector<double> found;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Point2 p = outline[i], q = outline[(i + 1) % outline.size()];
    const double side_p = cross(line.unit, p - line.zero), side_q = cross(line.unit, q - line.zero);
    if ((side_p > 0) == (side_q > 0)) continue;
    const Point2 x = p + (side_p / (side_p - side_q)) * (q - p);
    found.push_back(dot(x - line.zero, line.unit));
  }
  if (found.size() != 2) return std::nullopt;
  return std::minmax(found[0], found[1]);
}

SectionPoint dug_point(const Work& work, const SectionLine& line, const Depth& depth,
                       double distance) {
  const Point2 p = line.at(distance);
  return {Length::metres(distance), work.pit.frame.to_grid_height(depth.top.at(p)),
          work.pit.frame.to_grid_height(depth.bottom.at(p))};
}

// Both ends of every piece the line crosses, in order: exact at every break of ground and pit.
std::vector<SectionPoint> dug_points(const Work& work, const SectionLine& line) {
  struct Stretch {
    double from, to;
    Depth depth;
  };
  std::vector<Stretch> stretches;
  for (const auto& piece : work.pit.dug.pieces)
    if (const auto ends = crossings(line, work.pit.dug.outline(piece)))
      if (ends->second - ends->first > 1e-6)
        stretches.push_back({ends->first, ends->second, depth_over(work, piece)});
  std::sort(stretches.begin(), stretches.end(),
            [](const Stretch& a, const Stretch& b) { return a.from < b.from; });
  std::vector<SectionPoint> points;
  for (const auto& s : stretches) {
    points.push_back(dug_point(work, line, s.depth, s.from));
    points.push_back(dug_point(work, line, s.depth, s.to));
  }
  return points;
}

// The ground beyond the crest, a step at a time.
void add_ground(const Work& work, const SectionLine& line, double from, double to,
                std::vector<SectionPoint>& points) {
  constexpr double kStep = 0.5;
  const int steps = std::max(1, static_cast<int>(std::ceil((to - from) / kStep)));
  for (int i = 0; i <= steps; ++i) {
    const double distance = from + (to - from) * i / steps;
    if (const auto z = work.locator.height_at(line.at(distance)))
      points.push_back({Length::metres(distance), work.pit.frame.to_grid_height(*z), std::nullopt});
  }
}

Section section_along(const Work& work, const SectionLine& line) {
  constexpr double kBeyond = 3;
  Section section;
  const auto dug = dug_points(work, line);
  if (dug.empty()) return section;
  const double first = dug.front().distance.in_metres(), last = dug.back().distance.in_metres();
  add_ground(work, line, first - kBeyond, first, section.points);
  section.points.insert(section.points.end(), dug.begin(), dug.end());
  add_ground(work, line, last, last + kBeyond, section.points);
  return section;
}

// The tank's extent along a line through its middle, and its underside at both ends.
void add_tank(const Work& work, const SectionLine& line, Section& section) {
  std::vector<Point2> outline;
  for (const GridPoint p : work.pit.tank.corners) outline.push_back(work.pit.frame.to_site(p));
  const auto ends = crossings(line, outline);
  if (!ends) return;
  const auto underside = [&](double d) {
    return work.pit.tank.underside.at(work.pit.frame.to_grid(line.at(d)));
  };
  section.tank_from = Length::metres(ends->first);
  section.tank_to = Length::metres(ends->second);
  section.underside_from = underside(ends->first);
  section.underside_to = underside(ends->second);
}

}  // namespace

std::vector<Section> sections_of(const Work& work) {
  const auto& tank = work.pit.tank;
  Length along, across;
  for (const GridPoint p : tank.corners) {
    along += tank.along_ab(p) / static_cast<double>(tank.sides());
    across += tank.across_ab(p) / static_cast<double>(tank.sides());
  }
  const auto site = [&](GridPoint p) { return work.pit.frame.to_site(p); };
  const Point2 u{sine(tank.ab.from_north()), cosine(tank.ab.from_north())};
  const SectionLine lengthwise{site(tank.from_a({}, across)), u};
  const SectionLine crosswise{site(tank.from_a(along, {})), {u.y, -u.x}};
  std::vector<Section> sections;
  for (const auto& [line, name, words] :
       {std::tuple{lengthwise, "long section", "along A-B from A"},
        std::tuple{crosswise, "cross section", "across from A-B, into the tank"}}) {
    sections.push_back(section_along(work, line));
    sections.back().name = name;
    sections.back().along = words;
    add_tank(work, line, sections.back());
  }
  return sections;
}

}  // namespace squaredig::dig
