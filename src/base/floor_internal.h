// The base in the site frame: planned floor, judged points, and the surface through them, all as
// deviations from the dig level. A plane added to everything drops out, so the rest of the room
// never sees a fall, except where the fall itself is asked.
//
// Frame and units: site frame shifted to near tank corner A, metres; heights are deviations.
#pragma once

#include "base/check_base.h"
#include "geometry/locate.h"
#include "geometry/overlay.h"
#include "geometry/polygon.h"
#include "geometry/site_frame.h"

namespace squaredig::base {

struct FloorPoint {
  geometry::Point2 at;
  double deviation = 0;
  double sigma = 0;       // of this point alone, not the shared part
  std::size_t row = 0;    // in BaseInput::points
  double sigma_plan = 0;  // of its place
};

struct ToePoint {
  geometry::Point2 at;
  double sigma_plan = 0;
  std::size_t row = 0;
};

struct Floor {
  geometry::SiteFrame frame;
  geometry::Polygon toe;        // anticlockwise
  geometry::Polygon footprint;  // of the tank, anticlockwise
  geometry::Plane dig_level;
  std::vector<FloorPoint> points;  // the judged ones, in file order
  std::vector<ToePoint> surveyed_toe;
  std::vector<PointAside> aside;
  double coverage_factor = 0;  // k
  double sigma_common = 0;

  // k u of a quantity that is sum c_i z_i over judged points, and of one that feels the shared
  // part.
  double expanded(std::span<const std::pair<std::size_t, double>> coefficients) const;
  double expanded_with_common(std::span<const std::pair<std::size_t, double>> coefficients) const;
};

// The tank's own directions: along A-B, and square to it into the tank, to the right of it.
struct TankAxes {
  geometry::Point2 origin, along, into;
  geometry::Point2 at(double u, double v) const { return origin + (u * along + v * into); }
  double along_of(geometry::Point2 p) const { return geometry::dot(p - origin, along); }
  double in_of(geometry::Point2 p) const { return geometry::dot(p - origin, into); }
};
TankAxes axes_of(const PlannedBase& planned, const Floor& floor);

Floor lay_out(const BaseInput& input, const PlannedBase& planned);

// The top of bedding as laid, from the underside of the tank; nothing where no point lies inside
// the toe.
std::optional<Floor> lay_out_bedding(const BaseInput& input, const PlannedBase& planned);

// The triangulated surface of the judged points, carried outward from its rim with the rim's
// deviation until it covers floor and footprint.
struct DugSurface {
  geometry::Surface surface;               // z = deviation
  std::vector<std::size_t> source;         // for each vertex the judged point it repeats
  geometry::Index surveyed_triangles = 0;  // the first ones; the others are carried
};

// Nothing where the judged points do not span a surface.
std::optional<DugSurface> build_surface(const Floor& floor);

// Convex parts of a simple polygon, on the dig level.
std::vector<geometry::PlaneFacet> parts_of(const geometry::Polygon& polygon);

}  // namespace squaredig::base
