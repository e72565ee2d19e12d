#include <algorithm>

#include "design/place_internal.h"
#include "geometry/polygon.h"
#include "geometry/site_frame.h"
#include "quantity/number_text.h"

namespace squaredig::design {
namespace {

GridPoint control_point(const DesignInput& input, const std::string& name) {
  if (const auto found = input.control.find(name)) return input.control.points[*found].at.at;
  refuse(input.tank.place, "no control point named " + quoted(name),
         "a point of the [control] file, spelled as it is there",
         "correct the name or add the point");
}

GridPoint point_of(const DesignInput& input, const PointOrName& p) {
  if (const auto* at = std::get_if<GridPoint>(&p)) return *at;
  return control_point(input, std::get<std::string>(p));
}

std::string metres(Length l) { return fixed(l.in_metres(), 3) + " m"; }

// The tank's length keeps its value; the control point gives the direction, and is told when it
// stands elsewhere than the length says.
Bearing bearing_to_b(const DesignInput& input, GridPoint a, Length length, Tank& tank) {
  const GridPoint b = control_point(input, *input.tank.corner_b);
  const Length found = distance(a, b);
  const Length off = abs(found - length);
  if (off > Length::metres(1))
    refuse(input.tank.place, "corner_b stands " + metres(found) + " from corner A",
           "the tank's length, " + metres(length) + ", within 1 m",
           "name the right control point or correct the length");
  if (off > Length::millimetres(1))
    tank.findings.push_back(
        {"corner-b-distance", "Control point " + quoted(*input.tank.corner_b) + " stands " +
                                  metres(found) + " from corner A, the tank is " + metres(length) +
                                  " long: only its direction is used."});
  return Bearing::of_line(a, b);
}

Tank rectangle(const DesignInput& input) {
  const TankInput& t = input.tank;
  const Length length = *t.length * input.combined_factor.value();
  const Length width = *t.width * input.combined_factor.value();
  Tank tank;
  GridPoint a;
  if (t.from) {
    const GridPoint start = control_point(input, t.from->line_from);
    const GridPoint end = control_point(input, t.from->line_to);
    if (start == end)
      refuse(t.place, "a line from a point to itself", "two different control points",
             "correct `from.line`");
    const Bearing line = Bearing::of_line(start, end);
    a = ahead(start, line, t.from->along * input.combined_factor.value(),
              t.from->right * input.combined_factor.value());
    tank.ab = line + t.from->turn;
  } else {
    a = point_of(input, *t.corner_a);
    tank.ab = t.corner_b ? bearing_to_b(input, a, length, tank) : *t.bearing_ab;
  }
  tank.corners = {a, ahead(a, tank.ab, length), ahead(a, tank.ab, length, width),
                  ahead(a, tank.ab, {}, width)};
  return tank;
}

void refuse_bad_ring(const DesignInput& input, const geometry::Polygon& ring) {
  const Place& place = input.tank.place;
  for (std::size_t i = 0; i < ring.size(); ++i)
    if (const auto d = ring[(i + 1) % ring.size()] - ring[i]; dot(d, d) < 1e-6)
      refuse(place,
             "corner " + Tank::corner_name((i + 1) % ring.size()) + " repeats corner " +
                 Tank::corner_name(i),
             "corners at least 1 mm apart, the first not repeated at the end",
             "leave out the repeated point");
  if (const auto crossed = geometry::self_crossing(ring)) {
    const auto side = [&](std::size_t i) {
      return Tank::corner_name(i) + Tank::corner_name((i + 1) % ring.size());
    };
    refuse(place, "sides " + side(crossed->first) + " and " + side(crossed->second) + " touch",
           "an outline that does not cross itself", "put the corners in order round the tank");
  }
}

Tank from_outline(const DesignInput& input) {
  Tank tank;
  tank.corners = input.tank.outline;
  if (tank.corners.size() < 3)
    refuse(input.tank.place, std::to_string(tank.corners.size()) + " corners in the outline",
           "at least three", "add the missing corners");
  const auto frame = geometry::SiteFrame::around({tank.corners[0], input.tank.underside_level});
  geometry::Polygon ring;
  for (const GridPoint& p : tank.corners) ring.push_back(frame.to_site(p));
  refuse_bad_ring(input, ring);
  if (geometry::signed_area(ring) > 0) {  // anticlockwise: A stays, the rest is turned
    std::reverse(tank.corners.begin() + 1, tank.corners.end());
    tank.findings.push_back({"outline-turned",
                             "The outline runs anticlockwise: corners after A were renamed so that "
                             "A, B, C run clockwise "
                             "seen from above. Check which corner is B."});
  }
  tank.ab = Bearing::of_line(tank.corners[0], tank.corners[1]);
  return tank;
}

}  // namespace

Tank placed_corners(const DesignInput& input) {
  return input.tank.outline.empty() ? rectangle(input) : from_outline(input);
}

}  // namespace squaredig::design
