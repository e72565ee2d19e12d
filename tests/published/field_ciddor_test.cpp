// Refractivity against an independent formula: the phase index after Ciddor, and the group index by
// its derivative.
// Source: P. E. Ciddor, Applied Optics 35 (1996): constants from memory, proved here by published
// values of the index itself; saturation vapour pressure and enhancement factor of the same paper.
#include <gtest/gtest.h>

#include <cmath>

#include "field/air.h"

namespace squaredig::field {
namespace {

struct MoistAir {
  double celsius, pascal, humidity_percent, co2_ppm;
};

constexpr double kGas = 8.314510;  // J / (mol K), of the paper

double saturation_pascal(double kelvin) {
  return std::exp(1.2378847e-5 * kelvin * kelvin - 1.9121316e-2 * kelvin + 33.93711047 -
                  6.3431645e3 / kelvin);
}

double vapour_fraction(const MoistAir& air) {
  const double f = 1.00062 + 3.14e-8 * air.pascal + 5.6e-7 * air.celsius * air.celsius;
  return f * air.humidity_percent / 100 * saturation_pascal(air.celsius + 273.15) / air.pascal;
}

double compressibility(double t, double p, double x) {
  const double kelvin = t + 273.15, q = p / kelvin;
  return 1 -
         q * (1.58123e-6 - 2.9331e-8 * t + 1.1043e-10 * t * t + (5.707e-6 - 2.051e-8 * t) * x +
              (1.9898e-4 - 2.376e-6 * t) * x * x) +
         q * q * (1.83e-11 - 0.765e-8 * x * x);
}

// n - 1 of light of one wavelength.
double phase(const MoistAir& air, double wavelength_um) {
  const double s = 1 / (wavelength_um * wavelength_um);
  const double dry_standard = 1e-8 * (5792105 / (238.0185 - s) + 167917 / (57.362 - s)) *
                              (1 + 0.534e-6 * (air.co2_ppm - 450));
  const double vapour_standard =
      1.022e-8 * (295.235 + 2.6422 * s - 0.032380 * s * s + 0.004028 * s * s * s);
  const double molar = 1e-3 * (28.9635 + 12.011e-6 * (air.co2_ppm - 400)), vapour = 0.018015;
  const double x = vapour_fraction(air), kelvin = air.celsius + 273.15;
  const double rt = compressibility(air.celsius, air.pascal, x) * kGas * kelvin;
  const double dry_density = air.pascal * molar * (1 - x) / rt;
  const double vapour_density = air.pascal * vapour * x / rt;
  const double dry_at_standard = 101325 * molar / (compressibility(15, 101325, 0) * kGas * 288.15);
  const double vapour_at_standard = 1333 * vapour / (compressibility(20, 1333, 1) * kGas * 293.15);
  return dry_density / dry_at_standard * dry_standard +
         vapour_density / vapour_at_standard * vapour_standard;
}

// A pulse travels with n - l dn/dl.
double group(const MoistAir& air, double wavelength_um) {
  const double step = 1e-4;
  const double slope =
      (phase(air, wavelength_um + step) - phase(air, wavelength_um - step)) / (2 * step);
  return phase(air, wavelength_um) - wavelength_um * slope;
}

// Ciddor 1996, dry air with 450 ppm of carbon dioxide at 633 nm; from memory, recomputed.
TEST(PublishedCiddor, AnchorsOfDryAir) {
  const double celsius[] = {20, 20, 20, 10, 30}, kilopascal[] = {80, 100, 120, 100, 100};
  const double printed[] = {21458.0, 26824.4, 32191.6, 27774.7, 25937.2};
  for (std::size_t i = 0; i < 5; ++i)
    EXPECT_NEAR(phase({celsius[i], kilopascal[i] * 1000, 0, 450}, 0.633) * 1e8, printed[i], 0.06);
}

// NIST Engineering Metrology Toolbox, from the documents of a package that follows it; quoted.
TEST(PublishedCiddor, AnchorsOfMoistAir) {
  EXPECT_NEAR(phase({20, 101325, 20, 450}, 0.633), 0.00027162853, 2e-10);
  EXPECT_NEAR(phase({20, 101325, 80, 450}, 0.633), 0.00027111835, 2e-10);
}

// The closed form of IAG resolution 3 (1999) states 0.25 ppm for itself.
TEST(PublishedCiddor, GroupRefractivityAgreesInAnyAirOfABuildingSite) {
  for (const double wavelength : {0.658, 0.785, 0.850, 0.910})
    for (const double t : {-10.0, 0.0, 12.0, 25.0, 40.0})
      for (const double hpa : {850.0, 950.0, 1013.25, 1040.0})
        for (const double humidity : {0.0, 50.0, 100.0}) {
          const MoistAir air{t, hpa * 100, humidity, 375};
          const double e = vapour_fraction(air) * hpa;
          const double told = 100 * e / vapour_pressure_hpa(t, 100);
          EXPECT_NEAR(refractivity({t, hpa, told}, wavelength), group(air, wavelength) * 1e6, 0.25)
              << wavelength << " um, " << t << " C, " << hpa << " hPa, " << humidity << " %";
        }
}

}  // namespace
}  // namespace squaredig::field
