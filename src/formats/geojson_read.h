// GeoJSON in: ground points and strings.
//
// What: points from Point and MultiPoint, strings from LineString and MultiLineString and from the
//   outer rings of polygons. A property "point" or "name" ("string" for strings) is the label,
//   "code" the code. Features without geometry are set aside.
// Frame and units: the system of the member "crs", as GeoJSON had it before RFC 7946; null there
//   says nothing. Without the member the file is in degrees, as RFC 7946 says.
// Requires: nothing; the file may be anything.
// Laws: geojson.1 a file without "crs" is in degrees whatever its numbers look like.
// Accuracy: a number is the double nearest to its text.
// Errors: a Refusal of all faults of the file: text that is no JSON (with its place), keys twice in
//   one object, nesting over 64 deep, positions that are not two or three numbers, geometries of
//   another kind, a linked coordinate system.
// Source: RFC 7946; RFC 8259; the GeoJSON format specification of 2008 for "crs".
#pragma once

#include "formats/points_csv.h"
#include "formats/strings_csv.h"

namespace squaredig::formats {

PointsFile read_geojson_points(const SourceFile& source, const PointsWanted& wanted = {},
                               PointTable before = {});
StringsFile read_geojson_strings(const SourceFile& source, Heights heights);

}  // namespace squaredig::formats
