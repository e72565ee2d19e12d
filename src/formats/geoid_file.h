// Geoid files: separations at the nodes of a regular grid of latitudes and longitudes.
//
// What: GTX, and GeoTIFF in one band. Every node is read at once; a node without value is NaN.
// Frame and units: metres; nodes stand at the middles of the raster's cells.
// Laws: geoid_file.1 a file cut short is refused whole, never read in part; geoid_file.2 what
//   lies beside the file changes nothing.
// Errors: Refusal at the place the job names the file: not a raster, more than one band of
//   separations, turned or not counted in degrees, a name with @ or a comma (which others take as
//   "may be missing"), more than 5e7 nodes; of kind Storage where it cannot be opened.
// Source: GDAL's drivers GTX and GTiff; the layout is that of the files themselves.
#pragma once

#include "field/field_input.h"
#include "formats/source_file.h"
#include "quantity/result_head.h"

namespace squaredig::formats {

struct GeoidFile {
  field::GeoidGrid grid;
  InputRecord record;
};

GeoidFile read_geoid_file(const SourceFile& source, const Place& named_at);

}  // namespace squaredig::formats
