// cut.tif's grid: the cells of the sheet, or squares of the same size that lie north up.
#include <algorithm>
#include <cmath>
#include <limits>

#include "dig/dig_internal.h"

namespace squaredig::dig {
namespace {

CutRaster along_the_tank(const CellGrid& grid) {
  CutRaster raster{grid.size, grid.columns, grid.rows, grid.origin, grid.bearing, {}};
  const auto columns = static_cast<std::size_t>(grid.columns);
  raster.cut.resize(columns * static_cast<std::size_t>(grid.rows));
  for (const auto& cell : grid.cells) {
    const auto column = static_cast<std::size_t>(cell.column - grid.first_column);
    const auto row = static_cast<std::size_t>(cell.row - grid.first_row);
    raster.cut[row * columns + column] = cell.cut_at_centre;
  }
  return raster;
}

std::optional<Length> cut_at(const Work& work, GridPoint p) {
  if (!work.dug.dug_at(p)) return std::nullopt;
  const auto top = work.locator.height_at(work.pit.frame.to_site(p));
  const auto floor = work.pit.surface_at(p);
  if (!top || !floor) return std::nullopt;
  return work.pit.frame.to_grid_height(*top) - *floor;
}

// Edges on whole multiples of the size, so that rasters of several pits on one site fit together.
CutRaster north_up(const Work& work, Length size) {
  const double cell = size.in_metres();
  double west = std::numeric_limits<double>::infinity(), south = west, east = -west, north = -west;
  for (const auto& ring : work.pit.crest)
    for (const auto& p : ring.corners) {
      west = std::min(west, p.at.easting.in_metres());
      east = std::max(east, p.at.easting.in_metres());
      south = std::min(south, p.at.northing.in_metres());
      north = std::max(north, p.at.northing.in_metres());
    }
  CutRaster raster;
  raster.size = size;
  raster.bearing = Bearing::degrees(90);
  if (!(west < east)) return raster;
  const double left = std::floor(west / cell), top = std::ceil(north / cell);
  raster.columns = static_cast<int>(std::ceil(east / cell) - left);
  raster.rows = static_cast<int>(top - std::floor(south / cell));
  raster.origin = grid_point(left * cell, top * cell);
  for (int row = 0; row < raster.rows; ++row)
    for (int column = 0; column < raster.columns; ++column)
      raster.cut.push_back(
          cut_at(work, grid_point((left + column + 0.5) * cell, (top - row - 0.5) * cell)));
  return raster;
}

}  // namespace

CutRaster raster_of(const Work& work, const CellGrid& grid) {
  return work.input.raster == RasterFrame::North ? north_up(work, grid.size) : along_the_tank(grid);
}

}  // namespace squaredig::dig
