// The records of a LAS file that say in which coordinate system its points are.
//
// What: GeoTIFF keys (34735) and WKT (2112) of the user LASF_Projection, before the points or
//   behind them; where a file has both, the header says which counts.
// Accuracy: memory is one record, of 1 MiB at most.
// Errors: records that reach beyond their room, and a record that says the points are compressed,
//   go to the list of faults.
// Source: ASPRS LAS 1.4 R15, sections 2.5, 2.7 and 3.
#pragma once

#include "formats/input_file.h"
#include "formats/las_header.h"
#include "formats/stated_crs.h"

namespace squaredig::formats {

// Reads on from the end of the header to the beginning of the points.
StatedCrs las_crs(InputFile& file, const SourceFile& source, const LasHeader& header,
                  FaultList& faults);

}  // namespace squaredig::formats
