#include "report/depth_ramp.h"

#include <algorithm>
#include <cmath>

namespace squaredig::report {
namespace {

struct Lab {
  double lightness = 0, a = 0, b = 0;
};

Lab between(const Lab& from, const Lab& to, double t) {
  return {from.lightness + t * (to.lightness - from.lightness), from.a + t * (to.a - from.a),
          from.b + t * (to.b - from.b)};
}

double encoded(double light) {
  const double v = std::clamp(light, 0.0, 1.0);
  return v <= 0.0031308 ? 12.92 * v : 1.055 * std::pow(v, 1 / 2.4) - 0.055;
}

// CIE L*a*b*, white point D65.
Colour srgb(const Lab& lab) {
  const auto inverse = [](double t) {
    return t > 6.0 / 29 ? t * t * t : 3 * (6.0 / 29) * (6.0 / 29) * (t - 4.0 / 29);
  };
  const double middle = (lab.lightness + 16) / 116;
  const double x = 0.95047 * inverse(middle + lab.a / 500);
  const double y = inverse(middle);
  const double z = 1.08883 * inverse(middle - lab.b / 200);
  return {encoded(3.2404542 * x - 1.5371385 * y - 0.4985314 * z),
          encoded(-0.9692660 * x + 1.8760108 * y + 0.0415560 * z),
          encoded(0.0556434 * x - 0.2040259 * y + 1.0572252 * z)};
}

}  // namespace

Colour depth_colour(double share) {
  constexpr Lab kShallow{94, -2, 20};
  constexpr Lab kDeep{60, -6, -29};
  return srgb(between(kShallow, kDeep, std::clamp(share, 0.0, 1.0)));
}

Colour deviation_colour(double share) {
  constexpr Lab kAsPlanned{99, 0, 0};
  constexpr Lab kHigh{60, 42, 38};
  constexpr Lab kLow{60, -4, -42};
  const double t = std::clamp(share, -1.0, 1.0);
  return srgb(between(kAsPlanned, t > 0 ? kHigh : kLow, std::abs(t)));
}

}  // namespace squaredig::report
