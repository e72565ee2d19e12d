// DXF in: ground points, strings and triangulated surfaces from a drawing, by a strict subset.
//
// What: points are POINT, with the layer as code and a TEXT inserted exactly at the point as label.
//   Strings are LINE, POLYLINE and LWPOLYLINE of straight segments, closed where they are marked
//   so, named after their layer. A surface is 3DFACE and polyface meshes; a face of four corners in
//   one plane becomes two triangles. Where the source names a layer, entities of others are left
//   out. Kinds that are not looked at are counted and told.
// Frame and units: x is easting, y is northing, z height; the drawing's unit from $INSUNITS.
// Requires: nothing; the file may be anything.
// Laws: dxf_read.1 a drawing written by dxf_write is read back to the last bit; dxf_read.2 a number
//   that is not wholly one finite number is a fault with its line, never a zero.
// Accuracy: exact as read; one rounding where the unit is not the metre.
// Errors: a Refusal of all faults of the file: curves (bulges, fitted curves), planes that are not
//   level where a two-dimensional entity lies, faces of four corners more than a millimetre out of
//   plane or folded, vertex numbers that lead nowhere, heights that are wanted and missing.
// Source: DXF reference, group codes of the entities named.
#pragma once

#include "formats/points_csv.h"
#include "formats/strings_csv.h"
#include "formats/surface_file.h"

namespace squaredig::formats {

PointsFile read_dxf_points(const SourceFile& source, const PointsWanted& wanted = {},
                           PointTable before = {});
StringsFile read_dxf_strings(const SourceFile& source, Heights heights);
SurfaceFile read_dxf_surface(const SourceFile& source);

}  // namespace squaredig::formats
