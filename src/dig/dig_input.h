// What the dig stage works from beside the pit itself, which is in design::DesignInput: the rest of
// the table [dig], and [progress], [site] and [laser], as checked, with their files read.
#pragma once

#include "design/site_input.h"
#include "quantity/tolerance.h"

namespace squaredig::dig {

// A survey made during the dig.
struct ProgressSurvey {
  std::string name;
  PointTable points;
  std::optional<Length> sigma_height;  // of a point that has none of its own
  std::optional<Length> sigma_common;  // shared by the survey's points, not by other surveys
  Place place;
};

// How the rows and columns of cut.tif lie: along and across the tank, or north up.
enum class RasterFrame { Tank, North };

// What a truck may carry, and what the loose soil weighs.
struct TruckMass {
  Mass load;
  Density loose;
};

struct DigInput {
  std::optional<Ratio> bulking;      // 1 m3 in the ground becomes this much loose
  std::optional<LooseVolume> truck;  // one load
  std::optional<TruckMass> truck_mass;
  std::optional<BankVolume> keep;  // of the cut, kept on site
  std::optional<Length> strip;     // topsoil taken first, its volume told apart
  Length cell;                     // grid cell of the dig sheet, along and across the tank
  RasterFrame raster = RasterFrame::Tank;
  std::optional<Length> rough_above;     // first stop, this much above the dig level
  std::optional<Length> spoil_setback;   // drawn
  std::vector<ProgressSurvey> progress;  // in order
  std::optional<design::SiteInput> site;
  std::optional<Elevation> water_level;     // highest credible groundwater
  std::optional<design::LaserInput> laser;  // nothing: no staff readings
  Place place;
};

}  // namespace squaredig::dig
