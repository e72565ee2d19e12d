// Raw observations as the field books hold them: the table [field] as checked, with its files read.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "quantity/angle_text.h"
#include "quantity/points.h"
#include "quantity/tolerance.h"

namespace squaredig::field {

// One line of a total-station book. A set-up whose station is unknown is a free station.
struct StationShot {
  std::string setup;
  std::string station;
  Length instrument_height;
  std::string target;
  Length target_height;
  Angle horizontal;
  Angle zenith;
  Length slope_distance;
  std::string face;
  std::string code;
  Place place;
};

// One line of a level book; each reading may be missing.
struct LevelLine {
  std::string point;
  std::optional<Length> backsight;
  std::optional<Length> intermediate;
  std::optional<Length> foresight;
  std::optional<Length> distance;
  Place place;
};

struct GeodeticPoint {
  std::string point;
  Angle latitude;
  Angle longitude;
  Elevation ellipsoid_height;
  std::string code;
  std::optional<Length> sigma_plan;
  std::optional<Length> sigma_height;
  Place place;
};

// One point known in the measured frame and on the site grid.
struct PointPair {
  std::string point;
  GridPoint measured;
  GridPoint site;
  Place place;
};

struct FieldInput {
  std::vector<StationShot> stations;
  std::vector<LevelLine> levels;
  std::vector<GeodeticPoint> gnss;
  std::optional<std::vector<PointPair>> fit;
  PointTable control;
  AngleNotation angles = AngleNotation::DegreesMinutesSeconds;
  std::optional<Angle> sigma_direction;
  std::optional<Angle> sigma_zenith;
  std::optional<Length> sigma_distance;
  std::optional<Ratio> sigma_distance_per_length;  // parts of the distance
  Place place;
};

}  // namespace squaredig::field
