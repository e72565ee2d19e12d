// Rasters in: each cell with a height is a ground point at the cell's centre.
//
// What: GeoTIFF of one band, and ASCII grids. Cells without data are counted as set aside. The
//   number of a GeoTIFF's cell, along the rows from the upper left, stands for its line.
// Frame and units: the raster's coordinate system and units, made the job's (stated_crs.h). A
//   GeoTIFF whose values belong to points (PixelIsPoint) and an ASCII grid with xllcenter have
//   their values at those places.
// Requires: nothing; the file may be anything.
// Laws: raster.1 memory is a few rows of the raster and the points kept; raster.2 a cell of no data
//   is never a height.
// Accuracy: the centre is computed once from the raster's corner and cell size; heights are as
//   stored, 32-bit values as the nearest short decimal.
// Errors: a Refusal: no place on the ground, several bands, scaled or complex values, more than
//   1e9 cells, blocks over 256 MB, heights that no place on earth has where no value for no data is
//   stated, numbers that are none, rows or cells too few or too many.
// Source: OGC GeoTIFF 1.1 (19-008), read by GDAL with its GeoTIFF driver alone; the ASCII grid's
//   header as its makers publish it (ncols, nrows, xllcorner or xllcenter, cellsize, NODATA_value).
#pragma once

#include "formats/points_csv.h"

namespace squaredig::formats {

PointsFile read_geotiff_points(const SourceFile& source, const PointsWanted& wanted = {},
                               PointTable before = {});
PointsFile read_ascii_grid_points(const SourceFile& source, const PointsWanted& wanted = {},
                                  PointTable before = {});

}  // namespace squaredig::formats
