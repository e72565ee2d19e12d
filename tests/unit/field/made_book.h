// A total-station book made from true places: readings without error, or with errors drawn from a
// fixed seed.
#pragma once

#include <cmath>
#include <random>
#include <string>

#include "field/ray.h"
#include "field/reduce.h"

namespace squaredig::testing {

inline const field::Earth kEarth{Length::metres(6371000), Ratio::of(0.13)};

struct Standard {
  double direction_sec = 5, zenith_sec = 5, distance_mm = 2, ppm = 2;
};

class MadeBook {
 public:
  explicit MadeBook(Standard sigmas = {}, std::optional<unsigned> seed = std::nullopt)
      : sigmas_(sigmas) {
    if (seed) random_.emplace(*seed);
    input.sigma_direction = Angle::seconds(sigmas.direction_sec);
    input.sigma_zenith = Angle::seconds(sigmas.zenith_sec);
    input.sigma_distance = Length::millimetres(sigmas.distance_mm);
    input.sigma_distance_per_length = Ratio::of(sigmas.ppm * 1e-6);
    input.refraction = Ratio::of(0.13);
    input.place = {"job.toml", 9, 1};
    control_file_ = input.control.add_file("control.csv");
  }

  void control(const std::string& name, GridPosition at, float sigma_mm = -1) {
    SurveyPoint p;
    p.at = at;
    p.file = control_file_;
    p.sigma_plan_mm = p.sigma_height_mm = sigma_mm;
    input.control.add(p, name, "");
  }

  void stand(std::string setup, std::string station, GridPosition at, double orientation_deg,
             double instrument_height = 1.6) {
    setup_ = std::move(setup);
    station_ = std::move(station);
    at_ = at;
    orientation_ = orientation_deg;
    hi_ = instrument_height;
  }

  // One sight, in face left; a target height of 1.5 m. Angles and distances get random errors where
  // the book was made with a seed.
  field::StationShot& sight(const std::string& target, GridPosition to,
                            const std::string& code = "") {
    const field::Ray ray = true_ray(to);
    field::StationShot shot;
    shot.setup = setup_;
    shot.station = station_;
    shot.instrument_height = Length::metres(hi_);
    shot.target = target;
    shot.target_height = Length::metres(1.5);
    shot.code = code;
    const double bearing = Bearing::of_line(at_.at, to.at).in_degrees();
    const double s = ray.slope.in_metres();
    shot.horizontal = circle(bearing - orientation_ + error(sigmas_.direction_sec) / 3600);
    shot.zenith = ray.zenith + Angle::seconds(error(sigmas_.zenith_sec));
    shot.slope_distance =
        ray.slope +
        Length::millimetres(error(std::hypot(sigmas_.distance_mm, sigmas_.ppm * s * 1e-3)));
    shot.face = field::Face::Left;
    shot.place = {"setups.csv", static_cast<int>(input.stations.size()) + 2, 1};
    input.stations.push_back(shot);
    return input.stations.back();
  }

  // The same target in face right, with the instrument's errors in both.
  void both_faces(const std::string& target, GridPosition to, Angle index, Angle collimation) {
    field::StationShot left = sight(target, to);
    const Angle turn = collimation / sine(*left.zenith);
    field::StationShot right = left;
    right.face = field::Face::Right;
    right.horizontal = circle((left.horizontal + Angle::degrees(180) - turn).in_degrees());
    right.zenith = Angle::degrees(360) - *left.zenith + index;
    right.place.line += 1;
    input.stations.back().horizontal = circle((left.horizontal + turn).in_degrees());
    input.stations.back().zenith = *left.zenith + index;
    input.stations.push_back(right);
  }

  field::FieldResult reduce() const { return field::reduce(input, {}); }

  field::FieldInput input;

 private:
  static Angle circle(double degrees) { return Bearing::degrees(degrees).from_north(); }

  double error(double sigma) { return random_ ? sigma * normal_(*random_) : 0; }

  field::Ray true_ray(GridPosition to) const {
    const double above = at_.height.in_metres() + hi_;
    const double scale = (kEarth.radius.in_metres() + above) / kEarth.radius.in_metres();
    const Length arc = distance(at_.at, to.at) / scale;
    const Length rise = (to.height - at_.height) + Length::metres(1.5 - hi_);
    return field::ray_of({arc, rise}, kEarth, Length::metres(above));
  }

  Standard sigmas_;
  std::optional<std::mt19937_64> random_;
  std::normal_distribution<double> normal_;
  std::uint16_t control_file_ = 0;
  std::string setup_, station_;
  GridPosition at_;
  double orientation_ = 0, hi_ = 1.6;
};

}  // namespace squaredig::testing
