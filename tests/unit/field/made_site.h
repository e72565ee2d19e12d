// Free stations among control points, drawn from a seed: where they truly stand, and their books
// with errors of their own.
#pragma once

#include <cmath>
#include <random>
#include <string>
#include <utility>
#include <vector>

#include "unit/field/made_book.h"

namespace squaredig::testing {

// A free station among three to six control points round it.
class MadeSite {
 public:
  explicit MadeSite(unsigned seed) : random_(seed) {
    const int targets = static_cast<int>(3 + seed % 4);
    for (int i = 0; i < targets; ++i)
      targets_.push_back(grid_position(715800 + uniform(-120, 120), 734600 + uniform(-120, 120),
                                       62 + uniform(-8, 8)));
    station_ =
        grid_position(715800 + uniform(-60, 60), 734600 + uniform(-60, 60), 62 + uniform(-3, 3));
    orientation_ = uniform(0, 360);
    point_ =
        grid_position(station_.at.easting.in_metres() + uniform(20, 90),
                      station_.at.northing.in_metres() + uniform(-90, 90), 62 + uniform(-8, 8));
  }

  bool well_spread() const {
    for (std::size_t i = 0; i < targets_.size(); ++i) {
      if (distance(targets_[i].at, station_.at) < Length::metres(12)) return false;
      for (std::size_t j = 0; j < i; ++j)
        if (distance(targets_[i].at, targets_[j].at) < Length::metres(15)) return false;
    }
    return true;
  }

  MadeBook book(unsigned seed) const {
    MadeBook made({}, seed);
    made.stand("S1", "", station_, orientation_);
    for (std::size_t i = 0; i < targets_.size(); ++i) {
      const std::string name = "C" + std::to_string(i);
      made.control(name, targets_[i]);
      made.sight(name, targets_[i]);
    }
    made.sight("P", point_);
    return made;
  }

  // The same with control that is itself uncertain by `sigma_mm` in every coordinate.
  MadeBook uncertain_control(unsigned seed, double sigma_mm) const {
    MadeBook made = book(seed);
    std::mt19937_64 random(seed + 500000);
    std::normal_distribution<double> error(0, sigma_mm / 1000);
    for (SurveyPoint& p : made.input.control.points) {
      p.at.at.easting = p.at.at.easting + Length::metres(error(random));
      p.at.at.northing = p.at.at.northing + Length::metres(error(random));
      p.at.height = p.at.height + Length::metres(error(random));
      p.sigma_plan_mm = p.sigma_height_mm = static_cast<float>(sigma_mm);
    }
    return made;
  }

  // On a known station, with two backsights: only directions check each other.
  MadeBook two_backsights(unsigned seed) const {
    MadeBook made({}, seed);
    made.control("S", station_);
    made.stand("S1", "S", station_, orientation_);
    for (std::size_t i = 0; i < 2; ++i) {
      const std::string name = "C" + std::to_string(i);
      made.control(name, targets_[i]);
      made.sight(name, targets_[i]).slope_distance = std::nullopt;
    }
    made.sight("P", point_);
    return made;
  }

  std::size_t targets() const { return targets_.size(); }
  const GridPosition& target(std::size_t i) const { return targets_[i]; }
  double orientation() const { return orientation_; }
  const GridPosition& station() const { return station_; }
  const GridPosition& point() const { return point_; }
  Length to(std::size_t target) const { return distance(targets_[target].at, station_.at); }

 private:
  double uniform(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random_);
  }
  std::mt19937_64 random_;
  std::vector<GridPosition> targets_;
  GridPosition station_, point_;
  double orientation_ = 0;
};

// The first `count` of them that are well spread, each with its seed.
inline std::vector<std::pair<unsigned, MadeSite>> made_sites(std::size_t count) {
  std::vector<std::pair<unsigned, MadeSite>> all;
  for (unsigned seed = 1; all.size() < count; ++seed)
    if (const MadeSite site(seed); site.well_spread()) all.push_back({seed, site});
  return all;
}

}  // namespace squaredig::testing
