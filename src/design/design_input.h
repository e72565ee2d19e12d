// What is to be dug, as the job file says it: the tables [tank], [bedding] and [dig], checked.
// Lengths as they stand in the job file; whether they are grid or ground lengths is in PlanLengths.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "quantity/points.h"
#include "quantity/slope.h"
#include "quantity/tolerance.h"

namespace squaredig::design {

// A point given by its coordinates, or by the name of a control point.
using PointOrName = std::variant<GridPoint, std::string>;

// Places corner A from a line of two control points.
struct FromLine {
  std::string line_from;
  std::string line_to;
  Length along;
  Length right;
  Angle turn;  // turns A-B clockwise from the line
};

struct PipeStub {
  std::string name;
  std::string side;
  Length along;
  Elevation invert;
  Length diameter;
  Place place;
};

struct AccessShaft {
  std::string name;
  Length along_ab;
  Length in_from_ab;
  Length diameter;
  Elevation cover_level;
  Place place;
};

struct TankInput {
  std::optional<Length> length;  // side A-B
  std::optional<Length> width;   // side B-C
  Length height;
  std::optional<PointOrName> corner_a;
  std::optional<Bearing> bearing_ab;
  std::optional<std::string> corner_b;
  std::vector<GridPoint> outline;           // instead: A, B, C, ...
  std::optional<std::string> outline_file;  // instead: a strings file
  std::optional<FromLine> from;             // instead
  Elevation underside_level;                // at corner A
  Fall fall;
  std::optional<Bearing> fall_bearing;     // downhill
  std::optional<std::string> fall_toward;  // or the side it falls toward, "CD"
  std::optional<std::pair<Length, Length>> module;
  std::optional<Ratio> voids;
  std::optional<Elevation> outlet_level;
  std::optional<Force> empty_weight;
  std::vector<PipeStub> pipes;
  std::vector<AccessShaft> shafts;
  Place place;
};

struct BeddingInput {
  Length thickness;
  std::optional<Length> least;
  std::optional<Length> most;
  Place place;
};

// One value for all sides, or one for each named side.
template <class T>
struct PerSide {
  std::optional<T> all;
  std::vector<std::pair<std::string, T>> by_side;
  Place place;
};

enum class Corners { Mitre, Round };

struct Bench {
  Length above_floor;
  Length width;
  std::optional<Batter> batter;
  Place place;
};

struct Ramp {
  std::string side;
  Length along;
  Length width;
  Batter slope;  // run per rise of the ramp itself
  Batter batter;
  Place place;
};

struct Sump {
  std::vector<GridPoint> outline;
  Elevation level;
  Batter batter;
  Place place;
};

struct Trench {
  std::vector<GridPosition> line;  // easting, northing, invert
  Length width;
  Length wall;
  Length bedding;
  Batter batter;
  Place place;
};

// The shape of the excavation.
struct PitInput {
  PerSide<Length> gap;
  PerSide<Batter> batter;
  std::optional<std::string> batter_given_by;
  Corners corners = Corners::Mitre;
  std::vector<Bench> benches;
  std::vector<Ramp> ramps;
  std::vector<Sump> sumps;
  std::vector<Trench> trenches;
  std::optional<Length> vertical_caution_depth;
  Place place;
};

enum class PlanLengths { Grid, Ground };

struct DesignInput {
  TankInput tank;
  BeddingInput bedding;
  PitInput pit;
  PointTable control;
  PlanLengths plan_lengths = PlanLengths::Grid;
  Ratio combined_factor = Ratio::of(1);  // grid / ground; 1 where lengths are grid lengths
};

}  // namespace squaredig::design
