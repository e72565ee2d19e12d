// The answer of the fill stage: what goes back in, layer by layer, and what to order.
#pragma once

#include <chrono>
#include <cstdint>
#include <optional>

#include "quantity/angle.h"
#include "quantity/position.h"
#include "quantity/result_head.h"
#include "quantity/tolerance.h"

namespace squaredig::fill {

struct SideLift {
  int lift = 0;    // from 1, upward
  Elevation from;  // at corner A
  Elevation to;
  CompactedVolume placed;  // without the pipes that run through it
  BankVolume in_the_ground;
  std::optional<LooseVolume> loose;
  bool special = false;
};

struct CappingLayer {
  int layer = 0;   // from 1, upward
  Elevation from;  // at corner A
  Elevation to;
  Area area;  // of its underside
  CompactedVolume placed;
  BankVolume in_the_ground;
  std::optional<LooseVolume> loose;
};

struct FillClosure {
  Volume cut;
  Volume sum;         // of all fills
  Volume difference;  // sum less (cut + fill to floor + above ground - left open)
};

// One line of the order list: placed measure, and what it takes in other measures.
struct Material {
  std::string what;
  CompactedVolume placed;
  BankVolume in_the_ground;
  std::optional<LooseVolume> loose;
  std::optional<double> tonnes;
};

// A sheet material: net area, area with laps, and how it is cut from rolls.
struct Sheet {
  Area net;
  std::optional<Area> with_laps;
  std::optional<std::int64_t> strips;
  std::optional<std::int64_t> rolls;
  std::optional<Area> ordered;  // whole rolls
  std::optional<Area> waste;    // ordered less with laps
  std::string laid;             // in words: which way the strips run
};

// A surveyed point of a layer's top, and how thick the layer is there.
struct LayerPoint {
  std::string point;
  GridPosition at;
  Length thickness;
};

struct LayerBuilt {
  std::string name;
  Length mean_thickness;
  Length thinnest;
  GridPoint thinnest_at;
  Length thickest;
  GridPoint thickest_at;
  CompactedVolume volume;
  Area area;         // measured
  Area wanted_area;  // of the capping, as far as the job asks for it
  std::optional<Length> planned;
  std::optional<Length> tolerance;
  std::optional<Length> uncertainty;
  Verdict verdict = Verdict::NotAsked;
  std::vector<LayerPoint> points;
};

// One test of the register, judged.
struct DensityTest {
  std::string layer;
  GridPoint at;
  Place place;
  Ratio ratio;
  Verdict verdict = Verdict::NotAsked;
};

// The tests of one layer. The largest untested area is a circle centred over the tank or, where
// every test lies beside the tank, centred on its outline: no test lies inside it.
struct TestedLayer {
  std::string layer;
  std::size_t count = 0;
  Ratio mean;
  Ratio least;
  std::optional<Ratio> characteristic;  // mean - 0.92 s, of six tests or more
  Verdict verdict = Verdict::NotAsked;
  Length untested;  // its radius
  GridPoint untested_at;
  Length along_ab;  // of its centre
  Length across_ab;
};

struct DensityTests {
  std::size_t count = 0;
  Ratio mean;
  Ratio least;
  std::optional<Ratio> characteristic;  // mean - 0.92 s, of six tests or more
  Ratio wanted;
  std::optional<Ratio> wanted_mean, wanted_characteristic;  // of a layer
  std::string standard;                                     // "standard" or "modified"
  std::string rounding;                                     // the rule, in words
  Verdict verdict = Verdict::NotAsked;
  std::vector<std::string> failed;
  std::vector<TestedLayer> layers;  // in the order of the register
  std::vector<DensityTest> tests;
};

// One line of the log of lifts: how far its side then stands above the lowest one opposite.
struct LiftStep {
  std::string lift;
  std::string side;
  std::chrono::year_month_day date{};
  Length above_underside;
  std::string opposite;
  Length ahead;          // above zero: the fill is higher on this side
  bool too_far = false;  // by more than one lift
};

struct UpliftStage {
  std::string stage;
  Force up;
  Force down;
  std::optional<double> ratio;  // nothing where there is no uplift
};

// What the screening was made with.
struct UpliftInputs {
  Elevation water;
  UnitWeight cover;
  Ratio wanted;
  Force tank;  // its empty weight
};

struct FillResult {
  ResultHead head;
  CompactedVolume bedding;
  Volume tank;
  Volume pipe;
  std::vector<SideLift> side_fill;
  CompactedVolume special;
  CompactedVolume side;  // the rest of the side fill
  std::vector<CappingLayer> capping;
  CompactedVolume ramp;
  CompactedVolume sump;
  CompactedVolume trench;
  CompactedVolume finish;
  Volume fill_to_floor;
  Volume above_ground;
  Volume left_open;
  FillClosure closure;
  std::vector<Material> materials;
  std::vector<std::string> factors;  // conversions as sentences
  Sheet geotextile;
  Sheet geogrid;
  Sheet liner;
  std::vector<LayerBuilt> layers;
  std::optional<DensityTests> tests;
  std::vector<LiftStep> lift_log;
  std::vector<UpliftStage> uplift;
  std::optional<UpliftInputs> uplift_inputs;
  std::string uplift_definition;
  std::optional<Length> cover_wanted;  // over the tank top, even, for the ratio entered
  std::optional<Length> least_cover_wanted;
  std::optional<Length> least_cover_found;
  // Drawn with the fill.
  Bearing ab;
  std::vector<GridPosition> tank_corners;  // corners at the underside
  Length tank_height;
  Elevation dig_level;  // at corner A
  std::vector<GridPoint> toe;
};

}  // namespace squaredig::fill
