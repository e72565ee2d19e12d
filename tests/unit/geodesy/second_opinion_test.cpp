// Projections, point scale and convergence against an independent library.
#include <gtest/gtest.h>

#include <GeographicLib/Constants.hpp>
#include <GeographicLib/TransverseMercator.hpp>
#include <random>

#include "geodesy/grid.h"

namespace squaredig::geodesy {
namespace {

constexpr double kGrs80 = 6378137, kFlattening = 1 / 298.257222101;

struct Zone {
  const char* code;
  double central, scale, false_east, false_north, south, north, half_width;
};

TEST(SecondOpinion, TransverseMercatorToAMicrometre) {
  const Zone zones[] = {{"EPSG:7855", 147, 0.9996, 500000, 10000000, -43, -28, 3},
                        {"EPSG:7853", 135, 0.9996, 500000, 10000000, -38, -12, 3},
                        {"EPSG:25831", 3, 0.9996, 500000, 0, 38, 60, 3}};
  constexpr unsigned kSeed = 41;
  std::mt19937_64 random(kSeed);
  for (const Zone& z : zones) {
    const Grid grid = Grid::open(z.code, {"job.toml", 1, 1});
    const GeographicLib::TransverseMercator other(kGrs80, kFlattening, z.scale);
    std::uniform_real_distribution<double> latitude(z.south, z.north);
    std::uniform_real_distribution<double> longitude(z.central - z.half_width,
                                                     z.central + z.half_width);
    for (int i = 0; i < 60; ++i) {
      const double lat = latitude(random), lon = longitude(random);
      double x = 0, y = 0, gamma = 0, k = 0;
      other.Forward(z.central, lat, lon, x, y, gamma, k);
      const GridPoint p = grid.to_grid({Angle::degrees(lat), Angle::degrees(lon)});
      EXPECT_NEAR(p.easting.in_metres(), x + z.false_east, 1e-6) << z.code << " seed " << kSeed;
      EXPECT_NEAR(p.northing.in_metres(), y + z.false_north, 1e-6) << z.code << " seed " << kSeed;
      const GridFactors f = grid.factors(p);
      EXPECT_NEAR(f.point_scale.value(), k, 1e-10) << z.code << " seed " << kSeed;
      EXPECT_NEAR((f.convergence - Angle::degrees(gamma)).in_radians(), 0, 1e-10)
          << z.code << " seed " << kSeed;
    }
  }
}

}  // namespace
}  // namespace squaredig::geodesy
