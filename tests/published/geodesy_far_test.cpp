// The transverse Mercator projection far from its meridian, and the national series of Great
// Britain as a second, dumber answer.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <random>

#include "geodesy/grid.h"
#include "quantity/angle_text.h"

namespace squaredig::geodesy {
namespace {

// DAT-20 to DAT-22: C. F. F. Karney, test set for the transverse Mercator projection (Zenodo
// 32470), computed with 80 digits; quoted. WGS 84, scale 0.9996; here zone 31 and its false
// easting.
TEST(PublishedTransverseMercator, FarFromTheMeridian) {
  struct Row {
    const char* id;
    double latitude, longitude, x, y, gamma, k;
  };
  const Row rows[] = {{"DAT-20", 70.579277094557, 45.599419731762, 1548706.7916191491794,
                       8451449.1987722350778, 43.92279012104, 1.02906022838},
                      {"DAT-21", 21.072464821428, 29.82868439326, 3206390.6919962592145,
                       2650745.4004060203847, 11.66694978858, 1.12935868700},
                      {"DAT-22", 5.458957393183, 36.385237374895, 4328154.0835012728645,
                       749647.6236903529367, 4.02431708843, 1.24082851823}};
  const Grid zone = Grid::open("EPSG:32631", {"job.toml", 5, 11});
  for (const Row& r : rows) {
    const GridPoint p = zone.to_grid({Angle::degrees(r.latitude), Angle::degrees(3 + r.longitude)});
    EXPECT_NEAR(p.easting.in_metres(), 500000 + r.x, 1e-6) << r.id;
    EXPECT_NEAR(p.northing.in_metres(), r.y, 1e-6) << r.id;
    const GridFactors f = zone.factors(p);
    EXPECT_NEAR(f.convergence.in_degrees(), r.gamma, 1e-8) << r.id;
    EXPECT_NEAR(f.point_scale.value(), r.k, 1e-9) << r.id;
  }
}

// The series of the Ordnance Survey's guide v2.2, annexe C, with the names it gives the terms.
struct Series {
  static constexpr double kA = 6377563.396, kB = 6356256.909, kF0 = 0.9996012717;
  static constexpr double kN0 = -100000, kE0 = 400000;
  static constexpr double kPhi0 = 49 * std::numbers::pi / 180;
  static constexpr double kLambda0 = -2 * std::numbers::pi / 180;
  static constexpr double kE2 = 1 - kB * kB / (kA * kA);

  explicit Series(double latitude) : phi(latitude) {
    const double s2 = std::sin(phi) * std::sin(phi);
    nu = kA * kF0 / std::sqrt(1 - kE2 * s2);
    rho = kA * kF0 * (1 - kE2) * std::pow(1 - kE2 * s2, -1.5);
    eta2 = nu / rho - 1;
    const double n = (kA - kB) / (kA + kB), n2 = n * n, n3 = n2 * n;
    const double d = phi - kPhi0, sum = phi + kPhi0;
    meridian = kB * kF0 *
               ((1 + n + 1.25 * n2 + 1.25 * n3) * d -
                (3 * n + 3 * n2 + 2.625 * n3) * std::sin(d) * std::cos(sum) +
                (1.875 * n2 + 1.875 * n3) * std::sin(2 * d) * std::cos(2 * sum) -
                35.0 / 24 * n3 * std::sin(3 * d) * std::cos(3 * sum));
  }

  GridPoint at(double lambda) {
    const double s = std::sin(phi), c = std::cos(phi), c3 = c * c * c, c5 = c3 * c * c;
    const double t2 = std::pow(std::tan(phi), 2), t4 = t2 * t2;
    i = meridian + kN0;
    ii = nu / 2 * s * c;
    iii = nu / 24 * s * c3 * (5 - t2 + 9 * eta2);
    iiia = nu / 720 * s * c5 * (61 - 58 * t2 + t4);
    iv = nu * c;
    v = nu / 6 * c3 * (nu / rho - t2);
    vi = nu / 120 * c5 * (5 - 18 * t2 + t4 + 14 * eta2 - 58 * t2 * eta2);
    const double l = lambda - kLambda0, l2 = l * l;
    return grid_point(kE0 + l * (iv + l2 * (v + l2 * vi)), i + l2 * (ii + l2 * (iii + l2 * iiia)));
  }

