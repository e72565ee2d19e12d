// The dig for other programs: dig.xml, dig.dxf and dig.gpkg.
//
// What: the LandXML document holds the excavated surface with toe and crest as breaklines and the
//   exact volumes; the drawing has layers FACES, PIT-TOE, PIT-CREST, CELLS and CELL-CUTS; the
//   GeoPackage has layers toe, crest, cells, faces and pegs.
// Frame and units: the job's grid, metres.
// Laws: dig_files.1  the LandXML document is valid against the schema; dig_files.2  the same result
//   gives the same bytes; dig_files.3  what another program reads is what the result holds.
// Accuracy: numbers keep every bit; a cell's written cut is rounded to centimetres.
// Errors: NaN and infinity are refused.
// Source: LandXML 1.2; DXF Release 12; OGC GeoPackage 1.2.
#pragma once

#include "dig/dig_result.h"
#include "formats/geopackage_write.h"
#include "formats/landxml_write.h"
#include "pegs/pegs_result.h"

namespace squaredig::formats {

// `document` brings job, version, date and reference systems.
std::string dig_xml(const dig::DigResult& result, LandXmlOut document);

std::string dig_dxf(const dig::DigResult& result);

// `out` brings date and reference system.
std::string dig_gpkg(const dig::DigResult& result, const std::vector<pegs::ReferencePeg>& pegs,
                     GpkgOut out);

}  // namespace squaredig::formats
