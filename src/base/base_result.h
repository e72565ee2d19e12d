// The answer of the base stage: a verdict with its checks, each point's deviation, the skin of
// bedding, and what to trim and make up.
//
// Frame and units: grid positions; deviation = measured less planned, positive = high.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "quantity/result_head.h"
#include "quantity/slope.h"
#include "quantity/tolerance.h"

namespace squaredig::base {

// What a check is measured in: a length, a cross-fall, or a ratio of densities.
using Amount = std::variant<Length, Fall, Ratio>;

// One check. Without a value the quantity could not be computed; without a limit it was not asked;
// without an uncertainty it carries none.
struct Check {
  std::string name;
  Verdict verdict = Verdict::NotAsked;
  std::optional<Amount> value;
  std::optional<Amount> limit;
  std::optional<Amount> uncertainty;
  std::optional<GridPoint> at;  // where the value was found
  std::string words;            // one plain sentence: where, and what would settle it
};

struct JudgedPoint {
  std::string point;
  std::string code;
  Place place;
  GridPosition at;
  Elevation dig_level;
  Length deviation;
  Length bedding;  // from here up to the underside of the tank, vertically
  Length uncertainty;
  Length along_ab;
  Length across_ab;
  Verdict verdict = Verdict::NotAsked;  // against level high and level low
  std::string finding;                  // empty: none
};

// A point that was not judged, and why.
struct PointAside {
  std::string point;
  Place place;
  GridPosition at;
  std::string why;
};

struct Deviations {
  Length mean;  // of the points
  std::optional<Length> area_mean;
  Length rms;
  Length high;
  Length low;
};

struct BestPlane {
  Elevation level_at_a;
  Fall fall;
  Bearing downhill;
};

struct Flatness {
  Length least_squares;
  Length minimum_zone;
};

// A part of the footprint where the bedding would be thinner than the least, or thicker than the
// most.
struct SkinPatch {
  Area area;
  Length worst;  // the bedding where it is thinnest, or thickest
  GridPoint at;  // there
  Length along_ab;
  Length across_ab;
  std::vector<std::vector<GridPoint>> rings;  // its outline, closed; outer ones anticlockwise
};

// An invert that goes with the tank, at both ends of the shift that fits.
struct ShiftedInvert {
  std::string name;
  Elevation planned;
  Elevation at_from;
  Elevation at_to;
};

// The bedding between the as-dug base and the underside of the tank.
struct Skin {
  Length thinnest;
  GridPoint thinnest_at;
  Length thickest;
  GridPoint thickest_at;
  Volume volume;        // under the tank, placed
  Volume wall_to_wall;  // over the whole floor, placed
  // Level shifts of the tank underside, up positive, that keep the skin within least and most.
  std::optional<std::pair<Length, Length>> shift_that_fits;
  std::string shift_words;             // what the shift does, or what it takes where none fits
  std::vector<ShiftedInvert> inverts;  // empty where no shift fits
  // Where the skin leaves least and most, largest first; nothing where that limit was not entered.
  std::optional<std::vector<SkinPatch>> too_thin;
  std::optional<std::vector<SkinPatch>> too_thick;
};

// The straightedge where it stands most open: its ends, where it touches, and the worst point.
struct RuleReading {
  Length opening;
  GridPoint from;
  GridPoint to;
  GridPoint touch_from;
  GridPoint touch_to;
  GridPoint worst;
};

// How far a joint between two neighbouring units opens over the tank's height. Units are counted
// from A: columns along A-B, rows into the tank, both from 1.
struct Joint {
  int column = 1;
  int row = 1;
  int to_column = 1;
  int to_row = 1;
  Length opening;  // above zero: at the top; below zero: at the bottom
  GridPoint from;  // the joint in plan, end to end
  GridPoint to;
};

struct StackGap {
  int columns = 0;
  int rows = 0;
  std::vector<Joint> joints;
  std::optional<Joint> widest;
  // The joints that open wider than the tolerance or, where none was entered, than half the widest;
  // the widest in any case. Widest first.
  std::vector<Joint> listed;
  Length listed_over;
  std::string on;  // what the units were stood on
};

// A place to trim or to make up to the dig level, and how deep at its points. `move` is the
// correction: down is negative.
enum class Work { Trim, MakeUp };
struct RepairSpot {
  std::string point;
  GridPoint at;
  Length along_ab;
  Length across_ab;
  Length move;
};
struct RepairPatch {
  int number = 0;
  Work work = Work::Trim;
  bool by_hand = false;  // too small for a machine down to the dig level
  int places = 1;        // connected places beyond the tolerance worked as one
  Area area;             // worked
  Area beyond;           // of that, beyond the tolerance
  Volume volume;         // down, or up, to the dig level
  RepairSpot deepest;
  std::vector<RepairSpot> spots;              // the points that ask for it, deepest first
  std::vector<std::vector<GridPoint>> rings;  // its outline, closed
  // Its reach, low and high: along A-B, and square to it into the tank.
  std::pair<Length, Length> along_ab;
  std::pair<Length, Length> across_ab;
  std::string note;  // empty: none
};

// A place no point is near: with a point there the coverage gets on.
struct HoleInSurvey {
  GridPoint at;
  Length along_ab;
  Length across_ab;
  Length radius;
};

// Which corners and sides of the floor the survey saw. A place is seen where a point lies within
// the coverage limit of it.
struct CornerSeen {
  std::string name;  // of the tank's corner by it
  GridPoint at;
  Length nearest;  // distance to the nearest point
  bool seen = false;
};
struct SideSeen {
  std::string name;  // of the tank's side by it
  Length length;
  Length unseen;  // in all
  // The longest stretch that was not seen, along the side from its first corner; both zero where
  // all was seen.
  Length from;
  Length to;
};
// A connected part of the floor farther than the spacing from every point.
struct FarPart {
  Area area;
  GridPoint at;  // farthest from all points
  Length along_ab;
  Length across_ab;
  Length distance;  // there
};
struct SurveyReach {
  Length limit;  // of coverage
  std::vector<CornerSeen> corners;
  std::vector<SideSeen> sides;
  std::vector<FarPart> far_parts;  // largest first
};

// A point that departs from its neighbours as ground hardly does, and that none of them bears out.
struct Outlier {
  std::string point;
  Place place;
  Length by;                    // above the plane of its neighbours
  std::string contradicted_by;  // a point at the same place that says otherwise; empty: none
};

struct CompactionOutcome {
  std::string layer;
  GridPoint at;
  Place place;
  Ratio ratio;
  Verdict verdict = Verdict::NotAsked;
};

// What the second survey says of a patch of the first: the worst verdict of its points there, and
// the point farthest from the dig level; nothing where no point stands there.
struct PatchAfter {
  RepairPatch patch;
  std::optional<Verdict> verdict;
  std::string point;
  Length deviation;
};

// The survey before the repair, and what the repair did to its checks.
struct BeforeRepair {
  std::optional<std::string> surveyed;  // when, in the user's words
  Verdict verdict = Verdict::NotProven;
  std::vector<Check> checks;
  std::vector<JudgedPoint> points;
  std::optional<Deviations> deviation;
  std::optional<BankVolume> trim;
  std::optional<Volume> make_up;
  // Checks that did not conform, or were not proven: those that conform now, and those that do not.
  std::vector<std::string> fixed;
  std::vector<std::string> not_fixed;
  std::vector<std::string> spoiled;  // checks that conformed and no longer do
  std::vector<PatchAfter> patches;
};

struct BaseResult {
  ResultHead head;
  Verdict verdict = Verdict::NotProven;
  std::vector<Check> checks;
  std::optional<std::string> surveyed;
  std::vector<JudgedPoint> points;
  std::vector<PointAside> aside;
  std::optional<Deviations> deviation;
  std::optional<BestPlane> best_plane;
  std::optional<Flatness> flatness;
  std::optional<Skin> skin;
  Area floor_area;
  std::optional<Area> measured_area;  // of the floor, inside the outermost points
  std::optional<BankVolume> trim;     // in the ground, above the dig level
  std::optional<Volume> make_up;      // below the dig level
  std::optional<Length> largest_hole;
  std::optional<HoleInSurvey> widest_hole;  // the largest circle with no point in it
  std::vector<HoleInSurvey> holes;   // where more points would bring the coverage inside its limit
  std::optional<SurveyReach> reach;  // nothing where no spacing was entered
  std::vector<RepairPatch> repair;
  std::vector<Outlier> outliers;
  std::optional<Verdict> verdict_without_outliers;
  std::optional<Deviations> bedding_top;  // as laid, from the underside of the tank
  std::optional<BeforeRepair> before;     // where a second survey was made after the repair
  std::optional<RuleReading> straightedge;
  std::optional<StackGap> stack_gap;
  std::vector<CompactionOutcome> compaction;
  // Drawn with the points.
  Bearing ab;
  std::vector<GridPoint> tank;
  std::vector<GridPoint> toe;
};

}  // namespace squaredig::base
