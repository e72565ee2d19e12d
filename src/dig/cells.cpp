#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <utility>

#include "dig/dig_internal.h"
#include "geometry/sum.h"

namespace squaredig::dig {
namespace {

using geometry::LabelledPolygon;
using geometry::Point2;

struct Holding {
  geometry::Sum volume, area;
  std::map<geometry::Index, double> by_part;
};

// The tank's own frame: u along A-B from A, v across into the tank.
struct TankFrame {
  Point2 a, along, across;
  explicit TankFrame(const design::Excavation& pit)
      : a(pit.frame.to_site(pit.tank.corners[0])),
        along{sine(pit.tank.ab.from_north()), cosine(pit.tank.ab.from_north())},
        across{along.y, -along.x} {}
  Point2 to(Point2 p) const { return {dot(p - a, along), dot(p - a, across)}; }
  Point2 from(Point2 q) const { return a + q.x * along + q.y * across; }
};

class CellSums {
 public:
  CellSums(const Work& work, double size) : work_(work), frame_(work.pit), size_(size) {}

  void add(const geometry::Piece& piece) {
    const Depth depth = depth_over(work_, piece);
    LabelledPolygon polygon;
    for (const Point2 p : work_.pit.dug.outline(piece)) polygon.corners.push_back(frame_.to(p));
    // the tank frame is a mirror image: turn the polygon anticlockwise again
    std::reverse(polygon.corners.begin(), polygon.corners.end());
    polygon.labels.assign(polygon.corners.size(), 0);
    const auto facet = work_.pit.dug.facets[static_cast<std::size_t>(piece.facet)];
    part_ = work_.pit.pit.cuts[static_cast<std::size_t>(facet.cut)].part;
    split(std::move(polygon), depth, Axis::Along);
  }

  const std::map<std::pair<int, int>, Holding>& cells() const { return cells_; }

 private:
  enum class Axis { Along, Across };

  int index(double value) const { return static_cast<int>(std::floor(value / size_)); }

  // Cuts the polygon at the grid lines of one axis, each strip then at those of the other.
  void split(LabelledPolygon rest, const Depth& depth, Axis axis) {
    const auto value = [&](Point2 p) { return axis == Axis::Along ? p.x : p.y; };
    double low = std::numeric_limits<double>::infinity(), high = -low;
    for (const Point2 p : rest.corners)
      low = std::min(low, value(p)), high = std::max(high, value(p));
    const int last = index(high);
    for (int i = index(low); i <= last && !rest.empty(); ++i) {
      LabelledPolygon strip = rest;
      if (i < last) {
        std::vector<double> before, after;
        for (const Point2 p : rest.corners) {
          after.push_back(value(p) - (i + 1) * size_);
          before.push_back(-after.back());
        }
        strip = part_above(rest, before, 0);
        rest = part_above(rest, after, 0);
      }
      if (strip.empty()) continue;
      if (axis == Axis::Along)
        column_ = i, split(std::move(strip), depth, Axis::Across);
      else
        hold({column_, i}, strip, depth);
    }
  }

  void hold(std::pair<int, int> key, const LabelledPolygon& polygon, const Depth& depth) {
    std::vector<double> depths;
    for (const Point2 q : polygon.corners) depths.push_back(depth.at(frame_.from(q)));
    const double volume = geometry::integral_over(polygon.corners, depths);
    auto& holding = cells_[key];
    holding.volume.add(volume);
    holding.area.add(geometry::area_of(polygon.corners));
    holding.by_part[part_] += volume;
  }

  const Work& work_;
  TankFrame frame_;
  double size_;
  int column_ = 0;
  geometry::Index part_ = 0;
  std::map<std::pair<int, int>, Holding> cells_;
};

std::string part_at(const Work& work, Point2 p, const Holding& holding, bool dug) {
  geometry::Index part = 0;
  if (dug) {
    double lowest = std::numeric_limits<double>::infinity();
    for (const auto& cut : work.pit.pit.cuts)
      if (geometry::in_domain(cut, p) && geometry::height_of(cut, p) < lowest)
        lowest = geometry::height_of(cut, p), part = cut.part;
  } else {
    double most = -1;
    for (const auto& [number, volume] : holding.by_part)
      if (volume > most) most = volume, part = number;
  }
  return design::name_of(static_cast<design::Part>(part));
}

Cell cell_of(const Work& work, std::pair<int, int> key, const Holding& holding, double size,
             const std::optional<design::Laser>& laser) {
  Cell cell;
  cell.column = key.first;
  cell.row = key.second;
  cell.along = Length::metres((key.first + 0.5) * size);
  cell.across = Length::metres((key.second + 0.5) * size);
  cell.centre = work.pit.tank.from_a(cell.along, cell.across);
  const Point2 p = work.pit.frame.to_site(cell.centre);
  const auto top = work.locator.height_at(p);
  if (top) cell.ground = work.pit.frame.to_grid_height(*top);
  const bool dug = work.dug.dug_at(cell.centre);
  if (dug) cell.dig_level = work.pit.surface_at(cell.centre);
  if (cell.ground && cell.dig_level) cell.cut_at_centre = *cell.ground - *cell.dig_level;
  cell.cut = BankVolume::cubic_metres(holding.volume.value());
  cell.area = Area::square_metres(holding.area.value());
  cell.mean_cut = Length::metres(cell.cut.in_cubic_metres() / cell.area.in_square_metres());
  cell.part = part_at(work, p, holding, dug);
  if (laser && cell.dig_level)
    cell.staff_reading = laser->staff_reading({cell.centre, *cell.dig_level});
  return cell;
}

}  // namespace

CellGrid cells_of(const Work& work, const std::optional<design::Laser>& laser) {
  const double size = work.input.cell.in_metres();
  CellSums sums(work, size);
  for (const auto& piece : work.pit.dug.pieces) sums.add(piece);
  CellGrid grid;
  grid.size = work.input.cell;
  grid.bearing = work.pit.tank.ab;
  int last_column = 0, last_row = 0;
  bool first = true;
  for (const auto& [key, holding] : sums.cells()) {
    // a sliver of rounding at a grid line is no cell of its own
    if (holding.area.value() <= 0) continue;
    grid.cells.push_back(cell_of(work, key, holding, size, laser));
    if (std::exchange(first, false)) {
      grid.first_column = last_column = key.first;
      grid.first_row = last_row = key.second;
    }
    grid.first_column = std::min(grid.first_column, key.first);
    grid.first_row = std::min(grid.first_row, key.second);
    last_column = std::max(last_column, key.first);
    last_row = std::max(last_row, key.second);
  }
  if (!grid.cells.empty()) {
    grid.columns = last_column - grid.first_column + 1;
    grid.rows = last_row - grid.first_row + 1;
  }
  grid.origin = work.pit.tank.from_a(Length::metres(grid.first_column * size),
                                     Length::metres(grid.first_row * size));
  std::sort(grid.cells.begin(), grid.cells.end(), [](const Cell& a, const Cell& b) {
    return std::pair(a.row, a.column) < std::pair(b.row, b.column);
  });
  return grid;
}

}  // namespace squaredig::dig
