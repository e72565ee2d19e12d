#include <algorithm>
#include <limits>

#include "geometry/locate.h"
#include "geometry/polygon.h"
#include "ground/part.h"
#include "pegs/parts_internal.h"

namespace squaredig::pegs {
namespace {

Length nearest_crest(const design::Excavation& pit, GridPoint p, Length without_crest) {
  const geometry::Point2 q = pit.frame.to_site(p);
  double least = std::numeric_limits<double>::infinity();
  for (const auto& ring : pit.dug.rings)
    for (std::size_t i = 0; i < ring.corners.size(); ++i)
      least = std::min(
          least, geometry::distance_to_segment(q, ring.corners[i].plan(),
                                               ring.corners[(i + 1) % ring.corners.size()].plan()));
  return pit.dug.rings.empty() ? without_crest : Length::metres(least);
}

ReferencePeg place_one(const Work& work, PegSpot spot,
                       const std::optional<design::Excavation>& influence) {
  const design::Tank& tank = work.tank();
  const GridPoint corner = tank.corners[spot.corner];
  const Bearing way = outward(tank, spot);
  const Length crest = work.pit.reach(corner, way);
  ReferencePeg peg;
  peg.name = peg_name(spot);
  peg.corner = design::Tank::corner_name(spot.corner);
  peg.side = tank.side_name(side_of(tank, spot));
  peg.string_line = string_name(tank, side_of(tank, spot));
  peg.beyond_corner = work.on_grid(work.input.offset);
  if (const Length clear = crest + work.on_grid(work.input.setback); clear > peg.beyond_corner) {
    peg.beyond_corner = clear;
    peg.placed_by = PegRule::Setback;
  }
  if (influence)
    if (const Length line = influence->reach(corner, way); line > peg.beyond_corner) {
      peg.beyond_corner = line;
      peg.placed_by = PegRule::Influence;
    }
  peg.at = ahead(corner, way, peg.beyond_corner);
  peg.clear_of_crest = peg.beyond_corner - crest;
  peg.nearest_crest = nearest_crest(work.pit, peg.at, peg.clear_of_crest);
  return peg;
}

ground::Region region_of(const std::vector<ReferencePeg>& pegs) {
  const Length margin = Length::metres(1);
  ground::Region region{pegs.front().at, pegs.front().at};
  for (const ReferencePeg& peg : pegs) {
    region.low.easting = std::min(region.low.easting, peg.at.easting - margin);
    region.low.northing = std::min(region.low.northing, peg.at.northing - margin);
    region.high.easting = std::max(region.high.easting, peg.at.easting + margin);
    region.high.northing = std::max(region.high.northing, peg.at.northing + margin);
  }
  return region;
}

void read_ground(const Work& work, ground::Survey& survey, std::vector<ReferencePeg>& pegs) {
  const ground::Region region = region_of(pegs);
  const ground::GroundSurface& survey_ground = survey.surface_for(region);
  std::vector<geometry::Point2> places;
  places.reserve(pegs.size());
  for (const ReferencePeg& peg : pegs) places.push_back(survey_ground.frame.to_site(peg.at));
  // the whole may be a large survey's: the pegs need what lies round them
  const ground::GroundSurface ground = ground::part_of(survey_ground, places, region);
  const geometry::Locator locator(ground.surface);
  for (ReferencePeg& peg : pegs) {
    const auto height = locator.height_at(ground.frame.to_site(peg.at));
    if (!height) continue;
    peg.ground = ground.frame.to_grid_height(*height);
    const design::Tank& tank = work.tank();
    for (std::size_t i = 0; i < tank.sides(); ++i)
      if (design::Tank::corner_name(i) == peg.corner)
        peg.cut = *peg.ground - tank.dig_level.at(tank.corners[i]);
    if (work.laser) peg.staff_reading = work.laser->staff_reading({peg.at, *peg.ground});
  }
}

// Why there is no room for the peg of a re-entrant corner beyond the far crest; empty where there
// is.
std::string no_room(const ReferencePeg& peg, const std::optional<std::string>& crossed) {
  if (!peg.ground) return "beyond the far crest it would stand off the survey";
  if (crossed)
    return "beyond the far crest it would stand across the keep-out string " + quoted(*crossed);
  return {};
}

void tell(const Work& work, const ReferencePeg& peg, const std::optional<std::string>& crossed,
          ResultHead& head) {
  const std::string where = "Peg " + peg.name + " at " + at_text(peg.at);
  if (!peg.ground)
    head.findings.push_back(
        {"peg-off-survey", where + " stands off the survey: its ground level is not known."});
  if (crossed)
    head.findings.push_back(
        {"peg-keep-out", where + " clashes: its string crosses the keep-out string " +
                             quoted(*crossed) + " on the way from corner " + peg.corner + "."});
  if (peg.staff_reading && work.laser->off_staff(*peg.staff_reading))
    head.findings.push_back(
        {"peg-staff",
         where + ": the staff reading " + metres_text(*peg.staff_reading) + " is off the staff."});
}

// A crest that runs askew comes nearer sideways than along the string: told once, from a twentieth
// of the setback on.
void tell_sideways(const Work& work, const std::vector<ReferencePeg>& pegs, ResultHead& head) {
  const Length setback = work.on_grid(work.input.setback);
  const ReferencePeg* nearest = nullptr;
  std::string names;
  for (const ReferencePeg& peg : pegs) {
    if (peg.nearest_crest >= setback * 0.95) continue;
    names += (names.empty() ? "" : ", ") + peg.name;
    if (nearest == nullptr || peg.nearest_crest < nearest->nearest_crest) nearest = &peg;
  }
  if (nearest == nullptr) return;
  head.cautions.push_back(
      "Pegs are clear of the crest by the setback along their strings; sideways "
      "the crest comes nearer to " +
      names + ": " + metres_text(nearest->nearest_crest) + " at " + nearest->name + ".");
}

}  // namespace

std::vector<ReferencePeg> place_pegs(const Work& work, ground::Survey& survey, ResultHead& head) {
  const auto influence = influence_pit(work, survey, head.findings);
  const auto spots = all_spots(work.tank());
  std::vector<ReferencePeg> all;
  all.reserve(spots.size());
  for (const PegSpot spot : spots) all.push_back(place_one(work, spot, influence));
  read_ground(work, survey, all);
  std::vector<ReferencePeg> kept;
  for (std::size_t i = 0; i < spots.size(); ++i) {
    const GridPoint corner = work.tank().corners[spots[i].corner];
    const auto crossed = crossed_string(work, corner, all[i].at);
    const bool re_entrant =
        interior_angle(work.tank().corners, spots[i].corner) > Angle::degrees(180);
    const std::string why = re_entrant ? no_room(all[i], crossed) : std::string();
    if (!why.empty()) {
      head.findings.push_back({"peg-left-out", "Peg " + all[i].name + " of the re-entrant corner " +
                                                   all[i].corner + " is left out: " + why + "."});
      continue;
    }
    tell(work, all[i], crossed, head);
    kept.push_back(std::move(all[i]));
  }
  tell_sideways(work, kept, head);
  return kept;
}

}  // namespace squaredig::pegs
