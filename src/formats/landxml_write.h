// LandXML 1.2 out: surfaces with their breaklines, set-out points, and volumes between surfaces.
//
// What: one document, the same bytes for the same content on any day.
// Frame and units: the job's grid in metres; numbers stand northing, easting, elevation.
// Requires: faces name vertices of their own surface; finite numbers.
// Laws: landxml_write.1  the document is valid against the LandXML 1.2 schema; landxml_write.2  the
//   pieces, made in any order and put together in theirs, are the text.
// Accuracy: shortest numbers that read back to the last bit.
// Errors: none.
// Source: LandXML 1.2 schema.
#pragma once

#include <chrono>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "formats/file_pieces.h"
#include "quantity/points.h"

namespace squaredig::formats {

struct LandXmlSurfaceOut {
  SurfaceMesh mesh;
  std::string description;  // empty: none
  std::vector<SurveyString> breaklines = {};
  std::optional<Area> plan_area = std::nullopt;
  std::optional<Area> surface_area = std::nullopt;
};

struct LandXmlPointOut {
  std::string name;
  std::string code;         // empty: none
  std::string description;  // empty: none
  GridPoint at;
  std::optional<Elevation> height;
};

// Written as volCut, volFill and their difference; the volumes are exact, not of a grid.
struct LandXmlVolumeOut {
  std::string base_surface;
  std::string compared_surface;
  Volume cut;
  Volume fill;
  std::string description;
};

struct LandXmlOut {
  std::string job;
  std::string tool_version;
  std::optional<std::chrono::year_month_day> date;  // none: 1970-01-01
  std::string crs;                                  // "EPSG:2157" or "local"
  std::string heights;                              // the same of heights
  std::vector<LandXmlSurfaceOut> surfaces = {};
  std::vector<LandXmlVolumeOut> volumes = {};
  std::string points_name = {};  // of the group of points
  std::vector<LandXmlPointOut> points = {};
};

// The file's bytes: UTF-8, one element a line.
std::string landxml_text(const LandXmlOut& document);
// The same in pieces, for surfaces too large to stand in memory as text.
FilePieces landxml_pieces(const std::shared_ptr<const LandXmlOut>& document);

// Text fit for XML: & < > " escaped, what XML cannot hold replaced by U+FFFD.
std::string xml_text(std::string_view text);

}  // namespace squaredig::formats
