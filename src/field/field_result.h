// The answer of the field stage: coordinates with their standard deviations, and what the books
// themselves prove or disprove.
//
// Frame and units: the job's grid; covariances in square metres; residuals are adjusted less
//   observed. A gross error is observed less what the other observations say.
// Source: definitions.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "quantity/angle.h"
#include "quantity/points.h"
#include "quantity/result_head.h"
#include "quantity/tolerance.h"

namespace squaredig::field {

// How every test of the books is made: one false alarm in `alpha`; a residual over its standard
// deviation is suspect beyond `critical`, the two-sided normal quantile; the smallest detectable
// error is found with `power`; lines whose tests correlate by `alike` cannot be told apart.
struct Tests {
  double alpha = 0.001;
  double critical = 3.2905;
  double power = 0.80;
  double alike = 0.9;
};
inline constexpr Tests kTests;

// Lower triangle of a covariance of easting, northing, height, in square metres.
struct Covariance {
  double ee = 0, en = 0, nn = 0, eh = 0, nh = 0, hh = 0;
};

// The ellipse of one standard deviation in plan.
struct ErrorEllipse {
  Length major, minor;  // half axes
  Bearing along;        // of the greater one: from 0 to below 180 degrees
};

struct ReducedPoint {
  std::string point;
  std::string code;
  GridPoint at;
  std::optional<Elevation> height;
  std::optional<Covariance> covariance;  // nothing where no standard deviation is known
  std::string from;                      // "set-up S1", "GNSS", "level book"
  std::size_t sights = 1;
  Place place;
  std::optional<ErrorEllipse> ellipse = std::nullopt;  // of the covariance
};

// A point that gets no coordinates, and why.
struct PointWithheld {
  std::string point;
  std::string why;
  Place place;
};

enum class Reading { Direction, Zenith, Distance };
constexpr const char* words(Reading r) {
  switch (r) {
    case Reading::Direction:
      return "direction";
    case Reading::Zenith:
      return "zenith";
    default:
      return "distance";
  }
}

struct SightResidual {
  std::string target;
  Reading reading = Reading::Direction;
  std::vector<Place> places;  // the lines it was read on: one, or both faces
  double residual = 0;        // seconds of arc, or millimetres
  double redundancy = 0;
  std::optional<double> normalised;
  std::optional<double> smallest_detectable;  // in the residual's unit
  // Of its test with that of another line's reading; nothing for large nets.
  std::optional<double> greatest_correlation;
  bool left_out = false;
};

enum class SetupKind { KnownStation, FreeStation, TraverseStation };
constexpr const char* words(SetupKind k) {
  switch (k) {
    case SetupKind::KnownStation:
      return "known station";
    case SetupKind::FreeStation:
      return "free station";
    default:
      return "traverse station";
  }
}

struct FaceErrors {
  std::size_t pairs = 0;
  Angle index;        // of the zenith circle: added to a reading in face left
  Angle collimation;  // of the line of sight: half the difference of faces, at the horizon
};

struct SetupResult {
  std::string setup;
  std::string station;
  SetupKind kind = SetupKind::KnownStation;
  GridPoint at;
  std::optional<Elevation> height;
  std::optional<Covariance> covariance;
  Bearing orientation;  // of the circle's zero
  std::optional<double> sigma0;
  double redundancy = 0;
  std::optional<FaceErrors> faces;
  Ratio combined_factor = Ratio::of(1);
  std::vector<SightResidual> residuals;
  std::vector<std::string> doubts;  // what was named against it; empty: nothing
  Place place;
  std::optional<ErrorEllipse> ellipse = std::nullopt;  // of the covariance
};

struct LevelPage {
  Length sum_backsight;
  Length sum_foresight;
  Length sum_rise;
  Length sum_fall;
  Length last_less_first;
  std::optional<Length> booked_rise_less_fall;  // of the book's own columns
  bool agrees = true;
};

struct LevelRun {
  std::string from;
  std::string to;
  std::size_t setups = 0;
  std::optional<Length> distance;
  Length rise;                       // measured, last less first
  std::optional<Length> misclosure;  // measured less known; nothing where an end is not known
  std::optional<Length> allowed;     // k sqrt(K)
  Verdict verdict = Verdict::NotAsked;
  LevelPage page;
  Place place;
};

struct LevelledPoint {
  std::string point;
  Elevation height;
  std::optional<Length> sigma;
  bool known = false;
  Place place;
};

// A foresight of the level net: residual of the rise from the backsight before it.
struct LevelResidual {
  std::string from;
  std::string to;
  Length rise;  // as read
  Length residual;
  double redundancy = 0;
  std::optional<double> normalised;  // nothing without standard deviations
  Place place;
};

// How a level's line of sight dips or climbs.
struct Collimation {
  Ratio slope;             // reading too high per distance
  Length true_difference;  // second staff above the first
  struct Correct {
    std::string setup;
    std::string staff;
    Length reading;
  };
  std::vector<Correct> correct;
  Place place;
};

struct LevelResult {
  std::vector<LevelRun> runs;
  std::vector<LevelledPoint> points;
  std::vector<LevelResidual> residuals;
  std::optional<double> sigma0;
  std::size_t redundancy = 0;
  bool page_check = true;
  std::optional<Collimation> collimation;
};

struct PairResidual {
  std::string point;
  Length east;  // fitted less given
  Length north;
  std::optional<Length> height;
  bool fits = true;
  Place place;
};

struct FitResult {
  double scale = 1;
  Angle rotation;  // clockwise, of the measured frame onto the site grid
  Length east;     // of the measured origin on the site grid
  Length north;
  std::optional<double> sigma0_m;             // of one coordinate
  std::optional<Length> vertical_shift;       // at the mean of the pairs with heights
  std::optional<std::array<double, 2>> tilt;  // rise per metre east, per metre north
  GridPoint tilt_about;
  std::vector<PairResidual> residuals;
};

// A point that was occupied more than once.
struct Occupations {
  std::string point;
  std::size_t count = 0;
  Length spread_plan;  // greatest between two of them
  Length spread_height;
  Verdict verdict = Verdict::NotAsked;  // of the spread, where all have standard deviations
  struct Residual {
    Length east, north, height;
    Place place;
  };
  std::vector<Residual> residuals = {};
};

struct GnssResult {
  std::string operation;
  Length accuracy;
  std::string software;
  std::vector<std::string> grid_files;
  std::optional<std::string> geoid;
  std::vector<Occupations> occupations;
  std::vector<PointWithheld> left_out;  // single positions, also of points that others fix
};

struct FieldResult {
  ResultHead head;
  std::vector<ReducedPoint> points;
  std::vector<PointWithheld> withheld;
  std::vector<SetupResult> setups;
  std::optional<LevelResult> levels;
  std::optional<FitResult> fit;
  std::optional<GnssResult> gnss;
  Tests tests = {};
};

}  // namespace squaredig::field
