// Best planes against certified, published and derived values. Each says how strictly its source
// is known; "derived" means exact arithmetic from a definition, not a published number.
#include <gtest/gtest.h>

#include <cmath>

#include "geometry/fit_plane.h"

namespace squaredig::geometry {
namespace {

// FL01, derived: a 3 x 3 grid at 1.5 m on 97.900 + 0.01 x - 0.005 y, with a bump that is orthogonal
// to every plane. Slopes and residuals come out exactly.
std::vector<Point3> fl01() {
  const double bump[3][3] = {{1, -2, 1}, {-2, 4, -2}, {1, -2, 1}};
  std::vector<Point3> points;
  for (int r = 0; r < 3; ++r)
    for (int c = 0; c < 3; ++c) {
      const double x = 1.5 * c, y = 1.5 * r;
      points.push_back({x, y, 97.900 + 0.01 * x - 0.005 * y + 0.002 * bump[r][c]});
    }
  return points;
}

TEST(PlaneFitPublished, FL01) {
  const auto points = fl01();
  const double listed[] = {97.902,  97.911, 97.932, 97.8885, 97.9155,
                           97.9185, 97.887, 97.896, 97.917};
  for (std::size_t i = 0; i < points.size(); ++i) EXPECT_NEAR(points[i].z, listed[i], 1e-12);
  const auto fit = fit_least_squares(points);
  ASSERT_TRUE(fit);
  EXPECT_NEAR(fit->plane.slope_x, 0.01, 1e-14);
  EXPECT_NEAR(fit->plane.slope_y, -0.005, 1e-14);
  EXPECT_NEAR(fit->plane.at({0, 0}), 97.900, 1e-13);
  const double residual_mm[] = {2, -4, 2, -4, 8, -4, 2, -4, 2};
  for (std::size_t i = 0; i < points.size(); ++i)
    EXPECT_NEAR(1000 * fit->residuals[i], residual_mm[i], 1e-10);
  EXPECT_NEAR(1000 * fit->rms, 4.000, 1e-10);
  EXPECT_NEAR(1000 * fit->rms * std::sqrt(9.0 / 6.0), 4.899, 0.0005);
  EXPECT_NEAR(1000 * fit->range, 12, 1e-10);
}

// NIST StRD Norris, certified, read in public copies: a straight line of 36 points. Each point
// stands twice, one metre to either side, so that the plane through them is that line produced
// sideways; the residual sum of squares is then twice the certified one.
TEST(PlaneFitPublished, NistNorrisAsAPlane) {
  const double x[] = {0.2,   337.4, 118.2, 884.6, 10.1,  226.5, 666.3, 996.3, 448.6,
                      777.0, 558.2, 0.4,   0.6,   775.5, 666.9, 338.0, 447.5, 11.6,
                      556.0, 228.1, 995.8, 887.6, 120.2, 0.3,   0.3,   556.8, 339.1,
                      887.2, 999.0, 779.0, 11.1,  118.3, 229.2, 669.1, 448.9, 0.5};
  const double y[] = {0.1,   338.8, 118.1, 888.0, 9.2,   228.1, 668.5, 998.5, 449.1,
                      778.9, 559.2, 0.3,   0.1,   778.1, 668.8, 339.3, 448.9, 10.8,
                      557.7, 228.3, 998.0, 888.8, 119.6, 0.3,   0.6,   557.6, 339.3,
                      888.0, 998.5, 778.9, 10.2,  117.6, 228.9, 668.4, 449.2, 0.2};
  std::vector<Point3> points;
  for (std::size_t i = 0; i < 36; ++i)
    for (const double side : {-1.0, 1.0}) points.push_back({x[i], side, y[i]});
  const auto fit = fit_least_squares(points);
  ASSERT_TRUE(fit);
  EXPECT_NEAR(fit->plane.at({0, 0}), -0.262323073774029, 1e-12);
  EXPECT_NEAR(fit->plane.slope_x, 1.00211681802045, 1e-14);
  EXPECT_NEAR(fit->plane.slope_y, 0, 1e-14);
  double squares = 0;
  for (const double r : fit->residuals) squares += r * r;
  EXPECT_NEAR(squares / 2, 26.6173985294224, 1e-11);
  EXPECT_NEAR(std::sqrt(squares / 2 / 34), 0.884796396144373, 1e-12);
  // certified standard deviations: of the slope 0.429796848199937E-03
  EXPECT_NEAR(std::sqrt(2 * fit->var_xx * squares / 2 / 34), 0.429796848199937e-3, 1e-15);
}

// FLT-10, from memory (data and answer recalled together and agreeing): Ryan et al., Minitab
// Handbook 1976, as in the R data set "trees": 31 points, Volume on Girth and Height.
TEST(PlaneFitPublished, TreesFlt10) {
  const double girth[] = {8.3,  8.6,  8.8,  10.5, 10.7, 10.8, 11.0, 11.0, 11.1, 11.2, 11.3,
                          11.4, 11.4, 11.7, 12.0, 12.9, 12.9, 13.3, 13.7, 13.8, 14.0, 14.2,
                          14.5, 16.0, 16.3, 17.3, 17.5, 17.9, 18.0, 18.0, 20.6};
  const double height[] = {70, 65, 63, 72, 81, 83, 66, 75, 80, 75, 79, 76, 76, 69, 75, 74,
                           85, 86, 71, 64, 78, 80, 74, 72, 77, 81, 82, 80, 80, 80, 87};
  const double volume[] = {10.3, 10.3, 10.2, 16.4, 18.8, 19.7, 15.6, 18.2, 22.6, 19.9, 24.2,
                           21.0, 21.4, 21.3, 19.1, 22.2, 33.8, 27.4, 25.7, 24.9, 34.5, 31.7,
                           36.3, 38.3, 42.6, 55.4, 55.7, 58.3, 51.5, 51.0, 77.0};
  std::vector<Point3> points;
  for (std::size_t i = 0; i < 31; ++i) points.push_back({girth[i], height[i], volume[i]});
  const auto fit = fit_least_squares(points);
  ASSERT_TRUE(fit);
  EXPECT_NEAR(fit->plane.at({0, 0}), -57.9877, 0.00005);
  EXPECT_NEAR(fit->plane.slope_x, 4.7082, 0.00005);
  EXPECT_NEAR(fit->plane.slope_y, 0.3393, 0.00005);
  const double standard_error = fit->rms * std::sqrt(31.0 / 28.0);
  EXPECT_NEAR(standard_error, 3.882, 0.0005);
  EXPECT_NEAR(standard_error * std::sqrt(fit->var_xx), 0.2643, 0.00005);
  EXPECT_NEAR(standard_error * std::sqrt(fit->var_yy), 0.1302, 0.00005);
}

// FLT-11: the five points are quoted from an engineers' forum (eng-tips 393584); the answer is
// derived. The published fit there is orthogonal; at these slopes (0.13 %) vertical and orthogonal
// residuals agree to the digits printed.
TEST(PlaneFitPublished, FivePointsFlt11) {
  const std::vector<Point3> points{
      {11.5, 7, 1.1}, {18.5, 6.9, 1.03}, {4.5, 13, 1.02}, {25.5, 30, 1.03}, {11.5, 37.5, 1.02}};
  const auto fit = fit_least_squares(points);
  ASSERT_TRUE(fit);
  EXPECT_NEAR(-fit->plane.slope_x, -0.000281696, 1e-8);
  EXPECT_NEAR(-fit->plane.slope_y, 0.001254869, 1e-8);
  const double residual[] = {0.04588, -0.02622, -0.02462, 0.00080, 0.00415};
  for (std::size_t i = 0; i < 5; ++i) EXPECT_NEAR(fit->residuals[i], residual[i], 0.000006);
  EXPECT_NEAR(fit->range, 0.07210, 0.000006);
  EXPECT_NEAR(fit_minimum_zone(points)->width, 0.06726, 0.000006);
}

// FLT-12, derived: the corners of a square at +h -h +h -h.
TEST(PlaneFitPublished, SaddleFlt12) {
  const double h = 0.006;
  const std::vector<Point3> points{{0, 0, h}, {8, 0, -h}, {8, 8, h}, {0, 8, -h}};
  const auto fit = fit_least_squares(points);
  ASSERT_TRUE(fit);
  EXPECT_NEAR(fit->plane.slope_x, 0, 1e-16);
  EXPECT_NEAR(fit->plane.slope_y, 0, 1e-16);
  EXPECT_NEAR(fit->range, 2 * h, 1e-16);
  const auto zone = fit_minimum_zone(points);
  EXPECT_NEAR(zone->width, 2 * h, 1e-16);
  ASSERT_EQ(zone->extreme.size(), 4u);
  for (const double w : zone->weight) EXPECT_NEAR(std::abs(w), 0.5, 1e-15);
}

// FLT-13, derived: vertical residuals do not change when a plane is added; the minimum zone is
// never above the range about the least-squares plane (random sets stand in the unit tests).
TEST(PlaneFitPublished, InvariantFlt13) {
  auto points = fl01();
  const double before = fit_minimum_zone(points)->width;
  const double range = fit_least_squares(points)->range;
  EXPECT_LE(before, range);
  for (Point3& p : points) p.z += 3 - 0.2 * p.x + 0.07 * p.y;
  EXPECT_NEAR(fit_minimum_zone(points)->width, before, 1e-13);
  EXPECT_NEAR(fit_least_squares(points)->range, range, 1e-13);
}

// NIST StRD NumAcc1 and NumAcc4, certified, read in public copies: mean and standard deviation near
// 1e7. The numbers are taken as heights over a ring of stations whose plan is symmetric, so that
// the plane is level at their mean.
TEST(PlaneFitPublished, NistNumAcc1Mean) {
  const double heights[] = {10000001, 10000003, 10000002};
  std::vector<Point3> points;
  for (const double z : heights)
    for (const Point2 p : {Point2{1, 1}, Point2{1, -1}, Point2{-1, 1}, Point2{-1, -1}})
      points.push_back({p.x, p.y, z});
  const auto fit = fit_least_squares(points);
  ASSERT_TRUE(fit);
  EXPECT_EQ(fit->plane.height, 10000002);
  EXPECT_NEAR(fit->rms * std::sqrt(3.0 / 2.0), 1, 1e-15);
}

TEST(PlaneFitPublished, NistNumAcc4MeanAndDeviation) {
  std::vector<double> heights{10000000.2};
  for (int i = 0; i < 500; ++i) {
    heights.push_back(10000000.1);
    heights.push_back(10000000.3);
  }
  std::vector<Point3> points;
  for (const double z : heights)
    for (const Point2 p : {Point2{1, 1}, Point2{1, -1}, Point2{-1, 1}, Point2{-1, -1}})
      points.push_back({p.x, p.y, z});
  const auto fit = fit_least_squares(points);
  ASSERT_TRUE(fit);
  // 10000000.1 itself is only held to 1.9e-9
  EXPECT_NEAR(fit->plane.height, 10000000.2, 2e-9);
  EXPECT_NEAR(fit->rms * std::sqrt(1001.0 / 1000.0), 0.1, 2e-9);
}

// The same plane at seven-digit coordinates: the positions themselves are held to 0.5 nm there.
TEST(PlaneFitPublished, FL01FarFromTheOrigin) {
  auto points = fl01();
  for (Point3& p : points) p = {p.x + 715830, p.y + 5021771, p.z};
  const auto fit = fit_least_squares(points);
  ASSERT_TRUE(fit);
  EXPECT_NEAR(fit->plane.slope_x, 0.01, 1e-13);
  EXPECT_NEAR(1000 * fit->range, 12, 1e-9);
}

}  // namespace
}  // namespace squaredig::geometry
