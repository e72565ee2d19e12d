// Grid: the projected coordinate reference system of a job, opened offline, and what the map
// projection does to lengths and directions at a point.
//
// Frame and units: grid points in metres, easting before northing whatever order the reference
//   system itself declares; latitudes north positive, longitudes east positive from Greenwich.
// Requires: an authority's code, such as "EPSG:2157".
// Laws: grid.1 to_grid(to_geographic(p)) is p to 1e-6 m inside the area of use;
//   grid.2 easting and northing keep their meaning for reference systems that name northing first;
//   grid.3 on a conformal grid the point scale is the same in every direction.
// Accuracy: coordinates to 0.6 mm, point scale to 1e-9 and convergence to 0.02 seconds against the
//   five published stations of GDA2020, tests/published/geodesy_*.
// Errors: Refusal for text that is no authority code, an unknown code, a reference system that is
//   not projected, is not in metres, does not have one axis east and one north, counts longitude
//   from another meridian than Greenwich, or is not conformal; for a point the projection cannot
//   take.
// Source: PROJ 9 library reference; GDA2020 Technical Manual v1.3 for the published values.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "quantity/angle.h"
#include "quantity/problem.h"
#include "quantity/tolerance.h"

namespace squaredig::geodesy {

struct Geographic {
  Angle latitude;
  Angle longitude;
};

struct GridFactors {
  Geographic at;
  // The bearing of grid north from true north, clockwise: azimuth = grid bearing + convergence.
  // Some national manuals tell it with the opposite sign.
  Angle convergence;
  Ratio point_scale;   // grid length over length on the ellipsoid, at the point
  Length mean_radius;  // Gaussian mean radius of the ellipsoid at the latitude
};

// Where a reference system is meant to be used.
struct AreaOfUse {
  std::string name;
  Geographic south_west;
  Geographic north_east;  // its longitude is below south_west's where the area crosses 180 degrees
};

enum class InArea { Inside, Outside, SwappedInside };

class Grid {
 public:
  static Grid open(std::string_view crs, const Place& place);

  // "EPSG:7855", and the name it has in the register.
  const std::string& code() const;
  const std::string& name() const;
  // Of the latitudes and longitudes it projects: "EPSG:7844"; empty where the register has none.
  const std::string& geographic_code() const;
  std::optional<AreaOfUse> area_of_use() const;
  // True where the register marks the system as withdrawn.
  bool withdrawn() const;

  Geographic to_geographic(GridPoint p) const;
  GridPoint to_grid(Geographic g) const;
  GridFactors factors(GridPoint p) const;

  // Whether the point lies in the area of use; SwappedInside where only the point with easting and
  // northing exchanged does. Inside where the register knows no area.
  InArea in_area(GridPoint p) const;

 private:
  struct Impl;
  explicit Grid(std::shared_ptr<const Impl> impl) : impl_(std::move(impl)) {}
  std::shared_ptr<const Impl> impl_;
};

}  // namespace squaredig::geodesy
