// The parts of the verdict, each a pure function of the floor as laid out.
#pragma once

#include "base/floor_internal.h"

namespace squaredig::base {

struct LevelAnswer {
  std::vector<JudgedPoint> points;
  Deviations deviation;
  std::vector<Check> checks;  // level high, level low, level mean
};
Deviations deviations_of(const Floor& floor);
LevelAnswer judge_levels(const BaseInput& input, const PlannedBase& planned, const Floor& floor);

struct PlaneAnswer {
  std::optional<Flatness> flatness;
  std::optional<BestPlane> best_plane;
  std::vector<Check> checks;  // flatness, fall
  std::vector<Finding> findings;
};
PlaneAnswer judge_plane(const BaseInput& input, const PlannedBase& planned, const Floor& floor);

struct CoverageAnswer {
  std::optional<Length> largest_hole;
  // Places where a point more would bring the coverage inside its limit, largest hole first.
  std::vector<HoleInSurvey> holes;
  std::optional<HoleInSurvey> widest_hole;
  std::optional<SurveyReach> reach;
  Check check;
};
CoverageAnswer judge_coverage(const BaseInput& input, const PlannedBase& planned,
                              const Floor& floor);

// Judged points, by number, that depart from their neighbours as ground hardly does.
struct OutlierRow {
  std::size_t point = 0;
  Length by;
  std::optional<std::size_t> contradicted_by;  // a point at the same place
};
std::vector<OutlierRow> find_outliers(const Floor& floor, const DugSurface& dug);
std::string outlier_words(const Outlier& outlier);

struct SkinAnswer {
  std::optional<Skin> skin;
  std::optional<Length> area_mean;
  std::optional<Area> measured_area;
  std::optional<BankVolume> trim;
  std::optional<Volume> make_up;
  std::vector<Check> checks;  // bedding thinnest, bedding thickest
  std::vector<std::string> assumed;
  std::vector<std::string> cautions;
  std::vector<Finding> findings;
};
SkinAnswer judge_skin(const BaseInput& input, const PlannedBase& planned, const Floor& floor,
                      const std::optional<DugSurface>& dug);

// Where the skin leaves least and most.
struct SkinPlan {
  std::optional<std::vector<SkinPatch>> too_thin;
  std::optional<std::vector<SkinPatch>> too_thick;
};
SkinPlan plan_skin(const PlannedBase& planned, const Floor& floor, const DugSurface& dug);
std::vector<Finding> skin_findings(const PlannedBase& planned, const Skin& skin);

// The level shift of the tank that needs no digging.
struct Shift {
  std::optional<std::pair<Length, Length>> fits;
  std::vector<ShiftedInvert> inverts;
  std::string words;
};
Shift fitting_shift(const PlannedBase& planned, Length thinnest, Length thickest);

struct StraightedgeAnswer {
  std::optional<RuleReading> reading;
  Check check;
};
StraightedgeAnswer judge_straightedge(const BaseInput& input, const PlannedBase& planned,
                                      const Floor& floor, const std::optional<DugSurface>& dug);

struct ExtentAnswer {
  Check check;
  std::vector<std::string> cautions;
};
ExtentAnswer judge_extent(const BaseInput& input, const PlannedBase& planned, const Floor& floor);

struct StackAnswer {
  std::optional<StackGap> gap;
  Check check;
  std::vector<Finding> findings;
  std::optional<Deviations> bedding_top;  // where the units stand on it
};
// `on`: what the units are stood on, in words.
StackAnswer judge_stack(const BaseInput& input, const PlannedBase& planned, const Floor& floor,
                        const std::optional<DugSurface>& dug, const std::string& on);

struct CompactionAnswer {
  std::vector<CompactionOutcome> outcomes;
  Check check;
};
CompactionAnswer judge_compaction(const BaseInput& input);

// "12.3 mm"
std::string in_mm(Length v);
// "+12.3 mm"
std::string signed_mm(Length v);
// "4.20 m along A-B, 1.75 m in"
std::string tied(const design::Tank& tank, GridPoint p);
// What the uncertainty of a check is made of.
struct MadeOf {
  std::size_t readings = 1;  // that have their own part in it
  std::string of;            // what they are readings of: "that point"
  bool shared = false;       // whether the part shared by all points counts
};
// What would settle a check that is not proven: the standard uncertainty it takes, and how many
// readings of what would bring it there; empty for all others.
std::string to_settle(const Check& check, const Floor& floor, const MadeOf& made_of);

}  // namespace squaredig::base
