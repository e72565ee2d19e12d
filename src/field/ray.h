// Ray: a slope distance with its zenith angle, on a round earth with a bent line of sight.
//
// What: turns a ray into the arc between the plumb lines at the ellipsoid and the rise from
//   instrument to target, and back.
// Frame and units: the earth is a sphere of the grid's mean radius; heights above it; zenith angles
//   from the plumb line at the instrument, as read (refraction still in them).
// Requires: zenith angles from 0 to 180 degrees, distances above zero.
// Laws: ray.1 ray_of(reach_of(r)) is r; ray.2 flat sights rise by (1 - k) d^2 / 2R.
// Accuracy: closed form, no series: 1e-9 m over a kilometre. A sphere in place of the ellipsoid
//   costs below 0.1 mm in a kilometre. Errors: none.
// Source: triangle of earth's centre, instrument and target; the line of sight turned by k d / 2R
//   at each end (from memory); curvature and refraction values in tests/published/field_*.
#pragma once

#include "quantity/angle.h"
#include "quantity/tolerance.h"

namespace squaredig::field {

struct Earth {
  Length radius;
  Ratio refraction;  // k: radius of the earth over that of the line of sight
};

struct Ray {
  Length slope;
  Angle zenith;
};

struct Reach {
  Length arc;   // at the ellipsoid
  Length rise;  // target above instrument
};

Reach reach_of(const Ray& ray, const Earth& earth, Length instrument_above_ellipsoid);
Ray ray_of(const Reach& reach, const Earth& earth, Length instrument_above_ellipsoid);

}  // namespace squaredig::field
