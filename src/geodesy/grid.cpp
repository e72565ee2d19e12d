#include "geodesy/grid.h"

#include <cmath>

#include "geodesy/proj_internal.h"

namespace squaredig::geodesy {

struct Grid::Impl {
  Owned<PJ_CONTEXT> context;
  std::string code;
  std::string name;
  std::string geographic_code;
  Place place;
  bool withdrawn = false;
  std::optional<AreaOfUse> area;
  Owned<PJ> east_north;  // the same system with easting first, in metres
  Owned<PJ> projection;  // longitude, latitude in degrees to easting, northing
  double semi_major = 0;
  double eccentricity_squared = 0;
};

namespace {

void require_greenwich(PJ_CONTEXT* context, const PJ* base, const Place& place) {
  const Owned<PJ> meridian(proj_get_prime_meridian(context, base));
  double longitude = 0;
  if (meridian)
    proj_prime_meridian_get_parameters(context, meridian.get(), &longitude, nullptr, nullptr);
  if (longitude != 0)
    refuse(place, "longitudes counted from " + quoted(text_of(proj_get_name(meridian.get()))),
           "a grid whose longitudes count from Greenwich", "use the region's modern grid");
}

std::optional<AreaOfUse> area_of(PJ_CONTEXT* context, const PJ* crs) {
  constexpr double kUnknown = -1000;
  double west = 0, south = 0, east = 0, north = 0;
  const char* name = nullptr;
  if (proj_get_area_of_use(context, crs, &west, &south, &east, &north, &name) == 0 ||
      west == kUnknown)
    return std::nullopt;
  return AreaOfUse{text_of(name),
                   {Angle::degrees(south), Angle::degrees(west)},
                   {Angle::degrees(north), Angle::degrees(east)}};
}

bool holds(const AreaOfUse& area, Geographic g) {
  const bool between = area.south_west.longitude <= area.north_east.longitude;
  const bool after = g.longitude >= area.south_west.longitude;
  const bool before = g.longitude <= area.north_east.longitude;
  return g.latitude >= area.south_west.latitude && g.latitude <= area.north_east.latitude &&
         (between ? after && before : after || before);
}

// Nothing where the projection cannot take the coordinates.
std::optional<PJ_COORD> moved(PJ* projection, PJ_DIRECTION way, double first, double second) {
  proj_errno_reset(projection);
  const PJ_COORD out = proj_trans(projection, way, proj_coord(first, second, 0, 0));
  if (proj_errno(projection) != 0 || !std::isfinite(out.v[0]) || !std::isfinite(out.v[1])) {
    proj_errno_reset(projection);
    return std::nullopt;
  }
  return out;
}

std::optional<Geographic> geographic_of(PJ* projection, GridPoint p) {
  const auto out = moved(projection, PJ_INV, p.easting.in_metres(), p.northing.in_metres());
  if (!out) return std::nullopt;
  return Geographic{Angle::degrees(out->v[1]), Angle::degrees(out->v[0])};
}

Length gaussian_mean_radius(double semi_major, double eccentricity_squared, Angle latitude) {
  const double s = sine(latitude);
  return Length::metres(semi_major * std::sqrt(1 - eccentricity_squared) /
                        (1 - eccentricity_squared * s * s));
}

}  // namespace

Grid Grid::open(std::string_view crs, const Place& place) {
  auto impl = std::make_shared<Impl>();
  impl->context = offline_context(place);
  PJ_CONTEXT* context = impl->context.get();
  impl->code = std::string(crs);
  impl->place = place;
  const Owned<PJ> system = crs_from_code(context, crs, place);
  impl->name = text_of(proj_get_name(system.get()));
  if (proj_get_type(system.get()) != PJ_TYPE_PROJECTED_CRS)
    refuse(place, quoted(crs) + " (" + impl->name + ") is not a projected grid",
           "a projected coordinate reference system in metres", "write the code of the job's grid");
  axes_of(context, system.get(), place, AxisUnits::MetresAlone);
  const Owned<PJ> base(proj_crs_get_geodetic_crs(context, system.get()));
  require_greenwich(context, base.get(), place);
  const std::string authority = text_of(proj_get_id_auth_name(base.get(), 0));
  if (!authority.empty())
    impl->geographic_code = authority + ":" + text_of(proj_get_id_code(base.get(), 0));
  impl->withdrawn = proj_is_deprecated(system.get()) != 0;
  impl->area = area_of(context, system.get());
  // The library takes a system's coordinates in the order the system declares, and its scale
  // factors come out as millions where northing is declared first. So easting is put first, once,
  // here.
  impl->east_north.reset(proj_normalize_for_visualization(context, system.get()));
  const Owned<PJ> raw(
      proj_create_crs_to_crs_from_pj(context, base.get(), system.get(), nullptr, nullptr));
  if (raw) impl->projection.reset(proj_normalize_for_visualization(context, raw.get()));
  const Owned<PJ> ellipsoid(proj_get_ellipsoid(context, system.get()));
  double semi_minor = 0;
  const bool known =
      ellipsoid && proj_ellipsoid_get_parameters(context, ellipsoid.get(), &impl->semi_major,
                                                 &semi_minor, nullptr, nullptr) != 0;
  if (!impl->east_north || !impl->projection || !known)
    refuse(place,
           quoted(crs) + " (" + impl->name + ") cannot be computed by " + software_text(context),
           "a grid with a known map projection", "use another grid of the region");
  const double ratio = semi_minor / impl->semi_major;
  impl->eccentricity_squared = (1 - ratio) * (1 + ratio);
  return Grid(std::move(impl));
}

const std::string& Grid::code() const { return impl_->code; }
const std::string& Grid::name() const { return impl_->name; }
const std::string& Grid::geographic_code() const { return impl_->geographic_code; }
std::optional<AreaOfUse> Grid::area_of_use() const { return impl_->area; }
bool Grid::withdrawn() const { return impl_->withdrawn; }

Geographic Grid::to_geographic(GridPoint p) const {
  const auto g = geographic_of(impl_->projection.get(), p);
  if (!g)
    refuse(impl_->place, "a point that the map projection of " + impl_->name + " cannot take",
           "coordinates on the job's grid", "check the grid's code and the order of the columns");
  return *g;
}

GridPoint Grid::to_grid(Geographic g) const {
  const auto out =
      moved(impl_->projection.get(), PJ_FWD, g.longitude.in_degrees(), g.latitude.in_degrees());
  if (!out)
    refuse(impl_->place, "a latitude and longitude that " + impl_->name + " cannot take",
           "a position near the grid's area of use",
           "check the grid's code and the order of the columns");
  return grid_point(out->v[0], out->v[1]);
}

GridFactors Grid::factors(GridPoint p) const {
  constexpr double kConformal = 1e-8;  // greatest difference of scale between two directions
  const Geographic g = to_geographic(p);
  PJ* system = impl_->east_north.get();
  proj_errno_reset(system);
  const PJ_FACTORS f =
      proj_factors(system, proj_coord(g.longitude.in_radians(), g.latitude.in_radians(), 0, 0));
  if (proj_errno(system) != 0 || !std::isfinite(f.meridional_scale) ||
      !std::isfinite(f.meridian_convergence))
    refuse(impl_->place, "no scale factor for a point on " + impl_->name,
           "a point near the grid's area of use", "check the grid's code and the coordinates");
  if (std::abs(f.meridional_scale - f.parallel_scale) > kConformal)
    refuse(impl_->place, impl_->name + " stretches lengths differently in different directions",
           "a conformal grid", "use the region's survey grid");
  return {g, Angle::radians(f.meridian_convergence), Ratio::of(std::sqrt(f.areal_scale)),
          gaussian_mean_radius(impl_->semi_major, impl_->eccentricity_squared, g.latitude)};
}

InArea Grid::in_area(GridPoint p) const {
  if (!impl_->area) return InArea::Inside;
  const auto inside = [&](GridPoint q) {
    const auto g = geographic_of(impl_->projection.get(), q);
    // beyond the projection's reach another place may come back: it must lead to the point again
    if (!g || !holds(*impl_->area, *g)) return false;
    const auto back =
        moved(impl_->projection.get(), PJ_FWD, g->longitude.in_degrees(), g->latitude.in_degrees());
    return back && distance(grid_point(back->v[0], back->v[1]), q) < Length::metres(1);
  };
  if (inside(p)) return InArea::Inside;
  const GridPoint swapped = grid_point(p.northing.in_metres(), p.easting.in_metres());
  return inside(swapped) ? InArea::SwappedInside : InArea::Outside;
}

}  // namespace squaredig::geodesy
