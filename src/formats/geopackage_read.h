// GeoPackage in: ground points and strings from one vector layer.
//
// What: points from Point and MultiPoint, strings from LineString and MultiLineString and from the
//   outer rings of polygons, each with its height. A field "point" or "name" is the label or the
//   string's name, "code" the code. The row number is the line.
// Frame and units: the layer's coordinate system and units, made the job's (stated_crs.h).
// Requires: nothing; the file may be anything.
// Accuracy: exact as read; one rounding where the unit is not the metre.
// Errors: a Refusal of all faults of the file: no such layer, several without a name to choose,
//   geometries without heights where heights are wanted, of another kind, or empty; curves; changes
//   that another program keeps beside the file. Nothing beside it is opened or changed.
// Source: OGC GeoPackage 1.3 (12-128r18), read by GDAL with its GeoPackage driver alone.
#pragma once

#include "formats/points_csv.h"
#include "formats/strings_csv.h"

namespace squaredig::formats {

PointsFile read_geopackage_points(const SourceFile& source, const PointsWanted& wanted = {},
                                  PointTable before = {});
StringsFile read_geopackage_strings(const SourceFile& source, Heights heights);

}  // namespace squaredig::formats
