// What the pegs stage works from: the table [pegs] as checked, with its files read. The tank, the
// pit and the control points are in design::DesignInput. Lengths as they stand in the job file.
#pragma once

#include "design/site_input.h"

namespace squaredig::pegs {

// A length taped between two pegs, along the slope where a height difference is given.
struct TapedLength {
  std::string from;
  std::string to;
  Length length;
  std::optional<Length> height_difference;  // `to` above `from`
  Place place;
};

struct PegsInput {
  Length offset;                      // wanted distance of a reference peg beyond its tank corner
  Length setback;                     // least clear distance beyond the batter crest
  std::vector<std::string> stations;  // polar schedule from these control points
  std::optional<std::string> backsight;  // control point
  std::optional<PointTable> as_set;      // measured pegs, matched by name
  std::optional<std::vector<TapedLength>> tape;
  std::optional<Length> tolerance;           // position of a corner re-made from the string lines
  std::optional<Length> side_tolerance;      // each side against design
  std::optional<Length> diagonal_tolerance;  // each diagonal against design, and their difference
  std::optional<design::SiteInput> site;
  std::optional<design::LaserInput> laser;  // for the staff reading at each peg
  Place place;
};

}  // namespace squaredig::pegs
