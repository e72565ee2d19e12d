// LandXML in: triangulated surfaces, breaklines and points.
//
// What: a surface's Pnts and Faces; its Breaklines; CgPoints and DataPoints. Faces marked invisible
//   (i="1") are left out: they are neither ground nor part of an area. Numbers stand in the order
//   northing, easting, elevation.
// Frame and units: the document's grid, in metres whatever its unit; a document without units is
//   taken in the unit of the source, which is told under `assumed`. The winding of faces is as
//   read.
// Requires: nothing; the file may be anything.
// Laws: landxml.1  what write_landxml wrote is read back to the last bit, in metres;
//       landxml.2  ids may have gaps and any order: a face means the points of those ids.
// Accuracy: exact as read; one rounding where the unit is not the metre.
//   The coordinate system and units the document states become the job's as stated_crs.h says.
// Errors: a Refusal of all faults of the file: another CRS, XML that is not well-formed, a DOCTYPE,
// missing and
//   doubled ids, faces that name no point or have other than three, numbers that are none, wrong
//   counts, several surfaces without a name to choose. What is read otherwise than written is told
//   under `cautions`.
// Source: LandXML 1.2 schema: P, "a space delimited 'northing easting elevation' text value"; F@i.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "formats/points_csv.h"
#include "formats/strings_csv.h"
#include "formats/surface_file.h"

namespace squaredig::formats {

// The surface of that name; where no name is given the file must hold one alone.
SurfaceFile read_landxml_surface(const SourceFile& source,
                                 const std::optional<std::string>& name = std::nullopt);

// The breaklines of every surface of the document.
StringsFile read_landxml_breaklines(const SourceFile& source, Heights heights);

// CgPoints with their names and codes, and the nameless DataPoints of surfaces, added to `before`.
PointsFile read_landxml_points(const SourceFile& source, const PointsWanted& wanted = {},
                               PointTable before = {});

}  // namespace squaredig::formats
