#include "field/ellipse.h"

#include <algorithm>
#include <cmath>

namespace squaredig::field {

ErrorEllipse error_ellipse(const Covariance& c) {
  const double mean = (c.ee + c.nn) / 2;
  const double half_range = std::hypot((c.ee - c.nn) / 2, c.en);
  const double bearing = Angle::radians(std::atan2(2 * c.en, c.nn - c.ee) / 2).in_degrees();
  return {Length::metres(std::sqrt(mean + half_range)),
          Length::metres(std::sqrt(std::max(mean - half_range, 0.0))),
          Bearing::degrees(bearing < 0 ? bearing + 180 : bearing)};
}

}  // namespace squaredig::field
