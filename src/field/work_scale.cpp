#include "field/work_scale.h"

#include <array>
#include <cmath>

#include "field/geoid.h"
#include "geodesy/factors.h"
#include "quantity/number_text.h"

namespace squaredig::field {
namespace {

constexpr double kLocalRadius = 6371000;
constexpr double kUsualRefraction = 0.13;

// Point scale near a place: value, slopes and bends to the east and to the north.
class ScaleNear {
 public:
  ScaleNear(const geodesy::Grid& grid, GridPoint near) : near_(near) {
    const auto at = [&](double east, double north) {
      return grid
          .factors({near.easting + Length::metres(east), near.northing + Length::metres(north)})
          .point_scale.value();
    };
    const double east = at(kStep, 0), west = at(-kStep, 0);
    const double north = at(0, kStep), south = at(0, -kStep);
    here_ = at(0, 0);
    slope_ = {(east - west) / 2, (north - south) / 2};
    bend_ = {(east + west) / 2 - here_, (north + south) / 2 - here_};
  }

  double operator()(GridPoint p) const {
    const double e = (p.easting - near_.easting).in_metres() / kStep;
    const double n = (p.northing - near_.northing).in_metres() / kStep;
    return here_ + e * (slope_[0] + e * bend_[0]) + n * (slope_[1] + n * bend_[1]);
  }

 private:
  static constexpr double kStep = 1000;
  GridPoint near_;
  double here_ = 1;
  std::array<double, 2> slope_{}, bend_{};
};

Ratio refraction_of(const FieldInput& input, ResultHead& head) {
  if (input.refraction) return *input.refraction;
  head.assumed.push_back(
      "refraction = 0.13, as [field] does not say: half as much or twice as much "
      "changes a height by 0.2 mm over 200 m");
  return Ratio::of(kUsualRefraction);
}

// A factor stated, or lengths as they are on the ground.
std::function<Ratio(GridPoint, Length)> by_height(Ratio factor, Length radius) {
  return [=](GridPoint, Length above) {
    return Ratio::of(factor.value() * ((radius + above) / radius));
  };
}

}  // namespace

WorkScale work_scale(const FieldInput& input, GridPoint near, ResultHead& head) {
  WorkScale work;
  work.earth.refraction = refraction_of(input, head);
  work.earth.radius = Length::metres(kLocalRadius);
  if (!input.crs) {
    head.assumed.push_back("earth radius 6371 km, as the grid is local");
    if (!input.scale_factor)
      head.assumed.push_back("grid lengths are ground lengths, as the grid is local");
    work.grid_over_arc = by_height(input.scale_factor.value_or(Ratio::of(1)), work.earth.radius);
    return work;
  }
  const geodesy::Grid grid = geodesy::Grid::open(*input.crs, input.place);
  const geodesy::GridFactors here = grid.factors(near);
  work.earth.radius = here.mean_radius;
  if (input.geoid) work.separation = separation(*input.geoid, here.at, input.geoid->place);
  if (input.scale_factor) {
    work.grid_over_arc = by_height(*input.scale_factor, here.mean_radius);
    return work;
  }
  if (!input.geoid)
    head.assumed.push_back(
        "heights are taken as above the ellipsoid in the scale factor, as no "
        "geoid file is named: 10 m of separation are 1.6 ppm");
  work.grid_over_arc = [scale = ScaleNear(grid, near)](GridPoint p, Length) {
    return Ratio::of(scale(p));
  };
  return work;
}

}  // namespace squaredig::field
