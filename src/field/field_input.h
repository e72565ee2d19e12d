// Raw observations as the field books hold them: the table [field] as checked, with its files read,
// and what the job says of its grid.
//
// Frame and units: angles as read on the instrument, lengths as shown by it, heights of instrument
//   and target above their marks; control and pairs on the job's grid.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "quantity/angle_text.h"
#include "quantity/points.h"
#include "quantity/tolerance.h"

namespace squaredig::field {

enum class Face { NotSaid, Left, Right };

// Air at the time of a sight. Degrees Celsius, hectopascals, percent of relative humidity.
struct Air {
  double temperature_c = 0;
  double pressure_hpa = 0;
  std::optional<double> humidity_percent = std::nullopt;
};

// What the first velocity correction of a distance needs.
struct DistanceAir {
  Air met;
  Air reference;  // for which the instrument shows distances without correction
  std::optional<double> wavelength_um = std::nullopt;
};

// One line of a total-station book. A set-up whose station is not a control point is a free
// station.
struct StationShot {
  std::string setup;
  std::string station;
  Length instrument_height;
  std::string target;
  std::optional<Length> target_height;  // where there is a zenith angle
  Angle horizontal;
  std::optional<Angle> zenith;
  std::optional<Length> slope_distance;  // only with a zenith angle
  Face face = Face::NotSaid;
  std::string code = {};
  Length prism_constant = {};  // added to the distance shown
  std::optional<DistanceAir> air = std::nullopt;
  Place place = {};
};

// What the book itself worked out, where it did; the page check compares.
struct Booked {
  std::optional<Length> rise = std::nullopt;
  std::optional<Length> fall = std::nullopt;
  std::optional<Elevation> height_of_collimation = std::nullopt;
  std::optional<Elevation> reduced_level = std::nullopt;
};

// One line of a level book; each reading may be missing. A reading on an inverted staff is
// negative. `distance` is the length levelled since the change point before.
struct LevelLine {
  std::string point;
  std::optional<Length> backsight = std::nullopt;
  std::optional<Length> intermediate = std::nullopt;
  std::optional<Length> foresight = std::nullopt;
  std::optional<Length> distance = std::nullopt;
  Booked booked = {};
  Place place = {};
};

// One reading of a two-peg test: which set-up, which staff, how far from the level.
struct TwoPegReading {
  std::string setup;
  std::string staff;
  Length distance;
  Length reading;
  Place place = {};
};

struct GeodeticPoint {
  std::string point;
  Angle latitude;
  Angle longitude;
  Elevation ellipsoid_height;
  std::string code = {};
  std::optional<Length> sigma_plan = std::nullopt;
  std::optional<Length> sigma_height = std::nullopt;
  Place place = {};
  std::string fix = {};        // as the file spells it; empty: not given
  Length antenna_height = {};  // of the height given above the mark
};

// One point known in the measured frame and on the site grid. Without measured coordinates it is
// looked up among the reduced points.
struct PointPair {
  std::string point;
  std::optional<GridPoint> measured = std::nullopt;
  std::optional<Elevation> measured_height = std::nullopt;
  GridPoint site;
  std::optional<Elevation> site_height = std::nullopt;
  std::optional<Length> sigma = std::nullopt;  // of one coordinate's difference
  Place place = {};
};

// Separation of geoid and ellipsoid at the nodes of a grid file, rows from north to south. A node
// without a value is NaN.
struct GeoidGrid {
  std::string file;
  Angle north;  // of the first row
  Angle west;   // of the first column
  Angle step_latitude;
  Angle step_longitude;
  std::size_t rows = 0;
  std::size_t columns = 0;
  std::vector<float> separation_m = {};
  Place place = {};
};

struct FieldInput {
  std::vector<StationShot> stations;
  std::vector<LevelLine> levels;
  std::vector<GeodeticPoint> gnss;
  std::vector<TwoPegReading> two_peg;
  std::optional<std::vector<PointPair>> fit;
  PointTable control;
  AngleNotation angles = AngleNotation::DegreesMinutesSeconds;
  std::optional<Angle> sigma_direction;  // of one pointing in one face
  std::optional<Angle> sigma_zenith;     // of one pointing in one face
  std::optional<Length> sigma_distance;
  std::optional<Ratio> sigma_distance_per_length;  // parts of the distance
  std::optional<Length> sigma_level;               // of one kilometre levelled
  std::optional<Length> level_misclosure;          // k of k sqrt(K), K in kilometres
  std::optional<Ratio> refraction;                 // coefficient k of the line of sight
  std::optional<std::string> crs;                  // "EPSG:2157"; nothing: local coordinates
  std::optional<std::string> heights;              // nothing: local heights
  std::optional<std::string> gnss_crs;             // of latitudes and longitudes
  std::optional<double> gnss_year;                 // in which they were measured, 2018.5
  std::optional<GeoidGrid> geoid;
  std::optional<Ratio> scale_factor;  // grid over ground, as the job states it
  Place place;
};

}  // namespace squaredig::field
