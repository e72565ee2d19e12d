#include "report/depth_ramp.h"

#include <algorithm>
#include <cmath>

namespace squaredig::report {
namespace {

Colour between(Colour a, Colour b, double t) {
  return {a.red + t * (b.red - a.red), a.green + t * (b.green - a.green),
          a.blue + t * (b.blue - a.blue)};
}

double linear(double channel) {
  return channel <= 0.04045 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
}

}  // namespace

Colour depth_colour(double share) {
  constexpr Colour kDeep{0, 32 / 255.0, 76 / 255.0};
  constexpr Colour kMiddle{117 / 255.0, 117 / 255.0, 117 / 255.0};
  constexpr Colour kShallow{1, 233 / 255.0, 69 / 255.0};
  const double t = 1 - std::clamp(share, 0.0, 1.0);
  return t < 0.47 ? between(kDeep, kMiddle, t / 0.47)
                  : between(kMiddle, kShallow, (t - 0.47) / 0.53);
}

// Relative luminance as the web accessibility guidelines define it (WCAG 2.1).
double luminance(Colour c) {
  return 0.2126 * linear(c.red) + 0.7152 * linear(c.green) + 0.0722 * linear(c.blue);
}

Colour lettering_on(Colour ground) {
  // the better of the contrasts (L1 + 0.05) / (L2 + 0.05)
  const double l = luminance(ground);
  return (l + 0.05) / 0.05 > 1.05 / (l + 0.05) ? kInk : kPaper;
}

}  // namespace squaredig::report
