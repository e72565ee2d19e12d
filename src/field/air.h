// What air does to a measured distance: group refractivity and the first velocity correction.
//
// Frame and units: refractivity in parts per million, (n - 1) 1e6; degrees Celsius, hectopascals,
//   percent of relative humidity over water; wavelengths in micrometres.
// Laws: air.1 in the reference air the correction is zero; air.2 warmer or thinner air lengthens
//   the distance.
// Accuracy: 0.25 ppm as the resolution states; humidity left out is worth up to 0.7 ppm at 30 C.
// Errors: none.
// Source: group refractivity of visible and near-infrared light, IAG resolution 3 of 1999, closed
//   form (constants quoted in two public copies); vapour pressure by the Magnus formula (from
//   memory).
#pragma once

#include "field/field_input.h"

namespace squaredig::field {

// Taken where an instrument's wavelength is not given: 0.2 um more or less changes a correction of
// 10 ppm by 0.2 ppm.
inline constexpr double kUsualWavelengthUm = 0.658;

// Group refractivity of standard air: 0 C, 1013.25 hPa, dry.
double standard_refractivity(double wavelength_um);
double vapour_pressure_hpa(double temperature_c, double humidity_percent);
// Without humidity the air is taken as dry.
double refractivity(const Air& air, double wavelength_um);
// The distance in the air it was measured in.
Length in_this_air(Length shown, const DistanceAir& air);

}  // namespace squaredig::field
