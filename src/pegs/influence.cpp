#include <algorithm>

#include "pegs/parts_internal.h"

namespace squaredig::pegs {
namespace {

// Every batter at least as flat as the influence line, nothing but the floor dug. Nothing where no
// side is steeper.
std::optional<design::DesignInput> flattened(const Work& work, Batter influence) {
  design::DesignInput flat = work.design;
  const auto batters = design::batters_of(work.design.pit, work.tank());
  flat.pit.batter = {};
  flat.pit.batter.place = work.design.pit.batter.place;
  bool steeper = false;
  for (std::size_t i = 0; i < batters.size(); ++i) {
    steeper = steeper || batters[i].run_per_rise() < influence.run_per_rise();
    flat.pit.batter.by_side.emplace_back(
        work.tank().side_name(i),
        Batter::run_per_rise(std::max(batters[i].run_per_rise(), influence.run_per_rise())));
  }
  if (!steeper) return std::nullopt;
  flat.pit.benches.clear();
  flat.pit.ramps.clear();
  flat.pit.sumps.clear();
  flat.pit.trenches.clear();
  return flat;
}

bool inside(const ground::Region& region, GridPoint p) {
  return region.low.easting <= p.easting && p.easting <= region.high.easting &&
         region.low.northing <= p.northing && p.northing <= region.high.northing;
}

ground::Region widened(const ground::Region& region, Length by) {
  return {{region.low.easting - by, region.low.northing - by},
          {region.high.easting + by, region.high.northing + by}};
}

bool rings_inside(const design::Excavation& pit, const ground::Region& region) {
  return std::all_of(pit.dug.rings.begin(), pit.dug.rings.end(), [&](const geometry::Ring& ring) {
    return std::all_of(ring.corners.begin(), ring.corners.end(), [&](geometry::Point3 p) {
      return inside(region, pit.frame.to_grid(p.plan()));
    });
  });
}

}  // namespace

std::optional<design::Excavation> influence_pit(const Work& work, ground::Survey& survey,
                                                std::vector<Finding>& findings) {
  if (!work.input.site || !work.input.site->influence) return std::nullopt;
  const auto flat = flattened(work, *work.input.site->influence);
  if (!flat) return std::nullopt;
  design::Excavation zone = work.pit;
  zone.pit = design::pit_cuts(*flat, zone.tank, zone.frame);
  ground::Region region = work.pit.region;
  for (Length margin = Length::metres(10);; margin = margin * 2) {
    region = widened(region, margin);
    zone.dug = geometry::cut(survey.surface_for(region).surface, zone.pit.cuts);
    if (rings_inside(zone, region)) break;
  }
  if (zone.dug.leaving.empty()) return zone;
  findings.push_back(
      {"influence-off-survey",
       "The influence line, " + work.input.site->influence->words() +
           " from the toe, runs out of the survey near " +
           at_text(zone.frame.to_grid(zone.dug.leaving.front().from)) +
           ": pegs are placed by offset and crest alone. Survey further out there."});
  return std::nullopt;
}

}  // namespace squaredig::pegs
