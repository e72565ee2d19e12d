// The answer of the pegs stage: what the surveyor sets out, and the proof that it was set out
// right.
//
// Frame and units: the job's grid. A string of side XY runs from peg X1 beyond X to peg Y2 beyond
// Y.
//   `along` is away from the peg's corner, `across` to the right facing that way. Deltas are as set
//   less design; a move is the correction.
// Source: definitions; string lines on produced sides are common practice, no source.
#pragma once

#include <optional>

#include "quantity/angle.h"
#include "quantity/points.h"
#include "quantity/result_head.h"
#include "quantity/tolerance.h"

namespace squaredig::pegs {

struct LatLong {
  Angle latitude;
  Angle longitude;
};

// A corner and how well two crossing strings re-make it.
struct Corner {
  std::string name;
  GridPosition at;  // its height is the tank's underside
  Elevation dig_level;
  Angle interior_angle;
  Angle crossing_angle;  // of its two strings, at most 90 degrees
  // Standard deviation of the re-made corner for each unit of a peg's; nothing where a peg is left
  // out.
  std::optional<Ratio> sigma_per_peg_sigma;
  // Check distances from the corner's two pegs, on the grid and on the ground.
  struct Recovery {
    std::string peg;
    Length grid;
    Length ground;
  };
  std::vector<Recovery> recovery;
  std::optional<LatLong> geographic;
};

enum class PegRule { Offset, Setback, Influence };
constexpr const char* words(PegRule r) {
  switch (r) {
    case PegRule::Offset:
      return "offset";
    case PegRule::Setback:
      return "crest and setback";
    default:
      return "influence line";
  }
}

struct ReferencePeg {
  std::string name;
  std::string corner;
  std::string side;         // "AB"
  std::string string_line;  // "A1-B2"
  GridPoint at;
  std::optional<Elevation> ground;  // nothing off the survey
  Length beyond_corner;
  Length clear_of_crest;  // along the string
  Length nearest_crest;   // in any direction
  PegRule placed_by = PegRule::Offset;
  std::optional<Length> cut;            // ground at the peg less dig level at its corner
  std::optional<Length> staff_reading;  // of the laser, staff on the ground at the peg
  std::optional<LatLong> geographic;
};

struct NamedLength {
  std::string name;  // "AB", "AC"
  Length grid;
  Length ground;
};

// What the grid does to lengths here. Absent parts: a local grid, or a factor stated by the job.
struct ScaleHere {
  Ratio combined = Ratio::of(1);  // grid over ground
  std::optional<Ratio> point_scale;
  std::optional<Ratio> elevation;
  std::optional<Length> mean_radius;
  std::optional<Angle> convergence;  // bearing of grid north from true north
  std::string grid_name;
  std::string words;  // what the longest side suffers, in millimetres
};

struct GeographicWay {
  std::string operation;
  Length accuracy;
  std::string software;
};

struct PipePoint {
  std::string name;
  std::string side;
  Length along;  // from the side's first corner
  GridPoint at;  // centre line at the tank's outer face
  Elevation invert;
  Elevation obvert;
  Length above_base;    // invert above the underside there
  std::string peg;      // the string's first peg
  Length along_string;  // from that peg, on the grid
  std::optional<LatLong> geographic;
};

struct ShaftPoint {
  std::string name;
  GridPoint at;
  Elevation cover_level;
  Length above_top;  // cover above the tank's top there
  // On the string of side AB, and square to it into the tank.
  std::string peg;
  Length along_string;
  Length square_to_string;
  std::optional<LatLong> geographic;
};

// One line of the polar schedule, or of the backsight check (then `point` is the backsight).
struct PolarRow {
  std::string station;
  std::string backsight;  // empty: none
  std::string point;
  Bearing bearing;
  std::optional<Angle> turn;  // clockwise from the backsight
  Length ground_distance;
  Length grid_distance;
  std::optional<Length> height_difference;  // the point above the station
  std::string check_from;                   // the row before, for a taped check
  std::optional<Length> check_distance;     // on the ground
  std::optional<Length> staff_reading;
};

// One thing judged against a tolerance.
struct Check {
  std::string name;
  Verdict verdict = Verdict::NotAsked;
  Length value;
  std::optional<Length> limit;
  std::optional<Length> uncertainty;  // expanded; nothing where the measurement states none
};

// A measured peg; a corner is told along its leading side, a pipe along its own, a shaft along A-B.
struct PegDelta {
  std::string name;
  GridPoint measured;
  Length delta_e;
  Length delta_n;
  Length along;
  Length across;
};

struct RemadeCorner {
  std::string name;
  GridPoint at;
  Length delta_e;
  Length delta_n;
  Length off;  // in plan
};

struct PegMove {
  std::string name;
  Length along;
  Length across;
};

struct AsSetResult {
  std::vector<PegDelta> points;
  std::vector<RemadeCorner> corners;
  std::vector<NamedLength> sides;
  std::vector<NamedLength> diagonals;
  std::optional<Length> diagonal_difference;  // AC less BD, of four corners
  std::optional<Angle> out_of_square;         // greatest departure of a corner's angle from design
  std::vector<PegMove> moves;
  std::string moves_words;
  std::vector<Check> checks;
  Verdict verdict = Verdict::NotProven;
};

struct TapedLine {
  std::string name;
  Length taped;
  Length horizontal;                    // on the ground
  Length design;                        // on the ground
  std::optional<Length> by_the_others;  // this length as the others have it, where they fix it
};

struct TapeResult {
  std::vector<TapedLine> lines;
  // In the order of the tank's sides and diagonals; nothing where not taped.
  std::vector<std::optional<Length>> sides;
  std::vector<std::optional<Length>> diagonals;
  std::optional<Length> diagonal_difference;
  std::vector<Check> checks;
  Verdict verdict = Verdict::NotProven;
  std::optional<std::string> likely_wrong;
  std::optional<Length> likely_wrong_by;  // taped less what the others say
  std::string words;
};

struct PegsResult {
  ResultHead head;
  std::vector<Corner> corners;
  std::vector<ReferencePeg> reference;
  std::vector<NamedLength> sides;
  std::vector<NamedLength> diagonals;
  ScaleHere scale;
  std::optional<GeographicWay> geographic_way;
  std::vector<PipePoint> pipes;
  std::vector<ShaftPoint> shafts;
  std::vector<PolarRow> polar;
  std::vector<PolarRow> backsight_checks;
  std::optional<AsSetResult> as_set;
  std::optional<TapeResult> tape;
  // Drawn with the pegs.
  std::vector<GridPoint> toe;
  std::vector<std::vector<GridPosition>> crest;
};

}  // namespace squaredig::pegs
