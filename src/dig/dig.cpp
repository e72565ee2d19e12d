#include "dig/dig.h"

#include <algorithm>
#include <cmath>
#include <cstdint>

#include "design/excavated_surface.h"
#include "dig/dig_internal.h"
#include "geometry/closure.h"
#include "geometry/overlay.h"
#include "geometry/sum.h"
#include "quantity/number_text.h"

namespace squaredig::dig {
namespace {

BankVolume bank(double m3) { return BankVolume::cubic_metres(m3); }

std::vector<Rung> ladder(const Work& work, const std::optional<design::Laser>& laser) {
  const auto& tank = work.pit.tank;
  std::vector<Rung> rungs;
  for (std::size_t i = 0; i < tank.sides(); ++i) {
    const GridPoint p = tank.corners[i];
    const auto add = [&](const char* name, Elevation level) {
      rungs.push_back({name, level, design::Tank::corner_name(i),
                       laser ? laser->staff_reading({p, level}) : std::nullopt});
    };
    if (const auto z = work.locator.height_at(work.pit.frame.to_site(p)))
      add("ground", work.pit.frame.to_grid_height(*z));
    add("tank top", tank.top.at(p));
    add("tank underside", tank.underside.at(p));
    add("dig level", tank.dig_level.at(p));
  }
  return rungs;
}

void add_haul(const Work& work, DigResult& result) {
  const auto& input = work.input;
  if (input.strip)
    result.topsoil = bank(result.crest_area.in_square_metres() * input.strip->in_metres());
  if (!input.bulking) return;
  const auto loosened = [&](BankVolume v) {
    return LooseVolume::cubic_metres(v.in_cubic_metres() * input.bulking->value());
  };
  result.loose = loosened(result.cut);
  const BankVolume leaves = result.cut - input.keep.value_or(BankVolume{});
  result.hauled = loosened(std::max(leaves, BankVolume{}));
  if (input.truck) result.truckloads_by_volume = loads_for(*result.hauled, *input.truck);
  if (input.truck_mass) result.truckloads_by_mass = loads_for(*result.hauled, *input.truck_mass);
  result.truckloads = std::max(result.truckloads_by_volume, result.truckloads_by_mass);
  if (leaves < BankVolume{})
    result.head.findings.push_back(
        {"keep-more-than-cut", "keep_m3 is more than the whole cut: nothing leaves the site."});
}

void add_measures(const Work& work, DigResult& result) {
  const auto& dug = work.pit.dug;
  geometry::Sum length;
  for (const auto& ring : dug.rings)
    for (std::size_t i = 0; i < ring.corners.size(); ++i) {
      const auto d = ring.corners[(i + 1) % ring.corners.size()].plan() - ring.corners[i].plan();
      length.add(std::hypot(d.x, d.y));
    }
  result.cut = bank(dug.volume);
  result.crest_area = Area::square_metres(dug.area);
  result.crest_length = Length::metres(length.value());
  result.floor_area = Area::square_metres(geometry::area_of(work.pit.pit.toe));
  result.deepest_cut = Length::metres(dug.deepest);
  result.deepest_at = work.pit.frame.to_grid(dug.deepest_at);
  result.mean_cut = Length::metres(dug.area > 0 ? dug.volume / dug.area : 0);
  for (const GridPoint p : work.pit.tank.corners)
    result.tank.push_back({p, work.pit.tank.underside.at(p)});
  result.tank_height = work.pit.tank.height;
  result.toe = work.pit.toe;
  for (const auto& ring : work.pit.crest) result.crest.push_back(ring.corners);
}

void add_batters(const Work& work, DigResult& result) {
  const auto batters = design::batters_of(work.design.pit, work.pit.tank);
  for (std::size_t i = 0; i < batters.size(); ++i)
    result.batters.push_back({work.pit.tank.side_name(i), batters[i]});
  result.batter_given_by = work.design.pit.batter_given_by;
  result.surroundings.spoil_setback = work.input.spoil_setback;
}

void add_excavated(const Work& work, DigResult& result) {
  const auto made = design::excavated_surface(work.pit);
  auto& out = result.excavated;
  for (const auto& v : made.surface.vertices)
    out.mesh.vertices.push_back(work.pit.frame.to_grid(v));
  out.mesh.faces = made.surface.triangles;
  for (const auto kind : made.kinds) out.kinds.emplace_back(design::name_of(kind));
  for (const auto part : made.parts) out.parts.emplace_back(design::name_of(part));
  out.plan_area = Area::square_metres(geometry::plan_area(made.surface));
  out.surface_area = Area::square_metres(geometry::surface_area(made.surface));
}

void add_staff_findings(const design::Laser& laser, DigResult& result) {
  auto& findings = result.head.findings;
  findings.insert(findings.end(), laser.findings().begin(), laser.findings().end());
  std::vector<std::string> off;
  for (const auto& cell : result.grid.cells)
    if (cell.staff_reading && laser.off_staff(*cell.staff_reading)) off.push_back(cell.name());
  if (!off.empty())
    findings.push_back({"off-staff", std::to_string(off.size()) + " cells, first " + off.front() +
                                         ", read below zero or beyond the staff: set the laser "
                                         "higher or lower, or take a longer staff."});
}

// A ramp's floor has no outer end, and a bench is only where the ground reaches it: where the
// ground falls below them they are over.
bool is_toe_floor(const Work& work, const geometry::Facet& facet) {
  const auto part =
      static_cast<design::Part>(work.pit.dug.cuts[static_cast<std::size_t>(facet.cut)].part);
  return facet.kind == geometry::FacetKind::Floor && part != design::Part::Ramp &&
         part != design::Part::Bench;
}

}  // namespace

Depth depth_over(const Work& work, const geometry::Piece& piece) {
  return {work.ground.surface.plane(piece.triangle),
          work.pit.dug.facets[static_cast<std::size_t>(piece.facet)].plane};
}

std::string at_text(GridPoint p) {
  return "E " + fixed(p.easting.in_metres(), 3) + " N " + fixed(p.northing.in_metres(), 3);
}

void fill_to_floor(const Work& work, DigResult& result) {
  std::vector<geometry::PlaneFacet> floors;
  for (const auto& facet : work.pit.dug.facets)
    if (is_toe_floor(work, facet)) floors.push_back({facet.outline, facet.plane});
  const auto found = geometry::between(work.ground.surface, work.locator, floors);
  if (found.below <= 1e-9) return;
  result.fill_to_floor = Volume::cubic_metres(found.below);
  result.fill_to_floor_area = Area::square_metres(found.area_below);
  result.head.findings.push_back(
      {"ground-below-floor", "The ground lies below the dig level over " +
                                 fixed(found.area_below, 2) + " m2, by up to " +
                                 fixed(found.greatest_below, 2) + " m: " + fixed(found.below, 2) +
                                 " m3 would fill it up to the floor. Ask the engineer with what."});
}

void add_parts(const Work& work, DigResult& result) {
  double before = 0;
  const auto& all = work.pit.pit.cuts;
  for (int part = 0; part <= static_cast<int>(design::Part::Sump); ++part) {
    if (std::none_of(all.begin(), all.end(), [&](const auto& c) { return c.part == part; }))
      continue;
    std::vector<geometry::ConvexCut> cuts;
    for (const auto& cut : all)
      if (cut.part <= part) cuts.push_back(cut);
    const double volume = cuts.size() == all.size()
                              ? work.pit.dug.volume
                              : geometry::removed_volume(work.ground.surface, cuts);
    result.by_part.push_back(
        {design::name_of(static_cast<design::Part>(part)), bank(volume - before)});
    before = volume;
  }
}

void add_closure(const Work& work, DigResult& result) {
  const auto flux = geometry::flux_of(work.ground.surface, work.pit.dug);
  geometry::Sum cells;
  for (const auto& cell : result.grid.cells) cells.add(cell.cut.in_cubic_metres());
  result.closure = {bank(cells.value()), "flux through the closed solid", bank(flux.volume),
                    bank(flux.volume - work.pit.dug.volume),
                    Area::square_metres(std::hypot(flux.open_x, flux.open_y))};
}

namespace {

std::int64_t whole_loads(double loads) {
  const double nearest = std::round(loads);
  return std::lround(std::abs(loads - nearest) <= 1e-9 * std::max(1.0, nearest) ? nearest
                                                                                : std::ceil(loads));
}

}  // namespace

std::int64_t loads_for(LooseVolume loose, LooseVolume truck) { return whole_loads(loose / truck); }

std::int64_t loads_for(LooseVolume loose, const TruckMass& truck) {
  return whole_loads(loose.in_cubic_metres() * truck.loose.in_tonnes_per_cubic_metre() /
                     truck.load.in_tonnes());
}

DigResult dig(const DigInput& input, const design::DesignInput& design,
              const design::Excavation& pit, ground::Survey& survey) {
  const geometry::Locator locator(pit.ground.surface);
  const DugRows dug(pit);
  const Work work{input, design, pit, pit.ground, locator, dug};
  DigResult result;
  result.head.findings = pit.tank.findings;
  result.head.findings.insert(result.head.findings.end(), pit.findings.begin(), pit.findings.end());
  std::optional<design::Laser> laser;
  if (input.laser) laser = design::Laser::set_up(*input.laser, pit.tank, design.control);
  result.levels = ladder(work, laser);
  add_measures(work, result);
  add_batters(work, result);
  add_excavated(work, result);
  result.grid = cells_of(work, laser);
  result.raster = raster_of(work, result.grid);
  if (laser) add_staff_findings(*laser, result);
  result.uncertainty = uncertainty_of(work);
  result.spacing = spacing_of(work);
  add_haul(work, result);
  fill_to_floor(work, result);
  add_parts(work, result);
  result.sections = sections_of(work);
  add_closure(work, result);
  result.comparison = compare(work, result.grid);
  add_keep_out(work, survey, result);
  add_services(work, result);
  add_progress(work, result);
  if (input.rough_above && *input.rough_above > Length{})
    result.stop_level_at_a = pit.tank.dig_level.at(pit.tank.corners[0]) + *input.rough_above;
  add_vertical_faces(work, result);
  add_cautions(work, result);
  return result;
}

}  // namespace squaredig::dig
