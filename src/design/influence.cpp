#include "design/influence.h"

#include <algorithm>

#include "design/excavation_internal.h"

namespace squaredig::design {
namespace {

bool steeper(Batter batter, Batter influence) {
  return batter.run_per_rise() < influence.run_per_rise();
}

Batter flatter(Batter batter, Batter influence) {
  return steeper(batter, influence) ? influence : batter;
}

template <class Extra>
bool flatten_each(std::vector<Extra>& extras, Batter influence) {
  bool any = false;
  for (auto& extra : extras) {
    any = any || steeper(extra.batter, influence);
    extra.batter = flatter(extra.batter, influence);
  }
  return any;
}

// Nothing where no batter is steeper than the line. Benches and ramps have no toe of their own.
std::optional<DesignInput> flattened(const DesignInput& input, const Tank& tank, Batter influence,
                                     InfluenceFrom from) {
  DesignInput flat = input;
  flat.pit.batter = {};
  flat.pit.batter.place = input.pit.batter.place;
  flat.pit.benches.clear();
  flat.pit.ramps.clear();
  bool any = false;
  const auto batters = batters_of(input.pit, tank);
  for (std::size_t i = 0; i < batters.size(); ++i) {
    any = any || steeper(batters[i], influence);
    flat.pit.batter.by_side.emplace_back(tank.side_name(i), flatter(batters[i], influence));
  }
  if (from == InfluenceFrom::Floor) {
    flat.pit.sumps.clear();
    flat.pit.trenches.clear();
  } else {
    any = flatten_each(flat.pit.sumps, influence) || any;
    any = flatten_each(flat.pit.trenches, influence) || any;
  }
  return any ? std::optional(flat) : std::nullopt;
}

}  // namespace

InfluenceZone influence_zone(const DesignInput& input, const Excavation& pit, Batter influence,
                             InfluenceFrom from, ground::Survey& survey) {
  InfluenceZone found;
  const auto flat = flattened(input, pit.tank, influence, from);
  if (!flat) return found;
  Excavation zone;
  zone.frame = pit.frame;
  zone.tank = pit.tank;
  zone.toe = pit.toe;
  zone.pit = pit_cuts(*flat, zone.tank, zone.frame);
  dig_in(zone, survey, *flat);
  if (zone.dug.leaving.empty())
    found.zone = std::move(zone);
  else
    found.off_survey = zone.frame.to_grid(zone.dug.leaving.front().from);
  return found;
}

}  // namespace squaredig::design
