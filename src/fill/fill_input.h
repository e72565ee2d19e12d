// What the fill stage works from: the tables [fill] and [water] as checked, with their files read.
#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "quantity/compaction_test.h"
#include "quantity/points.h"

namespace squaredig::fill {

// A roll of sheet as delivered.
struct Roll {
  Length width;
  Length length;
};

// What one cubic metre weighs once placed.
struct PlacedDensities {
  std::optional<Density> bedding;
  std::optional<Density> special;
  std::optional<Density> side;
  std::optional<Density> capping;
};

// What the work is finished to.
struct ExistingGround {};
using Finish = std::variant<ExistingGround, Elevation, SurfaceMesh>;

// A layer surveyed after it was placed.
struct LayerSurvey {
  std::string name;
  PointTable points;
  Place place;
};

// One line of the log of lifts.
struct LiftRecord {
  std::string lift;
  std::string side;
  std::chrono::year_month_day date{};
  Length above_underside;
  Place place;
};

enum class DensityStandard { Standard, Modified };

struct FillInput {
  Length side_lift;
  Length special_height;        // from the tank underside
  std::vector<Length> capping;  // upward from the tank top
  Length capping_beyond;        // geogrid and capping past the footprint
  Length geotextile_lap;
  Length geogrid_lap;
  Length liner_lap;
  int geogrid_layers = 0;
  std::optional<Roll> geotextile;
  std::optional<Roll> geogrid;
  std::optional<Roll> liner;
  Finish finish;
  Ratio compacted_per_bank;  // 1 m3 in the ground becomes this much compacted
  std::optional<PlacedDensities> placed_density;
  std::vector<LayerSurvey> layers;  // in order
  std::optional<Length> layer_tolerance;
  std::optional<std::vector<LiftRecord>> lift_log;
  std::optional<std::vector<CompactionTest>> tests;
  std::optional<Ratio> density_ratio;
  std::optional<DensityStandard> density_standard;
  // Asked of a layer as a whole: of the mean of its tests, and of their characteristic value.
  std::optional<Ratio> density_mean;
  std::optional<Ratio> density_characteristic;
  std::optional<Length> least_cover;
  Place place;
};

struct WaterInput {
  Elevation level;  // highest credible groundwater
  UnitWeight cover_unit_weight;
  Ratio ratio_wanted;
  Place place;
};

}  // namespace squaredig::fill
