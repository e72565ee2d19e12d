// The drawing of the pit as convex cuts.
//
// What: the toe of the floor, offset from the tank by the gap of each side, and every part of the
//   pit as cuts of the kernel, numbered by part in the order in which volumes are told.
// Frame and units: the site frame of the survey.
// Laws: pit.1  a toe line lies in its batter's plane, which rises 1 / run square to it in plan;
//   pit.2  a non-convex floor is covered by convex ones whose sides all lie on true sides.
// Accuracy: one rounding per coordinate.
// Errors: Refusal with the job file's line: a side name that is not one, a batter flatter than the
//   floor it leaves, gaps that make the toe cross itself.
// Source: plane geometry; docs/decisions.
#pragma once

#include "design/tank.h"
#include "geometry/convex_cut.h"
#include "geometry/site_frame.h"

namespace squaredig::design {

enum class Part { Floor, Bench, Ramp, Trench, Sump };
constexpr const char* name_of(Part part) {
  switch (part) {
    case Part::Floor:
      return "floor and batters";
    case Part::Bench:
      return "benches";
    case Part::Ramp:
      return "ramps";
    case Part::Trench:
      return "trenches";
    default:
      return "sumps";
  }
}

struct PitCuts {
  geometry::Polygon toe;  // of the floor, anticlockwise; edge i belongs to side toe_sides[i]
  std::vector<std::size_t> toe_sides;
  std::vector<geometry::ConvexCut> cuts;
  std::vector<std::string> cautions;
};

PitCuts pit_cuts(const DesignInput& input, const Tank& tank, const geometry::SiteFrame& frame);

// The values of a per-side table, one for each side of the tank.
std::vector<Length> gaps_of(const PitInput& pit, const Tank& tank);
std::vector<Batter> batters_of(const PitInput& pit, const Tank& tank);

}  // namespace squaredig::design
