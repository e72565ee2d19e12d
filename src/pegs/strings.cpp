#include <algorithm>

#include "pegs/parts_internal.h"
#include "quantity/number_text.h"

namespace squaredig::pegs {

std::string peg_name(PegSpot spot) {
  return design::Tank::corner_name(spot.corner) + (spot.which == Which::First ? "1" : "2");
}

std::size_t side_of(const design::Tank& tank, PegSpot spot) {
  const std::size_t n = tank.sides();
  return spot.which == Which::First ? spot.corner : (spot.corner + n - 1) % n;
}

Bearing outward(const design::Tank& tank, PegSpot spot) {
  const Bearing side = tank.side_bearing(side_of(tank, spot));
  return spot.which == Which::First ? side + Angle::degrees(180) : side;
}

std::string string_name(const design::Tank& tank, std::size_t side) {
  return peg_name({side, Which::First}) + "-" +
         peg_name({(side + 1) % tank.sides(), Which::Second});
}

std::vector<PegSpot> all_spots(const design::Tank& tank) {
  std::vector<PegSpot> spots;
  for (std::size_t i = 0; i < tank.sides(); ++i) {
    spots.push_back({i, Which::First});
    spots.push_back({i, Which::Second});
  }
  return spots;
}

Angle interior_angle(const std::vector<GridPoint>& clockwise, std::size_t corner) {
  const std::size_t n = clockwise.size();
  const GridPoint before = clockwise[(corner + n - 1) % n];
  const GridPoint after = clockwise[(corner + 1) % n];
  // the inside is on the right: from the side ahead clockwise round to the side behind
  return Bearing::clockwise(Bearing::of_line(clockwise[corner], after),
                            Bearing::of_line(clockwise[corner], before));
}

std::string metres_text(Length l) { return fixed(l.in_metres(), 3) + " m"; }
std::string millimetres_text(Length l) { return fixed(l.in_millimetres(), 1) + " mm"; }
std::string at_text(GridPoint p) {
  return "E " + fixed(p.easting.in_metres(), 3) + " N " + fixed(p.northing.in_metres(), 3);
}

const ReferencePeg* find_peg(const std::vector<ReferencePeg>& pegs, std::string_view name) {
  const auto found =
      std::find_if(pegs.begin(), pegs.end(), [&](const ReferencePeg& p) { return p.name == name; });
  return found == pegs.end() ? nullptr : &*found;
}

}  // namespace squaredig::pegs
