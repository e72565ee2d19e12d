#include "quantity/angle.h"

namespace squaredig {
namespace {

double wrapped(double degrees) {
  double d = std::fmod(degrees, 360.0);
  if (d < 0) d += 360.0;
  return d >= 360.0 ? 0.0 : d;
}

}  // namespace

double sine(Angle a) {
  const double d = wrapped(a.in_degrees());
  const int quarter = static_cast<int>(std::floor((d + 45) / 90)) % 4;
  const double rest = Angle::degrees(d - std::floor((d + 45) / 90) * 90).in_radians();
  switch (quarter) {
    case 0:
      return std::sin(rest);
    case 1:
      return std::cos(rest);
    case 2:
      return -std::sin(rest);
    default:
      return -std::cos(rest);
  }
}

double cosine(Angle a) { return sine(Angle::degrees(a.in_degrees() + 90)); }

Bearing Bearing::degrees(double d) {
  Bearing b;
  b.degrees_ = wrapped(d);
  return b;
}

Bearing Bearing::of_line(GridPoint from, GridPoint to) {
  const double east = (to.easting - from.easting).in_metres();
  const double north = (to.northing - from.northing).in_metres();
  return degrees(Angle::radians(std::atan2(east, north)).in_degrees());
}

Angle Bearing::clockwise(Bearing from, Bearing to) {
  return Angle::degrees(wrapped(to.degrees_ - from.degrees_));
}

Length distance(GridPoint a, GridPoint b) {
  return Length::metres(
      std::hypot((b.easting - a.easting).in_metres(), (b.northing - a.northing).in_metres()));
}

GridPoint ahead(GridPoint from, Bearing along, Length forward, Length right) {
  const double s = sine(along.from_north());
  const double c = cosine(along.from_north());
  return {from.easting + forward * s + right * c, from.northing + forward * c - right * s};
}

}  // namespace squaredig
