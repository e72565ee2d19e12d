// Coordinates: polar and inverse, traverses, intersections, similarities.
#include <gtest/gtest.h>

#include <cmath>

#include "field/ellipse.h"
#include "field/intersection.h"
#include "field/similarity.h"
#include "field/traverse.h"
#include "quantity/angle_text.h"
#include "refusal_text.h"

namespace squaredig::field {
namespace {

Angle dms(const char* text) { return *parse_angle(text, AngleNotation::DegreesMinutesSeconds); }
Bearing azimuth(const char* text) { return Bearing::degrees(dms(text).in_degrees()); }
Length m(double v) { return Length::metres(v); }

TraverseLeg leg(double length, const char* bearing) { return {azimuth(bearing), m(length)}; }

// TRV-1: GDA2020 Technical Manual v1.3, table C.1 p.74; seen. Plane distance and bearing.
TEST(PublishedCoordinates, PolarAndInverse) {
  const GridPoint flinders = grid_point(273741.297, 5796489.777);
  const GridPoint buninyong = grid_point(228854.051, 5828259.038);
  EXPECT_NEAR(distance(buninyong, flinders).in_metres(), 54992.279, 0.001);
  const Bearing theta = Bearing::of_line(buninyong, flinders);
  EXPECT_NEAR((theta.from_north() - dms("125 17 21.18")).in_seconds(), 0, 0.02);
  EXPECT_NEAR(distance(ahead(buninyong, theta, m(54992.279)), flinders).in_metres(), 0, 0.006);
}

// TRV-2 with ERR-3: NPTEL surveying course, examples 29-4 and 29-6; quoted. The traverse table
// prints 94 42 as azimuth of BC; its own differences and closures only fit 94 03.
TEST(PublishedCoordinates, BowditchOfFourLegs) {
  const std::vector<TraverseLeg> legs = {leg(372.222, "0 42 00"), leg(164.988, "94 03 00"),
                                         leg(242.438, "183 04 00"), leg(197.145, "232 51 00")};
  const Traverse t = closed_traverse(legs);
  const double de[] = {4.547, 164.576, -12.970, -157.136},
               dn[] = {372.194, -11.653, -242.091, -119.056};
  const double ce[] = {0.375, 0.166, 0.244, 0.198}, cn[] = {0.231, 0.102, 0.151, 0.122};
  const double ae[] = {4.922, 164.742, -12.726, -156.938};
  const double an[] = {372.425, -11.551, -241.940, -118.934};
  for (std::size_t i = 0; i < 4; ++i) {
    EXPECT_NEAR(t.legs[i].east.in_metres(), de[i], 0.0011);
    EXPECT_NEAR(t.legs[i].north.in_metres(), dn[i], 0.0011);
    EXPECT_NEAR((t.legs[i].adjusted_east - t.legs[i].east).in_metres(), ce[i], 0.0011);
    EXPECT_NEAR((t.legs[i].adjusted_north - t.legs[i].north).in_metres(), cn[i], 0.0011);
    EXPECT_NEAR(t.legs[i].adjusted_east.in_metres(), ae[i], 0.0011);
    EXPECT_NEAR(t.legs[i].adjusted_north.in_metres(), an[i], 0.0011);
  }
  EXPECT_NEAR(t.length.in_metres(), 976.793, 1e-9);
  EXPECT_NEAR(t.misclosure_east.in_metres(), -0.983, 0.0011);
  EXPECT_NEAR(t.misclosure_north.in_metres(), -0.606, 0.0011);
  EXPECT_NEAR(t.misclosure().in_metres(), 1.154, 0.0011);
  EXPECT_NEAR(t.length / t.misclosure(), 846, 1);
  const Bearing closing =
      Bearing::of_line({}, {Easting{} + t.misclosure_east, Northing{} + t.misclosure_north});
  EXPECT_NEAR((closing.from_north() - dms("238 20 49")).in_seconds(), 0, 200);
  auto misprinted = legs;
  misprinted[1] = leg(164.988, "94 42 00");
  EXPECT_GT(std::abs(closed_traverse(misprinted).legs[1].north.in_metres() + 11.653), 1.5);
}

// TRV-3: Ghilani and Wolf, end-of-chapter problem, worked on a public page; quoted.
TEST(PublishedCoordinates, MisclosureOfFourCourses) {
  const std::vector<TraverseLeg> legs = {
      {Bearing::degrees(-dms("22 36 40").in_degrees()), m(314.02)},
      {Bearing::degrees(180 + dms("60 39 24").in_degrees()), m(264.49)},
      {Bearing::degrees(180 - dms("38 46 10").in_degrees()), m(213.50)},
      {Bearing::degrees(dms("88 22 58").in_degrees()), m(217.69)}};
  const Traverse t = closed_traverse(legs);
  const double dep[] = {-120.733, -230.556, 133.691, 217.603},
               lat[] = {289.883, -129.611, -166.460, 6.144};
  for (std::size_t i = 0; i < 4; ++i) {
    EXPECT_NEAR(t.legs[i].east.in_metres(), dep[i], 0.0011);
    EXPECT_NEAR(t.legs[i].north.in_metres(), lat[i], 0.0011);
  }
  EXPECT_NEAR(t.misclosure().in_metres(), 0.045, 0.0005);
  EXPECT_NEAR(t.length / t.misclosure(), 22500, 50);
}

// TRV-4: Ghilani and Wolf, Elementary Surveying, traverse chapter: data quoted, three decimals from
// memory, recomputed.
TEST(PublishedCoordinates, MisclosureOfFiveCourses) {
  const std::vector<TraverseLeg> legs = {leg(647.25, "126 55 17"), leg(203.03, "178 18 58"),
                                         leg(720.35, "15 31 54"), leg(610.24, "284 35 20"),
                                         leg(285.13, "206 09 42")};
  const Traverse t = closed_traverse(legs);
  const double dep[] = {517.451, 5.966, 192.889, -590.565, -125.715};
  const double lat[] = {-388.815, -202.942, 694.045, 153.708, -255.919};
  for (std::size_t i = 0; i < 5; ++i) {
    EXPECT_NEAR(t.legs[i].east.in_metres(), dep[i], 0.0011);
    EXPECT_NEAR(t.legs[i].north.in_metres(), lat[i], 0.0011);
  }
  EXPECT_NEAR(t.misclosure_east.in_metres(), 0.026, 0.0015);
  EXPECT_NEAR(t.misclosure_north.in_metres(), 0.076, 0.0015);
  EXPECT_NEAR(t.length.in_metres(), 2466.00, 1e-9);
  EXPECT_NEAR(t.misclosure().in_metres(), 0.08, 0.002);
}

// TRV-5: NAVEDTRA 14071, figure 7-25 (public domain); quoted. The area is derived.
TEST(PublishedCoordinates, CoordinatesFromDifferences) {
  const double de[] = {125.66, 590.65, -192.69, -523.62}, dn[] = {255.96, -153.53, -694.07, 591.64};
  GridPoint at = grid_point(0, 591.64);
  const GridPoint printed[] = {grid_point(125.66, 847.60), grid_point(716.31, 694.07),
                               grid_point(523.62, 0), grid_point(0, 591.64)};
  double twice_area = 0;
  for (std::size_t i = 0; i < 4; ++i) {
    const GridPoint next{at.easting + m(de[i]), at.northing + m(dn[i])};
    EXPECT_NEAR(distance(next, printed[i]).in_metres(), 0, 1e-9);
    twice_area += at.easting.in_metres() * next.northing.in_metres() -
                  next.easting.in_metres() * at.northing.in_metres();
    at = next;
  }
  EXPECT_NEAR(std::abs(twice_area) / 2, 323953.70, 0.005);
}

// TRV-6: NAVEDTRA 14070 p.7-12 (quoted): 698.59 by table; 698.632 exact.
TEST(PublishedCoordinates, LatitudeOfASingleLine) {
  const Traverse t = closed_traverse(std::vector<TraverseLeg>{leg(725, "15 30 00")});
  EXPECT_NEAR(t.legs[0].north.in_metres(), 698.59, 0.05);
  EXPECT_NEAR(t.legs[0].north.in_metres(), 698.632, 0.0005);
}

// INT-1, INT-2: J. Mahun, Open Access Surveying Library, coordinate geometry problem 1; quoted.
TEST(PublishedCoordinates, BearingAndBearing) {
  const GridPoint p1 = grid_point(2000, 1000), p2 = grid_point(1811.082, 480.951);
  const GridPoint a = *intersection(p1, azimuth("253 26 15"), p2, azimuth("314 33 26"));
  EXPECT_NEAR(a.northing.in_metres(), 836.445, 0.002);
  EXPECT_NEAR(a.easting.in_metres(), 1450.051, 0.002);
  EXPECT_NEAR(distance(p1, a).in_metres(), 573.754, 0.002);
  const GridPoint b = *intersection(p1, azimuth("140 54 25"), p2, azimuth("91 34 08"));
  EXPECT_NEAR(b.northing.in_metres(), 463.846, 0.002);
  EXPECT_NEAR(b.easting.in_metres(), 2435.613, 0.002);
  EXPECT_NEAR(distance(p1, b).in_metres(), 690.811, 0.002);
  EXPECT_NEAR(distance(a, b).in_metres(), 1053.642, 0.002);
}

// INT-4: the same library, chapter B: inputs quoted, output derived.
TEST(PublishedCoordinates, BearingAndBearingAgain) {
  const GridPoint l = grid_point(2255.90, 614.80), other = grid_point(2517.03, 791.53);
  const GridPoint p = *intersection(l, azimuth("117 22 40"), other, azimuth("198 10 30"));
  EXPECT_NEAR(distance(l, p).in_metres(), 195.492, 0.001);
  EXPECT_NEAR(distance(other, p).in_metres(), 280.629, 0.001);
  EXPECT_NEAR(p.northing.in_metres(), 524.902, 0.001);
  EXPECT_NEAR(p.easting.in_metres(), 2429.496, 0.001);
  EXPECT_FALSE(intersection(l, azimuth("10 00 00"), other, azimuth("190 00 00")));
}

PointPair pair(const char* name, GridPoint measured, GridPoint site) {
  PointPair p;
  p.point = name;
  p.measured = measured;
  p.site = site;
  p.place = {"pairs.csv", 2, 1};
  return p;
}

// SIM-1: EPSG method 9621, similarity ED50 / UTM 31N to ETRS89, IOGP 373-07-2 and ICGC 2010;
// quoted. SIM-2, SIM-3: the ICGC's control points; quoted. The fit to them must find the published
// parameters again, and carry the other points.
TEST(PublishedCoordinates, SimilarityOfTheRegister) {
  const std::vector<PointPair> control = {
      pair("1", grid_point(315000, 4740000), grid_point(314906.904, 4739796.774)),
      pair("2", grid_point(520000, 4680000), grid_point(519906.767, 4679795.125)),
      pair("3", grid_point(420000, 4600000), grid_point(419906.005, 4599795.760))};
  std::vector<Finding> findings;
  const FitResult fit = fit_to_site(control, {}, findings);
  EXPECT_NEAR(fit.scale, 1.0000015504, 1e-8);
  EXPECT_NEAR(fit.rotation.in_seconds(), 1.56504, 0.002);
  const GridPoint e = to_site(fit, grid_point(300000, 4500000));
  EXPECT_NEAR(e.easting.in_metres(), 299905.060, 0.0025);
  EXPECT_NEAR(e.northing.in_metres(), 4499796.515, 0.0025);
  FitResult published;
  published.scale = 1.0000015504;
  published.rotation = Angle::seconds(1.56504);
  published.east = m(-129.549);
  published.north = m(-208.185);
  const GridPoint p = to_site(published, grid_point(300000, 4500000));
  EXPECT_NEAR(p.easting.in_metres(), 299905.060, 0.001);
  EXPECT_NEAR(p.northing.in_metres(), 4499796.515, 0.001);
  for (const PointPair& c : control)
    EXPECT_NEAR(distance(to_site(published, *c.measured), c.site).in_metres(), 0, 0.0011);
  EXPECT_NEAR(
      distance(to_site(published, grid_point(300094.938, 4500203.485)), grid_point(300000, 4500000))
          .in_metres(),
      0, 0.0011);
}

// AFF-1: EPSG method 9624, affine, Jamaica old grid in feet to metres: IOGP 373-07-2; quoted. Its
// two scales are equal and its cross terms opposite: a similarity, which this one point with a
// second must give back.
TEST(PublishedCoordinates, AffineOfTheRegisterIsASimilarity) {
  constexpr double kA0 = 82357.457, kA1 = 0.304794369, kA2 = 0.000015417425, kB0 = 28091.324;
  const auto affine = [&](double x, double y) {
    return grid_point(kA0 + kA1 * x + kA2 * y, kB0 - kA2 * x + kA1 * y);
  };
  const GridPoint printed = affine(553900, 482500);
  EXPECT_NEAR(printed.easting.in_metres(), 251190.497, 0.001);
  EXPECT_NEAR(printed.northing.in_metres(), 175146.067, 0.001);
  std::vector<Finding> findings;
  const FitResult fit = fit_to_site(
      std::vector<PointPair>{pair("1", grid_point(553900, 482500), printed),
                             pair("2", grid_point(100000, 50000), affine(100000, 50000))},
      {}, findings);
  EXPECT_NEAR(fit.scale * cosine(fit.rotation), kA1, 1e-12);
  EXPECT_NEAR(fit.scale * sine(fit.rotation), kA2, 1e-12);
  EXPECT_NEAR(fit.east.in_metres(), kA0, 1e-5);
  EXPECT_NEAR(fit.north.in_metres(), kB0, 1e-5);
}

std::vector<PointPair> ghilani_18_1() {
  return {pair("A", grid_point(121.622, -128.066), grid_point(1049422.40, 51089.20)),
          pair("B", grid_point(141.228, 187.718), grid_point(1049413.95, 49659.30)),
          pair("C", grid_point(175.802, 135.728), grid_point(1049244.95, 49884.95))};
}

// CAL-1: Ghilani and Wolf, Adjustment Computations, Example 18.1; quoted.
TEST(PublishedCoordinates, ConformalTransformationKeepsItsQuadrant_similarity_3) {
  std::vector<Finding> findings;
  const FitResult fit = fit_to_site(ghilani_18_1(), {}, findings);
  EXPECT_NEAR(fit.scale, 4.51962, 6e-6);
  // theirs turns anticlockwise
  const Bearing turn = Bearing::degrees(-fit.rotation.in_degrees());
  EXPECT_NEAR((turn.from_north() - dms("183 13 05.0")).in_seconds(), 0, 0.06);
  EXPECT_NEAR(fit.scale * cosine(fit.rotation), -4.51249, 6e-6);
  EXPECT_NEAR(-fit.scale * sine(fit.rotation), -0.25371, 6e-6);
  EXPECT_NEAR(fit.east.in_metres(), 1050003.715, 6e-4);
  EXPECT_NEAR(fit.north.in_metres(), 50542.131, 6e-4);
  const double ve[] = {0.004, 0.101, -0.105}, vn[] = {-0.029, -0.077, 0.106};
  for (std::size_t i = 0; i < 3; ++i) {
    EXPECT_NEAR(fit.residuals[i].east.in_metres(), ve[i], 6e-4);
    EXPECT_NEAR(fit.residuals[i].north.in_metres(), vn[i], 6e-4);
  }
  EXPECT_NEAR(*fit.sigma0_m, 0.14, 0.005);
  EXPECT_TRUE(findings.empty());
}

// CAL-3 and TRAP-10 (derived): the rotation of the same example with the plain arc tangent would be
// 3 13 05 instead of 183 13 05.
TEST(PublishedCoordinates, TheArcTangentOfAQuotientLosesHalfATurn_trap_10) {
  std::vector<Finding> findings;
  const FitResult fit = fit_to_site(ghilani_18_1(), {}, findings);
  const double a = fit.scale * cosine(fit.rotation), b = -fit.scale * sine(fit.rotation);
  EXPECT_NEAR((Angle::radians(std::atan(b / a)) - dms("3 13 05.0")).in_seconds(), 0, 0.06);
  const Bearing turn = Bearing::degrees(-fit.rotation.in_degrees());
  EXPECT_NEAR((turn.from_north() - dms("183 13 05.0")).in_seconds(), 0, 0.06);
}

// ADJ-9: Ghilani and Wolf, chapter 19: from memory, recomputed. Cofactors of X and Y, S0 0.136 ft;
// t runs clockwise from Y.
TEST(PublishedCoordinates, ErrorEllipseOfATextbook) {
  constexpr double kUnit = 0.136 * 0.136;
  const Covariance c{1.198574 * kUnit, -1.160249 * kUnit, 1.634811 * kUnit, 0, 0, 0};
  const ErrorEllipse e = error_ellipse(c);
  EXPECT_NEAR(e.along.in_degrees(), 140 + 19.0 / 60, 0.5 / 60);
  EXPECT_NEAR(e.along.in_degrees(), 140.3235, 6e-5);
  EXPECT_NEAR(e.major.in_metres(), 0.22, 0.005);
  EXPECT_NEAR(e.minor.in_metres(), 0.07, 0.005);
  EXPECT_NEAR(e.major.in_metres(), 0.2192, 6e-5);
  EXPECT_NEAR(e.minor.in_metres(), 0.0661, 6e-5);
}

TEST(Ellipse, ItsAxesAreTheGreatestAndLeastOfAnyDirection_ellipse_1) {
  for (const Covariance& c : {Covariance{4, 1.5, 2, 0, 0, 0}, Covariance{2, -1, 5, 0, 0, 0},
                              Covariance{3, 0, 3, 0, 0, 0}, Covariance{1, 2, 4, 0, 0, 0}}) {
    const ErrorEllipse e = error_ellipse(c);
    const auto in_direction = [&](double degrees) {
      const double s = sine(Angle::degrees(degrees)), t = cosine(Angle::degrees(degrees));
      return std::sqrt(std::max(0.0, c.ee * s * s + 2 * c.en * s * t + c.nn * t * t));
    };
    double greatest = 0, least = 1e9;
    for (double a = 0; a < 180; a += 0.01) {
      greatest = std::max(greatest, in_direction(a));
      least = std::min(least, in_direction(a));
    }
    EXPECT_NEAR(e.major.in_metres(), greatest, 1e-6);
    EXPECT_NEAR(e.minor.in_metres(), least, 1e-3);
    EXPECT_NEAR(in_direction(e.along.in_degrees()), e.major.in_metres(), 1e-9);
    EXPECT_NEAR(in_direction(e.along.in_degrees() + 90), e.minor.in_metres(), 1e-7);
    EXPECT_LT(e.along.in_degrees(), 180);
  }
}

}  // namespace
}  // namespace squaredig::field
