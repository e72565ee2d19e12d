// Projections, point scale and convergence against an independent library: GeographicLib.
#include <gtest/gtest.h>

#include <GeographicLib/LambertConformalConic.hpp>
#include <GeographicLib/TransverseMercator.hpp>
#include <random>

#include "geodesy/grid.h"

namespace squaredig::geodesy {
namespace {

constexpr unsigned kSeed = 41;
constexpr double kMetres = 1e-6, kFactors = 1e-10;  // scale, and radians of convergence

struct Ellipsoid {
  double a, inverse_flattening;
};
constexpr Ellipsoid kGrs80{6378137, 298.257222101}, kWgs84{6378137, 298.257223563};
constexpr Ellipsoid kAiry{6377563.396, 299.3249646}, kBessel{6377397.155, 299.1528128};

struct Zone {
  const char* code;
  Ellipsoid earth;
  double central, origin, scale, false_east, false_north, south, north, half_width;
};

struct Told {
  double x, y, gamma, k;  // of the other library: degrees
};

void expect_same(const Grid& grid, Geographic at, const Told& other, bool factors_too) {
  const GridPoint p = grid.to_grid(at);
  EXPECT_NEAR(p.easting.in_metres(), other.x, kMetres) << grid.code() << " seed " << kSeed;
  EXPECT_NEAR(p.northing.in_metres(), other.y, kMetres) << grid.code() << " seed " << kSeed;
  const Geographic back = grid.to_geographic(grid_point(other.x, other.y));
  const double radius = 6.4e6;
  EXPECT_NEAR((back.latitude - at.latitude).in_radians() * radius, 0, kMetres) << grid.code();
  EXPECT_NEAR((back.longitude - at.longitude).in_radians() * radius, 0, kMetres) << grid.code();
  if (!factors_too) return;
  const GridFactors f = grid.factors(p);
  EXPECT_NEAR(f.point_scale.value(), other.k, kFactors) << grid.code() << " seed " << kSeed;
  EXPECT_NEAR((f.convergence - Angle::degrees(other.gamma)).in_radians(), 0, kFactors)
      << grid.code() << " seed " << kSeed;
}

template <class Projection>
void compare(const Zone& z, const Projection& other) {
  const Grid grid = Grid::open(z.code, {"job.toml", 1, 1});
  std::mt19937_64 random(kSeed);
  std::uniform_real_distribution<double> latitude(z.south, z.north);
  std::uniform_real_distribution<double> longitude(z.central - z.half_width,
                                                   z.central + z.half_width);
  double x0 = 0, y0 = 0, gamma0 = 0, k0 = 0;
  other.Forward(z.central, z.origin, z.central, x0, y0, gamma0, k0);
  for (int i = 0; i < 60; ++i) {
    const double lat = latitude(random), lon = longitude(random);
    Told told{};
    other.Forward(z.central, lat, lon, told.x, told.y, told.gamma, told.k);
    told.x += z.false_east - x0;
    told.y += z.false_north - y0;
    // the library takes its time over factors: every third point has them
    expect_same(grid, {Angle::degrees(lat), Angle::degrees(lon)}, told, i % 3 == 0);
  }
}

// Both hemispheres, the far north, the equator, four ellipsoids, easting and northing first.
TEST(SecondOpinion, TransverseMercatorToAMicrometre) {
  const Zone zones[] = {{"EPSG:7855", kGrs80, 147, 0, 0.9996, 500000, 10000000, -43, -28, 3},
                        {"EPSG:7853", kGrs80, 135, 0, 0.9996, 500000, 10000000, -38, -12, 3},
                        {"EPSG:25831", kGrs80, 3, 0, 0.9996, 500000, 0, 38, 60, 3},
                        {"EPSG:25833", kGrs80, 15, 0, 0.9996, 500000, 0, 71, 84, 6},
                        {"EPSG:32638", kWgs84, 45, 0, 0.9996, 500000, 0, 0, 20, 3},
                        {"EPSG:32701", kWgs84, -177, 0, 0.9996, 500000, 10000000, -30, -10, 2.9},
                        {"EPSG:2157", kGrs80, -8, 53.5, 0.99982, 600000, 750000, 51.4, 55.4, 2.5},
                        {"EPSG:27700", kAiry, -2, 49, 0.9996012717, 400000, -100000, 50, 60.8, 4},
                        {"EPSG:2193", kGrs80, 173, 0, 0.9996, 1600000, 10000000, -47.3, -34.1, 5},
                        {"EPSG:3067", kGrs80, 27, 0, 0.9996, 500000, 0, 59.3, 70.1, 7},
                        {"EPSG:6676", kGrs80, 138.5, 36, 0.9999, 0, 0, 34.5, 38.6, 1.4},
                        {"EPSG:31467", kBessel, 9, 0, 1, 3500000, 0, 47.3, 55.1, 1.5}};
  for (const Zone& z : zones)
    compare(z,
            GeographicLib::TransverseMercator(z.earth.a, 1 / z.earth.inverse_flattening, z.scale));
}

TEST(SecondOpinion, LambertConformalToAMicrometre) {
  const Zone one{"EPSG:24200", {}, -77, 18, 1, 250000, 150000, 17.6, 18.6, 1.3};
  constexpr double kClarkeA = 6378206.4, kClarkeB = 6356583.8;
  compare(one, GeographicLib::LambertConformalConic(kClarkeA, (kClarkeA - kClarkeB) / kClarkeA,
                                                    one.origin, one.scale));
  const Zone two{"EPSG:2154", kGrs80, 3, 46.5, 1, 700000, 6600000, 42, 51, 5};
  compare(two, GeographicLib::LambertConformalConic(two.earth.a, 1 / two.earth.inverse_flattening,
                                                    49, 44, two.scale));
}

}  // namespace
}  // namespace squaredig::geodesy
