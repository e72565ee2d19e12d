// The total-station book: one sight a row, as read on the instrument.
//
// What: columns setup, station, instrument_height, target, target_height, horizontal, zenith,
//   slope_distance, face, code; where they are wanted also prism_constant_mm, temperature_c,
//   pressure_hpa, humidity_percent, and of the instrument reference_temperature_c,
//   reference_pressure_hpa, reference_humidity_percent, wavelength_um. Within a set-up a blank
//   station, instrument height, temperature, pressure or humidity is that of the row above.
// Frame and units: lengths in the file's unit, angles in the job's notation; what is given back is
//   as read, corrected by nothing.
// Laws: stations_csv.1 a book written in gon or as packed degrees is refused where its own faces
//   prove it.
// Errors: a Refusal of all faults of the file with line and column: packed values where degrees,
//   minutes and seconds are wanted, angles past the full circle, a face that its zenith angle
//   contradicts, a distance without zenith angle, two instrument heights or stations in one set-up,
//   temperature or pressure without the other or without the instrument's reference.
// Source: RFC 4180; faces and circle: common practice, no source.
#pragma once

#include <string>
#include <vector>

#include "field/field_input.h"
#include "formats/source_file.h"
#include "quantity/result_head.h"

namespace squaredig::formats {

struct StationsFile {
  std::vector<field::StationShot> shots;
  InputRecord record;
  std::vector<std::string> cautions;
};

StationsFile read_stations_csv(const SourceFile& source, AngleNotation notation);

}  // namespace squaredig::formats
