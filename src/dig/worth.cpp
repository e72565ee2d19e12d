// What other methods would make of the volume.
#include <algorithm>
#include <cmath>
#include <limits>

#include "dig/dig_internal.h"
#include "dig/quoted.h"
#include "geometry/sum.h"

namespace squaredig::dig {
namespace {

using geometry::Point2;

// The section's area at one distance along A-B: exact over every piece the line crosses.
double section_area(const Work& work, Point2 a, Point2 along, double station) {
  geometry::Sum area;
  for (const auto& piece : work.pit.dug.pieces) {
    const auto outline = work.pit.dug.outline(piece);
    std::vector<Point2> ends;
    for (std::size_t i = 0; i < outline.size(); ++i) {
      const Point2 p = outline[i], q = outline[(i + 1) % outline.size()];
      const double at_p = dot(p - a, along) - station, at_q = dot(q - a, along) - station;
      if ((at_p > 0) != (at_q > 0)) ends.push_back(p + (at_p / (at_p - at_q)) * (q - p));
    }
    if (ends.size() != 2) continue;
    const Depth depth = depth_over(work, piece);
    const Point2 d = ends[1] - ends[0];
    area.add(std::hypot(d.x, d.y) * (depth.at(ends[0]) + depth.at(ends[1])) / 2);
  }
  return area.value();
}

double depth_at(const Work& work, GridPoint p) {
  if (!work.dug.dug_at(p)) return 0;
  const auto top = work.locator.height_at(work.pit.frame.to_site(p));
  const auto floor = work.pit.surface_at(p);
  return top && floor ? *top - work.pit.frame.to_site(*floor) : 0;
}

Volume by_grid_corners(const Work& work, const CellGrid& grid) {
  const int columns = grid.columns + 1;
  std::vector<Length> depths;
  for (int row = 0; row <= grid.rows; ++row)
    for (int column = 0; column < columns; ++column)
      depths.push_back(Length::metres(
          depth_at(work, work.pit.tank.from_a(grid.size * (grid.first_column + column),
                                              grid.size * (grid.first_row + row)))));
  const auto width = static_cast<std::size_t>(columns);
  std::vector<std::array<Length, 4>> cells;
  for (int row = 0; row < grid.rows; ++row)
    for (int column = 0; column < grid.columns; ++column) {
      const std::size_t i =
          static_cast<std::size_t>(row) * width + static_cast<std::size_t>(column);
      const std::size_t below = i + width;
      cells.push_back({depths[i], depths[i + 1], depths[below], depths[below + 1]});
    }
  return corner_grid_volume(cells, grid.size * grid.size);
}

}  // namespace

Comparison compare(const Work& work, const CellGrid& grid) {
  const Point2 a = work.pit.frame.to_site(work.pit.tank.corners[0]);
  const Point2 along{sine(work.pit.tank.ab.from_north()), cosine(work.pit.tank.ab.from_north())};
  double low = std::numeric_limits<double>::infinity(), high = -low;
  for (const auto& ring : work.pit.dug.rings)
    for (const auto& p : ring.corners) {
      low = std::min(low, dot(p.plan() - a, along));
      high = std::max(high, dot(p.plan() - a, along));
    }
  Comparison comparison;
  if (high <= low) return comparison;
  const int steps = std::max(1, static_cast<int>(std::ceil((high - low) / grid.size.in_metres())));
  const double spacing = (high - low) / steps;
  std::vector<Area> sections;
  for (int i = 0; i <= steps; ++i) {
    // the end sections are taken a hair inside, where a vertical face still counts
    const double hair = i == 0 ? 1e-9 : i == steps ? -1e-9 : 0;
    sections.push_back(Area::square_metres(section_area(work, a, along, low + i * spacing + hair)));
  }
  comparison.end_area_spacing = Length::metres(spacing);
  comparison.end_area = BankVolume::filling(end_area_volume(sections, comparison.end_area_spacing));
  comparison.prismoidal =
      BankVolume::filling(prismoidal_volume(sections, comparison.end_area_spacing));
  comparison.grid = BankVolume::filling(by_grid_corners(work, grid));
  comparison.grid_spacing = grid.size;
  return comparison;
}

}  // namespace squaredig::dig
