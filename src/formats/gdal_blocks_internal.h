// How much memory a library takes to read a row of a raster.
#pragma once

#include <gdal_priv.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace squaredig::formats {

constexpr double kMostBytes = 256e6;  // of the blocks of one row of blocks

// The bytes of one row of blocks with every band in them; infinite where it has no blocks.
inline double bytes_of_row_of_blocks(GDALDataset& file) {
  GDALRasterBand& band = *file.GetRasterBand(1);
  int columns = 0, rows = 0;
  band.GetBlockSize(&columns, &rows);
  if (columns < 1 || rows < 1) return std::numeric_limits<double>::infinity();
  const double across = std::ceil(double{1} * band.GetXSize() / columns);
  return across * columns * rows * GDALGetDataTypeSizeBytes(band.GetRasterDataType()) *
         file.GetRasterCount();
}

}  // namespace squaredig::formats
