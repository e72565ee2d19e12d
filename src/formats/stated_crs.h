// What a file says about the system its coordinates are in, and how they become the job's.
//
// What: codes of the register, units, degrees; from a code, from WKT, or put together by a reader.
//   A Placing is the decision: the file's numbers are the job's coordinates already, or they are
//   scaled to metres, or they are taken over from another system by a way that loses nothing; else
//   there is a fault and no way.
// Frame and units: file numbers in, the job's grid in metres out. Degrees stand longitude first.
// Laws: stated_crs.1 degrees are never taken as metres; stated_crs.2 a unit that a file states and
//   its system's own unit are one, or the file is refused; stated_crs.3 a foot is 0.3048 m and a US
//   survey foot 1200/3937 m to the last bit, however a file spells them.
// Accuracy: one rounding per coordinate for units other than the metre.
// Errors: faults go to the list; what was assumed or is to be known is told.
// Source: EPSG register as installed with PROJ; OGC 01-009 and ISO 19162 (WKT).
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "formats/fault_list.h"
#include "formats/source_file.h"
#include "quantity/position.h"

namespace squaredig::formats {

struct StatedCrs {
  std::string words = {};                // as the file says it; empty: it says nothing
  Place place = {};                      // of the statement
  std::optional<int> plan = {};          // EPSG code of the coordinates
  std::optional<int> heights = {};       // EPSG code of the heights
  std::optional<double> metres = {};     // of one unit of easting and northing, where stated
  std::optional<double> metres_up = {};  // of one unit of height, where stated
  bool degrees = false;
  std::optional<Place> unit_place = {};  // where it is not that of the system
};

// The system of an EPSG code, alone or of plan and heights together; a fault where it is not known.
StatedCrs crs_of_code(int code, const Place& place, FaultList& faults);
// The system a WKT text describes. `wanted` is the job's code: a description without a code of its
// own is compared with it. A fault where the text is none.
StatedCrs crs_of_wkt(const std::string& wkt, int wanted, const Place& place, FaultList& faults);
// The exact size of a metre, foot or US survey foot where the number is one of them but for its
// last digits.
double exact_unit(double metres);
// "m", "ft", "us-ft", or the size in metres.
std::string unit_words(double metres);

class Placing {
 public:
  Placing() = default;  // numbers are the job's coordinates in metres
  // Adds faults where there is no way; the placing is then not used.
  Placing(const StatedCrs& stated, const SourceFile& source, FaultList& faults,
          std::vector<std::string>& assumed, std::vector<std::string>& cautions);
  GridPosition at(double east, double north, double up) const;

 private:
  void take_units(const StatedCrs& stated, const SourceFile& source, FaultList& faults,
                  std::vector<std::string>& assumed);
  void take_plan(const StatedCrs& stated, const SourceFile& source, FaultList& faults,
                 std::vector<std::string>& assumed, std::vector<std::string>& cautions);

  double metres_ = 1;
  double metres_up_ = 1;
  std::function<GridPoint(double, double)> move_;
};

}  // namespace squaredig::formats
