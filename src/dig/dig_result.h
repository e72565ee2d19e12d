// The answer of the dig stage: levels, volumes, crest, and the cut of each grid cell.
#pragma once

#include <cstdint>
#include <optional>

#include "quantity/angle.h"
#include "quantity/points.h"
#include "quantity/result_head.h"
#include "quantity/slope.h"
#include "quantity/tolerance.h"

namespace squaredig::dig {

// One rung of the level ladder at a tank corner.
struct Rung {
  std::string name;
  Elevation level;
  std::string at;
  std::optional<Length> staff_reading;  // of the laser, staff on that level
};

struct PartVolume {
  std::string part;
  BankVolume cut;
};

struct VolumeClosure {
  BankVolume cells_sum;
  std::string second_method;
  BankVolume second;
  BankVolume difference;  // second less first
  Area open;              // of the closed solid's outward vector areas; zero when closed
};

// What others may quote for the same pit; never used.
struct Comparison {
  BankVolume end_area;
  BankVolume prismoidal;  // over the same sections
  Length end_area_spacing;
  BankVolume grid;
  Length grid_spacing;
};

struct Uncertainty {
  BankVolume sigma;  // points and common part together
  BankVolume from_points;
  BankVolume from_common;
};

// What the ground may do between the surveyed points, judged by leaving each out in turn and
// reading the surface of the others at its place. No part of sigma.
struct SpacingEffect {
  std::size_t points = 0;  // that were left out, under the dig
  Length rms;              // of surveyed less read, each by its share of the dig
  Length mean;             // of the same: ground that is hollow or humped everywhere shows here
  // root of the sum of squares of each error times the ground it stands for
  BankVolume effect;
};

// How far something that stands or lies near is clear of the dig; below zero where the dig reaches
// past it by that much.
struct Nearby {
  std::string
      kind;  // "keep-out and crest", "keep-out and influence line", "service and excavation"
  std::string string;
  GridPoint at;
  Length distance;
  std::optional<Length> wanted;
  std::optional<Length> exposed;   // of a service: its length inside the dig
  std::optional<Elevation> level;  // of a service, at that place
};

// In front of one side of the toe, where least is to spare: how far it is to the nearest keep-out
// string, square to the side, and how far the batter goes there.
struct SideRoom {
  std::string side;
  std::optional<Length> available;  // nothing where no string lies in front
  Length needed;
  std::string string;
  GridPoint at;  // on the toe
};

// The batter of one side as it was entered.
struct SideBatter {
  std::string side;
  Batter batter;
};

// What is drawn round the pit.
struct Surroundings {
  std::vector<SurveyString> keep_out;
  std::vector<SurveyString> services;
  std::optional<Batter> influence;  // of the line, from the toe upward
  std::vector<std::vector<GridPosition>> influence_line;
  std::optional<Length> spoil_setback;  // from the crest
};

// One cell of the dig sheet that holds some of the cut.
struct Cell {
  int column = 0;  // along A-B, 0 begins at A
  int row = 0;     // across, 0 begins at A-B, into the tank
  GridPoint centre;
  Length along;  // of the centre, from A along A-B
  Length across;
  std::optional<Elevation> ground;
  std::optional<Elevation> dig_level;  // of the excavated surface; nothing where not dug
  std::optional<Length> cut_at_centre;
  Length mean_cut;
  BankVolume cut;
  Area area;
  std::string part;
  std::optional<Length> staff_reading;
  // "c3r-1"
  std::string name() const { return "c" + std::to_string(column) + "r" + std::to_string(row); }
};

struct CellGrid {
  Length size;
  int columns = 0;
  int rows = 0;
  int first_column = 0;
  int first_row = 0;
  GridPoint origin;         // outer corner of the first column and row
  Bearing bearing;          // of A-B
  std::vector<Cell> cells;  // by row, then column
};

// The cut at the centres of a regular grid. Columns run along `bearing`, rows to the right of it.
struct CutRaster {
  Length size;
  int columns = 0;
  int rows = 0;
  GridPoint origin;  // outer corner of the first column and row
  Bearing bearing;
  std::vector<std::optional<Length>> cut;  // row by row; nothing where not dug
};

// A point of a section through the pit: where nothing is dug, the ground alone.
struct SectionPoint {
  Length distance;  // along A-B from A, or across from A-B
  std::optional<Elevation> ground;
  std::optional<Elevation> excavated;
};

struct Section {
  std::string name;
  std::string along;  // what the distance is measured along, in words
  Length tank_from;   // the tank's extent along the section
  Length tank_to;
  Elevation underside_from;
  Elevation underside_to;
  std::vector<SectionPoint> points;
};

// A face without a batter, where it is highest.
struct VerticalFace {
  std::string name;  // "on side CD", "of sumps"
  Length height;
  GridPoint at;
};

// The excavated surface inside the crest, with what each of its faces is and the part it belongs
// to. A vertical face keeps its toe; its top edge stands a millimetre further out.
struct ExcavatedMesh {
  SurfaceMesh mesh;
  std::vector<std::string> kinds;  // "floor", "batter", "vertical face"
  std::vector<std::string> parts;
  Area plan_area;
  Area surface_area;
};

// The over-dig inside one cell of the dig sheet.
struct OverDigCell {
  std::string cell;
  BankVolume volume;
  Area area;
};

// One survey made during the dig, inside the design's crest: against the last survey (the existing
// ground before the first), and against the design. Where it has no points the ground counts as it
// was last. Sigmas are nothing where points have none.
struct ProgressResult {
  std::string name;
  Area surveyed;   // of the dug region
  BankVolume dug;  // since the last; what was put back counts against it
  std::optional<BankVolume> dug_sigma;
  BankVolume remaining;  // above the design
  std::optional<BankVolume> remaining_sigma;
  BankVolume over_dig;  // below the design
  std::optional<BankVolume> over_dig_sigma;
  std::optional<LooseVolume> dug_loose, remaining_loose, over_dig_loose;
  Area over_dig_area;
  Length deepest_over_dig;
  std::optional<GridPoint> deepest_at;
  std::vector<OverDigCell> over_dig_plan;
};

struct DigResult {
  ResultHead head;
  std::vector<Rung> levels;
  BankVolume cut;
  std::optional<Uncertainty> uncertainty;
  std::optional<SpacingEffect> spacing;
  std::optional<LooseVolume> loose;
  std::optional<LooseVolume> hauled;       // what leaves: loose, less what is kept
  std::optional<std::int64_t> truckloads;  // by volume or by mass, whichever takes more
  std::optional<std::int64_t> truckloads_by_volume;
  std::optional<std::int64_t> truckloads_by_mass;
  std::optional<BankVolume> topsoil;  // of the cut, stripped first
  Volume fill_to_floor;
  Area fill_to_floor_area;
  Area floor_area;
  Area crest_area;
  Length crest_length;
  Length deepest_cut;
  GridPoint deepest_at;
  Length mean_cut;
  std::vector<PartVolume> by_part;
  std::vector<VerticalFace> vertical_faces;
  std::vector<Nearby> nearby;   // every string of the site, each against what it may clash with
  std::vector<Nearby> clashes;  // those of them that clash
  std::vector<SideRoom> room;
  std::vector<SideBatter> batters;  // in the order of the tank's sides
  std::optional<std::string> batter_given_by;
  Surroundings surroundings;
  VolumeClosure closure;
  Comparison comparison;
  CellGrid grid;
  CutRaster raster;
  std::vector<ProgressResult> progress;      // in order
  std::optional<Elevation> stop_level_at_a;  // first stop, above the dig level
  std::vector<GridPosition> tank;            // corners at the underside
  Length tank_height;
  std::vector<Section> sections;  // along the tank and across it, through its middle
  std::vector<GridPosition> toe;
  std::vector<std::vector<GridPosition>> crest;
  ExcavatedMesh excavated;
};

}  // namespace squaredig::dig
