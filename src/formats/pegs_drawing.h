// The pegs for other programs: pegs.dxf, pegs.geojson and pegs.xml.
//
// What: pegs, strings, tank, toe, crest, pipes and shafts. The drawing has one layer for each:
//   PEGS, PEG-LABELS, STRING-LINES, TANK, PIT-TOE, PIT-CREST, PIPES, SHAFTS.
// Frame and units: drawing and LandXML in the job's grid, metres; GeoJSON in longitude and latitude
// of
//   WGS 84, with the projected coordinates as properties of each point, heights among them.
// Requires: for GeoJSON a result that holds longitudes and latitudes.
// Laws: pegs_drawing.1  every label survives in every file; pegs_drawing.2  rings of GeoJSON are
//   closed and run anticlockwise; pegs_drawing.3  the LandXML document is valid against the schema.
// Errors: NaN and infinity are refused.
// Source: DXF Release 12; RFC 7946; LandXML 1.2.
#pragma once

#include <optional>
#include <string>

#include "formats/landxml_write.h"
#include "pegs/pegs_result.h"

namespace squaredig::formats {

std::string pegs_dxf(const pegs::PegsResult& result);

// Nothing where the result holds no longitudes and latitudes.
std::optional<std::string> pegs_geojson(const pegs::PegsResult& result, std::string_view crs);

// `document` brings job, version, date and reference systems.
std::string pegs_xml(const pegs::PegsResult& result, LandXmlOut document);

}  // namespace squaredig::formats
