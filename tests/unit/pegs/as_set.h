// Pegs as a surveyor would measure them, for the tests of this room.
#pragma once

#include <map>

#include "unit/pegs/site.h"

namespace squaredig::pegs {

inline void add_measured(PointTable& table, const std::string& name, GridPoint at,
                         float sigma_mm = -1) {
  SurveyPoint point;
  point.at = {at, {}};
  point.sigma_plan_mm = sigma_mm;
  table.add(point, name, "");
}

// Every peg where it was designed, but those named moved along and across (in millimetres).
inline PointTable measured_pegs(const PegsResult& design,
                                const std::map<std::string, std::pair<double, double>>& moved = {},
                                float sigma_mm = -1) {
  PointTable table;
  for (const ReferencePeg& p : design.reference) {
    GridPoint at = p.at;
    if (const auto m = moved.find(p.name); m != moved.end()) {
      GridPoint corner;
      for (const Corner& c : design.corners)
        if (c.name == p.corner) corner = c.at.at;
      at = ahead(p.at, Bearing::of_line(corner, p.at), Length::millimetres(m->second.first),
                 Length::millimetres(m->second.second));
    }
    add_measured(table, p.name, at, sigma_mm);
  }
  return table;
}

// Pegs `beyond` metres past the corners of another figure, on its own side lines.
inline PointTable pegs_round(const std::vector<GridPoint>& corners, double beyond) {
  PointTable table;
  const std::size_t n = corners.size();
  for (std::size_t i = 0; i < n; ++i) {
    const auto out = [&](std::size_t from, std::size_t to) {
      return ahead(corners[to], Bearing::of_line(corners[from], corners[to]),
                   Length::metres(beyond));
    };
    add_measured(table, design::Tank::corner_name(i) + "1", out((i + 1) % n, i));
    add_measured(table, design::Tank::corner_name(i) + "2", out((i + n - 1) % n, i));
  }
  return table;
}

inline void give_tolerances(Site& site, double mm) {
  site.pegs.tolerance = site.pegs.side_tolerance = site.pegs.diagonal_tolerance =
      Length::millimetres(mm);
}

inline Verdict verdict_of(const std::vector<Check>& checks, const std::string& name) {
  for (const Check& c : checks)
    if (c.name == name) return c.verdict;
  throw std::out_of_range("no check " + name);
}

}  // namespace squaredig::pegs
