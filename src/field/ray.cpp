#include "field/ray.h"

#include <cmath>

namespace squaredig::field {

Reach reach_of(const Ray& ray, const Earth& earth, Length instrument_above_ellipsoid) {
  const double r = earth.radius.in_metres();
  const double from = r + instrument_above_ellipsoid.in_metres();
  const double s = ray.slope.in_metres();
  // the line of sight leaves higher than the straight line to the target
  const double z = ray.zenith.in_radians() + earth.refraction.value() * s / (2 * r);
  const double up = s * std::cos(z);
  const double centre = std::atan2(s * std::sin(z), from + up);
  // to - from from the difference of squares: the radii themselves would lose the millimetres
  const double to = std::sqrt((from + up) * (from + up) + s * s * std::sin(z) * std::sin(z));
  const double rise = (s * s + 2 * from * up) / (to + from);
  return {Length::metres(r * centre), Length::metres(rise)};
}

Ray ray_of(const Reach& reach, const Earth& earth, Length instrument_above_ellipsoid) {
  const double r = earth.radius.in_metres();
  const double from = r + instrument_above_ellipsoid.in_metres();
  const double rise = reach.rise.in_metres();
  const double to = from + rise;
  const double half = std::sin(reach.arc.in_metres() / r / 2);
  const double s = std::sqrt(rise * rise + 4 * from * to * half * half);
  const double across = to * std::sin(reach.arc.in_metres() / r);
  const double up = rise - 2 * to * half * half;
  const double z = std::atan2(across, up) - earth.refraction.value() * s / (2 * r);
  return {Length::metres(s), Angle::radians(z)};
}

}  // namespace squaredig::field