  double phi = 0, nu = 0, rho = 0, eta2 = 0, meridian = 0;
  double i = 0, ii = 0, iii = 0, iiia = 0, iv = 0, v = 0, vi = 0;
};

double radians(const char* text) {
  return parse_angle(text, AngleNotation::DegreesMinutesSeconds)->in_radians();
}
void expect_digits(double value, double printed) {
  EXPECT_NEAR(value, printed, std::abs(printed) * 1.2e-10);
}

// DAT-8: the guide's example, Caister water tower, p.40-41; seen: every term that it prints.
TEST(PublishedNationalGrid, TheGuidesTermsAtCaister) {
  Series s(radians("52 39 27.2531"));
  const GridPoint p = s.at(radians("1 43 04.5177"));
  expect_digits(s.nu, 6.3885023339e6);
  expect_digits(s.rho, 6.3727564398e6);
  EXPECT_NEAR(s.eta2, 2.4708137334e-3, 1e-13);
  EXPECT_NEAR(s.meridian, 4.0668829595e5, 1e-4);
  EXPECT_NEAR(s.i, 3.0668829595e5, 1e-4);
  expect_digits(s.ii, 1.5404079094e6);
  expect_digits(s.iii, 1.5606875430e5);
  EXPECT_NEAR(s.iiia, -2.0671123013e4, 1e-5);
  expect_digits(s.iv, 3.8751205752e6);
  EXPECT_NEAR(s.v, -1.7000078207e5, 1e-4);
  EXPECT_NEAR(s.vi, -1.0134470437e5, 1e-4);
  EXPECT_NEAR(p.easting.in_metres(), 651409.903, 6e-4);
  EXPECT_NEAR(p.northing.in_metres(), 313177.270, 6e-4);
}

// DAT-9: the guide's way back, p.42; seen: the latitude whose meridian has the northing, and two of
// the terms.
TEST(PublishedNationalGrid, TheGuidesTermsBackFromCaister) {
  const double northing = 313177.270;
  double phi = Series::kPhi0 + (northing - Series::kN0) / (Series::kA * Series::kF0);
  for (int turn = 0; turn < 9; ++turn)
    phi += (northing - Series::kN0 - Series(phi).meridian) / (Series::kA * Series::kF0);
  EXPECT_NEAR(phi, 9.2006620954e-1, 2e-11);
  const Series s(phi);
  const double t = std::tan(phi);
  expect_digits(t / (2 * s.rho * s.nu), 1.6130562489e-14);
  expect_digits(1 / (std::cos(phi) * s.nu), 2.5840062507e-7);
}

TEST(PublishedNationalGrid, TheGuidesSeriesAgreesOverTheWholeCountry) {
  const Grid grid = Grid::open("EPSG:27700", {"job.toml", 5, 11});
  constexpr unsigned kSeed = 27700;
  std::mt19937_64 random(kSeed);
  std::uniform_real_distribution<double> latitude(50, 60), longitude(-6, 1.7);
  for (int i = 0; i < 300; ++i) {
    const Angle phi = Angle::degrees(latitude(random)), lambda = Angle::degrees(longitude(random));
    const GridPoint series = Series(phi.in_radians()).at(lambda.in_radians());
    EXPECT_LT(distance(grid.to_grid({phi, lambda}), series).in_metres(), 0.001)
        << phi.in_degrees() << " " << lambda.in_degrees() << " seed " << kSeed;
  }
}

}  // namespace
}  // namespace squaredig::geodesy
