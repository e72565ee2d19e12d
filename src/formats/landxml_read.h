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
//   A CRS the document states is compared with the source's, where that has one.
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

namespace squaredig::formats {

struct LandXmlSurface {
  SurfaceMesh mesh;    // all points of the surface, used by a face or not, in file order
  InputRecord record;  // counts faces
  std::vector<std::string> cautions;
  std::vector<std::string> assumed;
  std::optional<std::string> epsg_code;  // as the document spells it
  Extent extent;
};

// The surface of that name; where no name is given the file must hold one alone.
LandXmlSurface read_landxml_surface(const SourceFile& source,
                                    const std::optional<std::string>& name = std::nullopt);

struct LandXmlStrings {
  std::vector<SurveyString> strings;
  InputRecord record;  // counts vertices
  std::vector<std::string> cautions;
  std::vector<std::string> assumed;
  std::optional<std::string> epsg_code;
  Extent extent;
};

// The breaklines of every surface of the document.
LandXmlStrings read_landxml_breaklines(const SourceFile& source, Heights heights);

struct LandXmlPoints {
  PointTable points;
  InputRecord record;
  std::vector<std::string> cautions;
  std::vector<std::string> assumed;
  std::optional<std::string> epsg_code;
  Extent extent;
};

// CgPoints with their names and codes, and the nameless DataPoints of surfaces, added to `before`.
LandXmlPoints read_landxml_points(const SourceFile& source, const PointsWanted& wanted = {},
                                  PointTable before = {});

}  // namespace squaredig::formats
