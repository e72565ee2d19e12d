#include "design/laser.h"

#include "quantity/number_text.h"

namespace squaredig::design {
namespace {

GridPosition mark_in(const PointTable& control, const std::string& name, const Place& place) {
  const auto found = control.find(name);
  if (!found)
    refuse(place, "no control point named " + quoted(name),
           "a mark of the [control] file, spelled as it is there",
           "correct the name or add the mark");
  const SurveyPoint& point = control.points[*found];
  if (!point.has_height)
    refuse(place, "the mark " + quoted(name) + " has no height", "a mark with a height",
           "add its height to the [control] file");
  return point.at;
}

}  // namespace

Laser Laser::set_up(const LaserInput& input, const Tank& tank, const PointTable& control) {
  Laser laser;
  laser.staff_length_ = input.staff_length;
  if (!input.mark) {
    if (input.plane_level)
      laser.plane_ =
          LevelPlane{tank.corners[0], *input.plane_level, input.fall, input.fall_bearing};
    return laser;
  }
  const LaserMark& m = *input.mark;
  const GridPosition mark = mark_in(control, m.mark, input.place);
  const GridPosition check = mark_in(control, m.check_mark, input.place);
  const LevelPlane plane{mark.at, mark.height + m.staff_on_mark, input.fall, input.fall_bearing};
  const Length error = m.staff_on_check - (plane.at(check.at) - check.height);
  if (abs(error) <= m.check_tolerance) {
    laser.plane_ = plane;
    return laser;
  }
  laser.findings_.push_back(
      {"laser-check",
       "The laser read from mark " + quoted(m.mark) + " is " + fixed(error.in_millimetres(), 1) +
           " mm off on mark " + quoted(m.check_mark) + ", permitted " +
           fixed(m.check_tolerance.in_millimetres(), 1) + " mm: staff readings are withheld."});
  return laser;
}

std::optional<Length> Laser::staff_reading(GridPosition foot) const {
  if (!plane_) return std::nullopt;
  return plane_->at(foot.at) - foot.height;
}

bool Laser::off_staff(Length reading) const {
  return reading < Length{} || (staff_length_ && reading > *staff_length_);
}

}  // namespace squaredig::design
