// Points CSV: the field file of surveyed points.
//
// What: columns point, easting (e), northing (n), height (h), code, sigma_plan_mm, sigma_height_mm.
//   A file needs point, easting,
//   northing and (unless optional) height; code where the source asks for codes.
// Frame and units: the site grid, metres whatever the file's unit; geodetic angles in decimal
// degrees
//   or as degrees minutes seconds with signs or blanks between, ellipsoid heights as lengths.
// Requires: nothing; the file may be anything.
// Laws: points_csv.1  a label and a code are what the file spells: blanks round an unquoted cell
// are
//       layout, a quoted cell is kept byte for byte;
//       points_csv.2  `read` and `used` count rows of the whole file whatever `keep` lets through;
//       points_csv.3  a number is the double nearest to its text;
//       points_csv.4  the file and its faults are the same by one thread and by several.
// Accuracy: exact as read; one rounding for feet. Memory is that of the points kept.
// Errors: a Refusal of all faults of the file (csv_table.h); rows whose code is not asked for are
// set
//   aside unread; names twice or blank are refused or told as a caution, as wanted.
// Source: RFC 4180.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "formats/source_file.h"
#include "formats/swapped.h"
#include "quantity/points.h"
#include "quantity/result_head.h"

namespace squaredig::formats {

enum class Heights { Needed, Optional };
// Unique: a blank name or one that occurs twice is a fault. Told: it is a caution.
enum class Names { Told, Unique };

struct PointsWanted {
  Heights heights = Heights::Needed;
  Names names = Names::Told;
  // Points this says false to are counted but not kept; empty: all are kept. Several threads may
  // ask it at once.
  std::function<bool(const GridPosition&)> keep = {};
};

struct PointsFile {
  PointTable points;
  InputRecord record;
  std::vector<std::string> cautions;
  Extent extent;  // of all points used, kept or not
  PlanColumns columns;
  std::vector<std::string> assumed = {};
};

// The points of a file, added to those of `before`.
PointsFile read_points_csv(const SourceFile& source, const PointsWanted& wanted = {},
                           PointTable before = {});

}  // namespace squaredig::formats
