#include "field/faces.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "field/air.h"
#include "quantity/number_text.h"

namespace squaredig::field {
namespace {

// In (-180, 180].
double near_zero(double degrees) {
  const double turned = std::remainder(degrees, 360.0);
  return turned == -180 ? 180 : turned;
}

struct Pair {
  const StationShot* left;
  const StationShot* right;  // null: read in one face only
};

bool is_right(const StationShot& shot) { return shot.face == Face::Right; }

// Face left with face right of one target and target height, the first with the first.
std::vector<Pair> paired(std::span<const StationShot> shots) {
  std::vector<Pair> pairs;
  std::map<std::pair<std::string, double>, std::array<std::vector<std::size_t>, 2>> open;
  for (const StationShot& shot : shots) {
    auto& waiting = open[{shot.target, shot.target_height.value_or(Length{}).in_metres()}];
    const std::size_t own = is_right(shot) ? 1 : 0;
    if (auto& partner = waiting[1 - own]; !partner.empty()) {
      Pair& pair = pairs[partner.front()];
      partner.erase(partner.begin());
      if (own == 1)
        pair.right = &shot;
      else
        pair = {&shot, pair.left};
    } else {
      waiting[own].push_back(pairs.size());
      pairs.push_back({&shot, nullptr});
    }
  }
  return pairs;
}

double collimation_of(const Pair& p) {
  const double half =
      near_zero(p.left->horizontal.in_degrees() + 180 - p.right->horizontal.in_degrees()) / 2;
  return p.left->zenith ? half * sine(*p.left->zenith) : half;
}

std::optional<double> index_of(const Pair& p) {
  if (!p.left->zenith || !p.right->zenith) return std::nullopt;
  return (p.left->zenith->in_degrees() + p.right->zenith->in_degrees() - 360) / 2;
}

double median(std::vector<double> values) {
  if (values.empty()) return 0;
  std::sort(values.begin(), values.end());
  const std::size_t middle = values.size() / 2;
  return values.size() % 2 == 1 ? values[middle] : (values[middle - 1] + values[middle]) / 2;
}

std::optional<FaceErrors> errors_of(const std::vector<Pair>& pairs) {
  std::vector<double> collimations, indices;
  for (const Pair& p : pairs) {
    if (p.right == nullptr) continue;
    collimations.push_back(collimation_of(p));
    if (const auto index = index_of(p)) indices.push_back(*index);
  }
  if (collimations.empty()) return std::nullopt;
  return FaceErrors{collimations.size(), Angle::degrees(median(indices)),
                    Angle::degrees(median(collimations))};
}

Length distance_of(const StationShot& shot) {
  const Length with_constant = *shot.slope_distance + shot.prism_constant;
  return shot.air ? in_this_air(with_constant, *shot.air) : with_constant;
}

std::string where(const Place& place) { return place.file + ":" + std::to_string(place.line); }

std::string seconds(double degrees) { return fixed(degrees * 3600, 1) + "\""; }

class Reducer {
 public:
  Reducer(std::span<const StationShot> shots, const PointingSigmas& sigmas)
      : sigmas_(sigmas), pairs_(paired(shots)) {
    out_.errors = errors_of(pairs_);
  }

  FacesReduced reduce() {
    for (const Pair& pair : pairs_)
      out_.sights.push_back(pair.right ? both(pair) : one(*pair.left));
    return std::move(out_);
  }

 private:
  Sight both(const Pair& p) {
    Sight sight = begun(*p.left);
    sight.readings = 2;
    sight.places = {p.left->place, p.right->place};
    std::sort(sight.places.begin(), sight.places.end(),
              [](const Place& a, const Place& b) { return a.line < b.line; });
    sight.direction = direction_of_faces(p.left->horizontal, p.right->horizontal);
    if (p.left->zenith && p.right->zenith)
      sight.zenith = zenith_of_faces(*p.left->zenith, *p.right->zenith);
    if (p.left->slope_distance && p.right->slope_distance)
      sight.slope = (distance_of(*p.left) + distance_of(*p.right)) / 2;
    else if (p.right->slope_distance)
      sight.slope = distance_of(*p.right);
    check(p);
    return sight;
  }

  Sight one(const StationShot& shot) {
    Sight sight = begun(shot);
    sight.places = {shot.place};
    const FaceErrors none{};
    const FaceErrors& e = out_.errors ? *out_.errors : none;
    const double side = is_right(shot) ? -1 : 1;
    const double height = shot.zenith ? std::abs(sine(*shot.zenith)) : 1;
    const double turn = side * e.collimation.in_degrees() / height;
    sight.direction =
        Bearing::degrees(shot.horizontal.in_degrees() - turn + (is_right(shot) ? 180 : 0))
            .from_north();
    if (shot.zenith)
      sight.zenith =
          is_right(shot) ? Angle::degrees(360) - *shot.zenith + e.index : *shot.zenith - e.index;
    return sight;
  }

  Sight begun(const StationShot& shot) const {
    Sight sight;
    sight.target = shot.target;
    sight.code = shot.code;
    sight.target_height = shot.target_height.value_or(Length{});
    if (shot.slope_distance) sight.slope = distance_of(shot);
    return sight;
  }

  void tell(const Pair& p, const std::string& what, const std::string& amount) {
    out_.findings.push_back({"faces-disagree", where(p.left->place) + " and " +
                                                   std::to_string(p.right->place.line) +
                                                   ": both faces of " + quoted(p.left->target) +
                                                   " disagree in " + what + " by " + amount});
  }

  // A pair against the set-up's median: what one pair says of itself cannot be checked in angles.
  void check(const Pair& p) {
    const auto pairs = static_cast<double>(out_.errors->pairs);
    const double spread = std::sqrt(0.5 * (1 + 1 / pairs));
    const double c = collimation_of(p) - out_.errors->collimation.in_degrees();
    if (std::abs(c) > kTests.critical * spread * sigmas_.direction.in_degrees())
      tell(p, "direction", seconds(2 * c) + " beyond the set-up's collimation");
    if (const auto index = index_of(p)) {
      const double i = *index - out_.errors->index.in_degrees();
      if (std::abs(i) > kTests.critical * spread * sigmas_.zenith.in_degrees())
        tell(p, "zenith angle", seconds(2 * i) + " beyond the set-up's index");
    }
    if (!p.left->slope_distance || !p.right->slope_distance) return;
    const Length d = distance_of(*p.left) - distance_of(*p.right);
    if (abs(d) > sigmas_.distance * (kTests.critical * std::sqrt(2.0)))
      tell(p, "distance", fixed(d.in_millimetres(), 1) + " mm");
  }

  PointingSigmas sigmas_;
  std::vector<Pair> pairs_;
  FacesReduced out_;
};

}  // namespace

Angle zenith_of_faces(Angle left, Angle right) {
  return Angle::degrees((left.in_degrees() + 360 - right.in_degrees()) / 2);
}

Angle direction_of_faces(Angle left, Angle right) {
  const double apart = near_zero(right.in_degrees() - 180 - left.in_degrees());
  return Bearing::degrees(left.in_degrees() + apart / 2).from_north();
}

FacesReduced reduce_faces(std::span<const StationShot> shots, const PointingSigmas& sigmas) {
  return Reducer(shots, sigmas).reduce();
}

}  // namespace squaredig::field
