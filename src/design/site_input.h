// What stands around the work and what the levels are read from: the tables [site] and [laser],
// checked, with their files read. Grid coordinates in the job's frame.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "quantity/points.h"
#include "quantity/slope.h"

namespace squaredig::design {

struct SiteInput {
  std::vector<SurveyString> keep_out;  // lines the dig must keep clear of
  std::vector<SurveyString> services;  // buried lines with level
  std::optional<Length> clearance;     // wanted between a service and the excavated surface
  std::optional<Batter> influence;     // drawn from the toe upward; nothing: not drawn
  Place place;
};

// A height of instrument read from a mark and proved on a second one. Names are control points.
struct LaserMark {
  std::string mark;
  Length staff_on_mark;
  std::string check_mark;
  Length staff_on_check;
  Length check_tolerance;
};

struct LaserInput {
  std::optional<Elevation> plane_level;  // at corner A
  std::optional<LaserMark> mark;         // instead
  Fall fall;                             // of the laser's plane
  Bearing fall_bearing;                  // its downhill; north where the plane is level
  std::optional<Length> staff_length;    // readings below 0 or beyond it are findings
  Place place;
};

}  // namespace squaredig::design
