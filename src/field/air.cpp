#include "field/air.h"

#include <cmath>

namespace squaredig::field {

double standard_refractivity(double wavelength_um) {
  const double l2 = wavelength_um * wavelength_um;
  return 287.6155 + 4.88660 / l2 + 0.06800 / (l2 * l2);
}

double vapour_pressure_hpa(double temperature_c, double humidity_percent) {
  const double saturated = 6.1078 * std::pow(10.0, 7.5 * temperature_c / (237.3 + temperature_c));
  return saturated * humidity_percent / 100;
}

double refractivity(const Air& air, double wavelength_um) {
  constexpr double kIcePoint = 273.15, kStandardPressure = 1013.25;
  const double kelvin = kIcePoint + air.temperature_c;
  const double vapour =
      air.humidity_percent ? vapour_pressure_hpa(air.temperature_c, *air.humidity_percent) : 0;
  return kIcePoint / kStandardPressure * standard_refractivity(wavelength_um) * air.pressure_hpa /
             kelvin -
         11.27 * vapour / kelvin;
}

Length in_this_air(Length shown, const DistanceAir& air) {
  const double wavelength = air.wavelength_um.value_or(kUsualWavelengthUm);
  Air met = air.met, reference = air.reference;
  // humidity counts only where it is known on both sides
  if (!met.humidity_percent || !reference.humidity_percent)
    met.humidity_percent = reference.humidity_percent = std::nullopt;
  return shown * ((1 + refractivity(reference, wavelength) * 1e-6) /
                  (1 + refractivity(met, wavelength) * 1e-6));
}

}  // namespace squaredig::field
