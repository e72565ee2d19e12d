// The total-station net inside this room: points, set-ups and sights in a local frame of plain
// metres and radians, shared by the steps that place, adjust and doubt it.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "adjust/snooping.h"
#include "field/faces.h"
#include "field/ray.h"

namespace squaredig::field {

struct NetPoint {
  std::string name;
  bool plan_known = false;
  bool height_known = false;
  double sigma_plan = 0;    // of a known point's coordinate; 0: held fixed
  double sigma_height = 0;  // likewise
  double e = 0, n = 0, h = 0;
  bool placed = false;        // e, n hold at least an approximation
  bool levelled = false;      // h does
  bool height_given = false;  // h hangs on a known height
  bool height_datum = false;  // h is supposed, for others to hang on
  bool in_net = false;        // an unknown of the adjustment, not a sideshot
};

struct NetSight {
  std::size_t setup = 0;
  std::size_t target = 0;
  double direction = 0;
  std::optional<double> zenith;
  std::optional<double> slope;
  double target_height = 0;
  double sigma_direction = 0, sigma_zenith = 0, sigma_slope = 0;
  bool use_direction = true, use_zenith = true, use_slope = true;  // left out where false
  bool second_orientation = false;                                 // after a supposed bump
  std::size_t source = 0;                                          // of the set-up's reduced sights
  std::vector<Place> places;
};

struct NetSetup {
  std::string name;
  std::size_t station = 0;
  double instrument_height = 0;
  double orientation = 0;
  double second_orientation = 0;
  bool bumped = false;          // a second orientation is unknown
  bool height_doubted = false;  // the instrument height is unknown
  double height_offset = 0;
  bool placed = false;
  SetupKind kind = SetupKind::KnownStation;
  std::vector<std::size_t> sights;
  Place place;
};

// What turns arcs at the ellipsoid into grid lengths at a place.
struct Shape {
  Earth earth;
  double separation = 0;  // of geoid and ellipsoid
  // Grid length over arc: at a place and height above the ellipsoid.
  std::function<double(double e, double n, double height)> scale;
};

struct Net {
  std::vector<NetPoint> points;
  std::vector<NetSetup> setups;
  std::vector<NetSight> sights;
};

// One observation of an adjustment; `sight` is past the end for a known point's own coordinate.
struct Observed {
  std::size_t sight = 0;
  Reading reading = Reading::Direction;
};

struct NetFit {
  adjust::Estimates estimates;
  std::vector<adjust::Equation> equations;
  std::vector<Observed> observed;
  struct Numbers {
    std::optional<std::size_t> e, n, h;
  };
  std::vector<Numbers> of_point;
  std::vector<std::size_t> orientation_of;  // by set-up
  Net net;                                  // with the adjusted values
  bool passes() const;
  double sum_of_squares() const { return estimates.sum_of_squares; }
};

// Grid length and rise of a sight with slope and zenith, from the station's place as it stands.
struct Polar {
  double distance = 0;
  double rise = 0;  // mark to mark
  double scale = 1;
};
Polar polar_of(const Net& net, const NetSight& sight, const Shape& shape);
double bearing_between(const NetPoint& from, const NetPoint& to);

// Gives set-ups and points approximate places; what cannot be placed stays unplaced.
void place_net(Net& net, const Shape& shape);
// Places one set-up from the points placed so far; false where they do not suffice.
bool place_setup(Net& net, std::size_t index, const Shape& shape);
// True where the station lies on one circle with all its targets, and only directions were read.
bool on_danger_circle(const Net& net, std::size_t index);

// Marks what is adjusted, and gives heights a datum where none is known.
void prepare_net(Net& net);
// Nothing where the observations do not fix the unknowns.
std::optional<NetFit> fit_net(const Net& net, const Shape& shape);
// The parts of a net that share no unknown, each with its set-ups, sights and points.
std::vector<Net> parts_of(const Net& net);

struct Diagnosis {
  std::optional<NetFit> fit;  // with what is left out left out
  std::vector<Finding> findings;
  std::vector<std::string> doubts;  // of the part as a whole
  std::vector<Observed> left_out;
  bool withheld = false;  // what is wrong cannot be told well enough to give coordinates
  double unit = 1;        // standard deviations are multiplied by it
};
// Known points, by which a wrong name is recognised, are `control`.
Diagnosis diagnose(const Net& part, const std::vector<NetPoint>& control, const Shape& shape);

std::string where(const Place& place);
std::string where(const std::vector<Place>& places);

}  // namespace squaredig::field
