// The Alderbrook school tank on made ground, for the tests of this room.
#pragma once

#include "grounds.h"
#include "pegs/set_out.h"

namespace squaredig::pegs {

inline GridPosition origin() { return grid_position(715840, 734690, 60); }

struct Site {
  design::DesignInput design;
  PegsInput pegs;
  testing::MadeSurvey survey;
  OnGrid on;

  // Ground heights are given above 60.000 at metres east and north of the origin.
  explicit Site(
      const testing::Height& height = [](double, double) { return 5.0; }, double half = 60,
      double step = 2)
      : survey(testing::grid_surface(half, step, height), origin()) {
    design.tank.length = Length::metres(24);
    design.tank.width = Length::metres(9.6);
    design.tank.height = Length::metres(1.32);
    design.tank.corner_a = grid_point(715830.25, 734697.6);
    design.tank.bearing_ab = Bearing::degrees(127.5);
    design.tank.underside_level = Elevation::metres(62.35);
    design.tank.place = {"job.toml", 20, 1};
    design.bedding.thickness = Length::millimetres(20);
    design.pit.gap.all = Length::metres(0.2);
    design.pit.batter.all = Batter::run_per_rise(1);
    pegs.offset = Length::metres(3);
    pegs.setback = Length::metres(1);
    pegs.place = {"job.toml", 40, 1};
  }
  design::Excavation pit() { return design::excavate(design, survey); }
  PegsResult run() { return set_out(pegs, design, pit(), survey, on); }
};

inline const ReferencePeg& peg(const PegsResult& result, const std::string& name) {
  for (const ReferencePeg& p : result.reference)
    if (p.name == name) return p;
  throw std::out_of_range("no peg " + name);
}

// Distance of a point to the right of the line a-b.
inline double off_line(GridPoint a, GridPoint b, GridPoint p) {
  const Bearing line = Bearing::of_line(a, b);
  const double s = sine(line.from_north()), c = cosine(line.from_north());
  return ((p.easting - a.easting) * c - (p.northing - a.northing) * s).in_metres();
}

inline bool has_finding(const ResultHead& head, const std::string& code) {
  for (const Finding& f : head.findings)
    if (f.code == code) return true;
  return false;
}

inline void add_control(Site& site, const std::string& name, GridPosition at) {
  SurveyPoint point;
  point.at = at;
  site.design.control.add(point, name, "");
}

}  // namespace squaredig::pegs
