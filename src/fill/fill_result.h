// The answer of the fill stage: what goes back in, layer by layer, and what to order.
#pragma once

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
  bool special = false;
};

struct CappingLayer {
  int layer = 0;  // from 1, upward
  Area area;      // of its underside
  CompactedVolume placed;
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
  std::optional<long> strips;
  std::optional<long> rolls;
  std::optional<Area> ordered;  // whole rolls
  std::string laid;             // in words: which way the strips run
};

struct LayerBuilt {
  std::string name;
  Length mean_thickness;
  Length thinnest;
  GridPoint thinnest_at;
  CompactedVolume volume;
  Area area;
  std::optional<Length> planned;
  std::optional<Length> uncertainty;
  Verdict verdict = Verdict::NotAsked;
};

struct DensityTests {
  std::size_t count = 0;
  Ratio mean;
  Ratio least;
  std::optional<Ratio> characteristic;  // mean - 0.92 s, of six tests or more
  std::string standard;                 // "standard" or "modified"
  Verdict verdict = Verdict::NotAsked;
  std::vector<std::string> failed;
};

struct UpliftStage {
  std::string stage;
  Force up;
  Force down;
  std::optional<double> ratio;  // nothing where there is no uplift
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
  std::vector<UpliftStage> uplift;
  std::string uplift_definition;
  std::optional<Length> cover_wanted;  // for the ratio entered, in the final stage
  std::optional<Length> least_cover_found;
};

}  // namespace squaredig::fill
