#include <algorithm>

#include "geodesy/operation.h"
#include "pegs/parts_internal.h"
#include "quantity/number_text.h"

namespace squaredig::pegs {
namespace {

// What the longest side suffers between ground and grid, said once in millimetres.
std::string suffered(const design::Tank& tank, Ratio combined) {
  std::size_t longest = 0;
  for (std::size_t i = 1; i < tank.sides(); ++i)
    if (tank.side_length(i) > tank.side_length(longest)) longest = i;
  const Length grid = tank.side_length(longest);
  const Length difference = geodesy::to_ground_length(grid, combined) - grid;
  const std::string way = difference < Length{} ? " shorter" : " longer";
  return "Side " + tank.side_name(longest) + " is " + metres_text(grid) +
         " on the grid; on the ground it is " + millimetres_text(abs(difference)) + way +
         " (combined factor " + fixed(combined.value(), 8) + ").";
}

void set_factors(const Work& work, ScaleHere& scale, ResultHead& head) {
  const geodesy::Grid& grid = *work.on.grid;
  const Length height = work.tank().underside.level - Elevation{};
  const auto here = geodesy::work_factors(grid, work.tank().corners[0], height);
  scale.point_scale = here.grid.point_scale;
  scale.elevation = here.elevation;
  scale.mean_radius = here.grid.mean_radius;
  scale.convergence = here.grid.convergence;
  scale.grid_name = grid.name();
  scale.combined = here.combined;
  if (work.on.stated_factor || work.design.plan_lengths == design::PlanLengths::Ground) return;
  head.assumed.push_back(
      "The combined factor takes the tank's underside, " + metres_text(height) +
      ", as height above the ellipsoid and the Gaussian mean radius at the latitude, " +
      fixed(here.grid.mean_radius.in_metres(), 0) + " m; 6.5 m of height are 1 ppm.");
}

}  // namespace

// The tank by its first corner that is, and every control point that is, at once.
void refuse_swapped(const Work& work) {
  if (!work.on.grid) return;
  std::vector<Problem> problems;
  const auto look_at = [&](const Place& place, const std::string& what, GridPoint at) {
    if (work.on.grid->in_area(at) != geodesy::InArea::SwappedInside) return;
    problems.push_back({ProblemKind::Input, place,
                        what + " at " + at_text(at) + " lies outside the area of " +
                            work.on.grid->code() + " (" + work.on.grid->name() +
                            "), and inside it with easting and northing exchanged",
                        "easting before northing", "exchange the two, here and in the files"});
  };
  for (std::size_t i = 0; i < work.tank().corners.size() && problems.empty(); ++i)
    look_at(work.design.tank.place, "corner " + design::Tank::corner_name(i),
            work.tank().corners[i]);
  const PointTable& control = work.design.control;
  for (std::size_t i = 0; i < control.size(); ++i)
    look_at(control.place(i), "control point " + squaredig::quoted(control.label(i)),
            control.points[i].at.at);
  if (!problems.empty()) throw Refusal(std::move(problems));
}

ScaleHere scale_here(const Work& work, ResultHead& head) {
  ScaleHere scale;
  if (work.on.grid) {
    set_factors(work, scale, head);
    const auto& corners = work.tank().corners;
    const auto outside = std::find_if(corners.begin(), corners.end(), [&](GridPoint corner) {
      return work.on.grid->in_area(corner) == geodesy::InArea::Outside;
    });
    if (outside != corners.end())
      head.cautions.push_back(
          "Corner " +
          design::Tank::corner_name(static_cast<std::size_t>(outside - corners.begin())) + " at " +
          at_text(*outside) + " lies outside the area of use of " + work.on.grid->code() + ".");
    if (work.on.grid->withdrawn())
      head.cautions.push_back("The register marks " + work.on.grid->code() + " as withdrawn.");
  }
  if (work.on.stated_factor) scale.combined = *work.on.stated_factor;
  if (work.design.plan_lengths == design::PlanLengths::Ground)
    scale.combined = work.design.combined_factor;
  if (!work.on.grid && !work.on.stated_factor)
    head.assumed.emplace_back("On a local grid, grid and ground lengths are taken as equal.");
  scale.words = suffered(work.tank(), scale.combined);
  return scale;
}

void add_geographic(const Work& work, PegsResult& result) {
  if (!work.on.grid) return;
  auto found =
      geodesy::ToWgs84::search(*work.on.grid, work.tank().corners[0], work.design.tank.place);
  if (const auto* problem = std::get_if<Problem>(&found)) {
    result.head.cautions.push_back("No longitudes and latitudes of the pegs: " + problem->found +
                                   ".");
    return;
  }
  const auto& way = std::get<geodesy::ToWgs84>(found);
  result.geographic_way = {way.used().name, way.used().accuracy, way.used().software};
  const auto of = [&](GridPoint p) {
    const geodesy::Geographic g = way(p);
    return LatLong{g.latitude, g.longitude};
  };
  for (Corner& corner : result.corners) corner.geographic = of(corner.at.at);
  for (ReferencePeg& peg : result.reference) peg.geographic = of(peg.at);
  for (PipePoint& pipe : result.pipes) pipe.geographic = of(pipe.at);
  for (ShaftPoint& shaft : result.shafts) shaft.geographic = of(shaft.at);
}

NamedLength named_length(std::string name, Length grid, Ratio combined) {
  return {std::move(name), grid, geodesy::to_ground_length(grid, combined)};
}

std::vector<NamedLength> sides_of(const std::vector<GridPoint>& corners, Ratio combined) {
  std::vector<NamedLength> sides;
  const std::size_t n = corners.size();
  for (std::size_t i = 0; i < n; ++i)
    sides.push_back(
        named_length(design::Tank::corner_name(i) + design::Tank::corner_name((i + 1) % n),
                     distance(corners[i], corners[(i + 1) % n]), combined));
  return sides;
}

std::vector<NamedLength> diagonals_of(const std::vector<GridPoint>& corners, Ratio combined) {
  std::vector<NamedLength> diagonals;
  const std::size_t n = corners.size();
  for (std::size_t i = 0; i + 2 < n; ++i)
    for (std::size_t j = i + 2; j < n; ++j)
      if (i != 0 || j != n - 1)
        diagonals.push_back(
            named_length(design::Tank::corner_name(i) + design::Tank::corner_name(j),
                         distance(corners[i], corners[j]), combined));
  return diagonals;
}

}  // namespace squaredig::pegs
