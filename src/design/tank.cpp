#include "design/tank.h"

#include <algorithm>

#include "design/place_internal.h"
#include "quantity/number_text.h"

namespace squaredig::design {

Elevation LevelPlane::at(GridPoint p) const {
  const double s = sine(downhill.from_north()), c = cosine(downhill.from_north());
  const Length run = (p.easting - about.easting) * s + (p.northing - about.northing) * c;
  return level - run * fall.drop_per_run();
}

LevelPlane LevelPlane::lowered(Length by) const { return {about, level - by, fall, downhill}; }

std::string Tank::corner_name(std::size_t i) {
  std::string name;
  for (std::size_t n = i + 1; n > 0; n = (n - 1) / 26)
    name.insert(name.begin(), static_cast<char>('A' + (n - 1) % 26));
  return name;
}

std::string Tank::side_name(std::size_t i) const {
  return corner_name(i) + corner_name((i + 1) % corners.size());
}

Bearing Tank::side_bearing(std::size_t i) const {
  return Bearing::of_line(corners[i], corners[(i + 1) % corners.size()]);
}

Length Tank::side_length(std::size_t i) const {
  return distance(corners[i], corners[(i + 1) % corners.size()]);
}

Length Tank::along_ab(GridPoint p) const {
  const double s = sine(ab.from_north()), c = cosine(ab.from_north());
  return (p.easting - corners[0].easting) * s + (p.northing - corners[0].northing) * c;
}

Length Tank::across_ab(GridPoint p) const {
  const double s = sine(ab.from_north()), c = cosine(ab.from_north());
  return (p.easting - corners[0].easting) * c - (p.northing - corners[0].northing) * s;
}

GridPoint Tank::from_a(Length along, Length across) const {
  return ahead(corners[0], ab, along, across);
}

namespace {

Bearing downhill_of(const Tank& tank, const TankInput& input) {
  if (input.fall_bearing) return *input.fall_bearing;
  if (!input.fall_toward) return {};
  for (std::size_t i = 0; i < tank.sides(); ++i)
    if (tank.side_name(i) == *input.fall_toward)
      return tank.side_bearing(i) - Angle::degrees(90);  // the outside is on the left
  refuse(input.place, "fall_toward = " + quoted(*input.fall_toward),
         "the name of a side, such as " + quoted(tank.side_name(0)),
         "name the side the base falls toward");
}

}  // namespace

Tank place_tank(const DesignInput& input) {
  Tank tank = placed_corners(input);
  const TankInput& t = input.tank;
  tank.height = t.height;
  tank.underside = {tank.corners[0], t.underside_level, t.fall, downhill_of(tank, t)};
  tank.dig_level = tank.underside.lowered(input.bedding.thickness);
  tank.top = tank.underside.lowered(-t.height);
  return tank;
}

}  // namespace squaredig::design
