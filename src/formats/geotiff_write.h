// GeoTIFF out: one band of 32-bit numbers on a grid that may be turned.
//
// What: the bytes of a file, the same for the same content; cells without a value hold -9999, which
//   the file declares as nodata.
// Frame and units: `columns` run along `bearing`, `rows` to the right of it; `origin` is the outer
//   corner where column and row 0 begin. Values as given.
// Requires: cells.size() == columns * rows, row by row; finite values or none.
// Laws: geotiff.1  the same raster gives the same bytes;
//       geotiff.2  the centre of cell (column, row) is origin + (column + 1/2, row + 1/2) cells.
// Accuracy: values are rounded to 32-bit numbers, one part in 1.6e7.
// Errors: a Refusal where the EPSG code is unknown or the file cannot be made.
// Source: TIFF 6.0 and OGC GeoTIFF 1.1, by GDAL.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "quantity/angle.h"

namespace squaredig::formats {

struct Raster {
  GridPoint origin;
  Bearing bearing;  // of the columns' direction
  Length cell;
  int columns = 0;
  int rows = 0;
  std::vector<std::optional<double>> cells;
  std::string crs;          // "EPSG:2157", or "local" for none
  std::string description;  // of the band
};

std::string geotiff_bytes(const Raster& raster);

}  // namespace squaredig::formats
