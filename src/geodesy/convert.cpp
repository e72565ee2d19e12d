#include "geodesy/convert.h"

#include <cmath>

#include "geodesy/proj_internal.h"
#include "quantity/number_text.h"

namespace squaredig::geodesy {
namespace {

// Latitude and longitude of a position, whatever its system counts in.
Geographic place_of(PJ_CONTEXT* context, const PJ* system, Position p, const Place& place) {
  Owned<PJ> plan;
  if (proj_get_type(system) == PJ_TYPE_COMPOUND_CRS)
    plan.reset(proj_crs_get_sub_crs(context, system, 0));
  else
    plan.reset(proj_clone(context, system));
  if (axes_of(context, plan.get(), place).geographic)
    return {Angle::degrees(p.north), Angle::degrees(p.east)};
  const Owned<PJ> base(proj_crs_get_geodetic_crs(context, plan.get()));
  const Owned<PJ> raw(
      proj_create_crs_to_crs_from_pj(context, plan.get(), base.get(), nullptr, nullptr));
  const Owned<PJ> way(raw ? proj_normalize_for_visualization(context, raw.get()) : nullptr);
  const PJ_COORD out =
      way ? proj_trans(way.get(), PJ_FWD, proj_coord(p.east, p.north, 0, HUGE_VAL)) : PJ_COORD{};
  if (!way || proj_errno(way.get()) != 0 || !std::isfinite(out.v[0]) || !std::isfinite(out.v[1]))
    refuse(place, "a point that " + quoted(text_of(proj_get_name(system))) + " cannot take",
           "coordinates in the system the file names",
           "check the file's reference system and the order of its columns");
  return {Angle::degrees(out.v[1]), Angle::degrees(out.v[0])};
}

}  // namespace

Converted convert(std::vector<Position> points, std::string_view from, std::string_view to,
                  Length worst, const Place& place) {
  const Owned<PJ_CONTEXT> context = offline_context(place);
  const Owned<PJ> source = crs_from_code(context.get(), from, place);
  const Owned<PJ> target = crs_from_code(context.get(), to, place);
  // positions are east before north already, so the order of axes makes no difference
  const bool same =
      proj_is_equivalent_to_with_ctx(context.get(), source.get(), target.get(),
                                     PJ_COMP_EQUIVALENT_EXCEPT_AXIS_ORDER_GEOGCRS) != 0;
  if (same || points.empty()) return {std::move(points), std::nullopt};
  const Geographic near = place_of(context.get(), source.get(), points.front(), place);
  const Operation way = Operation::best(from, to, near, place);
  if (way.used().accuracy > worst)
    refuse(place,
           "the way from " + std::string(from) + " to " + std::string(to) + " (" + way.used().name +
               ") is good to " + shortest(way.used().accuracy.in_metres()) + " m only",
           "a way good to " + shortest(worst.in_metres()) + " m",
           "export the file in the job's own reference system");
  for (Position& p : points) p = way.apply(p);
  return {std::move(points), way.used()};
}

}  // namespace squaredig::geodesy
