// Faces: readings in face left and right of one target become one sight, free of the instrument's
// index and collimation errors.
//
// Frame and units: circles as read; a sight's direction is that of face left.
// Requires: faces that agree with their zenith angles.
// Laws: faces.1 the mean of both faces does not depend on index and collimation; faces.2 a sight in
//   one face is freed of the set-up's own errors where pairs give them; faces.3 the mean of
//   directions is taken across north.
// Accuracy: one rounding. Errors: none.
// Source: zenith = (left + 360 - right) / 2, index and collimation by definition; collimation acts
//   on a direction by 1 / sin z (from memory).
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "field/field_input.h"
#include "field/field_result.h"

namespace squaredig::field {

Angle zenith_of_faces(Angle left, Angle right);
Angle direction_of_faces(Angle left, Angle right);

// One sight: one reading, or two in both faces, of one target.
struct Sight {
  std::string target;
  std::string code;
  Angle direction;
  std::optional<Angle> zenith;
  std::optional<Length> slope;  // prism constant and air are in it
  Length target_height;
  std::size_t readings = 1;
  std::vector<Place> places;
};

struct FacesReduced {
  std::vector<Sight> sights;  // in the order of their first lines
  std::optional<FaceErrors> errors;
  std::vector<Finding> findings;
};

// The sights of one set-up. The sigmas are of one pointing in one face.
struct PointingSigmas {
  Angle direction;
  Angle zenith;
  Length distance;
};
FacesReduced reduce_faces(std::span<const StationShot> shots, const PointingSigmas& sigmas);

}  // namespace squaredig::field
