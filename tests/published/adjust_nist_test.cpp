// Straight lines, polynomials and a multiple regression with certified values: NIST-1 to NIST-5.
// NIST-6 and NIST-7, the means, are in adjust_gum_test.cpp. Of NIST-8, Michelso (n 100, mean
// 299.8524, s 0.0790105478190518), the hundred values are not at hand, so it is not tested.
// Source: NIST Statistical Reference Datasets (public domain), certified values quoted from public
// copies.
#include <gtest/gtest.h>

#include <cmath>

#include "adjust/least_squares.h"

namespace squaredig::adjust {
namespace {

constexpr double kNorrisX[] = {0.2,   337.4, 118.2, 884.6, 10.1,  226.5, 666.3, 996.3, 448.6,
                               777.0, 558.2, 0.4,   0.6,   775.5, 666.9, 338.0, 447.5, 11.6,
                               556.0, 228.1, 995.8, 887.6, 120.2, 0.3,   0.3,   556.8, 339.1,
                               887.2, 999.0, 779.0, 11.1,  118.3, 229.2, 669.1, 448.9, 0.5};
constexpr double kNorrisY[] = {0.1,   338.8, 118.1, 888.0, 9.2,   228.1, 668.5, 998.5, 449.1,
                               778.9, 559.2, 0.3,   0.1,   778.1, 668.8, 339.3, 448.9, 10.8,
                               557.7, 228.3, 998.0, 888.8, 119.6, 0.3,   0.6,   557.6, 339.3,
                               888.0, 998.5, 778.9, 10.2,  117.6, 228.9, 668.4, 449.2, 0.2};
constexpr double kLongley[] = {
    60323, 83.0,  234289, 2356, 1590, 107608, 1947, 61122, 88.5,  259426, 2325, 1456, 108632, 1948,
    60171, 88.2,  258054, 3682, 1616, 109773, 1949, 61187, 89.5,  284599, 3351, 1650, 110929, 1950,
    63221, 96.2,  328975, 2099, 3099, 112075, 1951, 63639, 98.1,  346999, 1932, 3594, 113270, 1952,
    64989, 99.0,  365385, 1870, 3547, 115094, 1953, 63761, 100.0, 363112, 3578, 3350, 116219, 1954,
    66019, 101.2, 397469, 2904, 3048, 117388, 1955, 67857, 104.6, 419180, 2822, 2857, 118734, 1956,
    68169, 108.4, 442769, 2936, 2798, 120445, 1957, 66513, 110.8, 444546, 4681, 2637, 121950, 1958,
    68655, 112.6, 482704, 3813, 2552, 123366, 1959, 69564, 114.2, 502601, 3931, 2514, 125368, 1960,
    69331, 115.7, 518173, 4806, 2572, 127852, 1961, 70551, 116.9, 554894, 4007, 2827, 130081, 1962};
constexpr double kFilip[] = {
    0.8116, -6.860120914, 0.9072, -4.324130045, 0.9052, -4.358625055, 0.9039, -4.358426747,
    0.8053, -6.955852379, 0.8377, -6.661145254, 0.8667, -6.355462942, 0.8809, -6.118102026,
    0.7975, -7.115148017, 0.8162, -6.815308569, 0.8515, -6.519993057, 0.8766, -6.204119983,
    0.8885, -5.853871964, 0.8859, -6.109523091, 0.8959, -5.79832982,  0.8913, -5.482672118,
    0.8959, -5.171791386, 0.8971, -4.851705903, 0.9021, -4.517126416, 0.909,  -4.143573228,
    0.9139, -3.709075441, 0.9199, -3.499489089, 0.8692, -6.300769497, 0.8872, -5.953504836,
    0.89,   -5.642065153, 0.891,  -5.031376979, 0.8977, -4.680685696, 0.9035, -4.329846955,
    0.9078, -3.928486195, 0.7675, -8.56735134,  0.7705, -8.363211311, 0.7713, -8.107682739,
    0.7736, -7.823908741, 0.7775, -7.522878745, 0.7841, -7.218819279, 0.7971, -6.920818754,
    0.8329, -6.628932138, 0.8641, -6.323946875, 0.8804, -5.991399828, 0.7668, -8.781464495,
    0.7633, -8.663140179, 0.7678, -8.473531488, 0.7697, -8.247337057, 0.77,   -7.971428747,
    0.7749, -7.676129393, 0.7796, -7.352812702, 0.7897, -7.072065318, 0.8131, -6.774174009,
    0.8498, -6.478861916, 0.8741, -6.159517513, 0.8061, -6.835647144, 0.846,  -6.53165267,
    0.8751, -6.224098421, 0.8856, -5.910094889, 0.8919, -5.598599459, 0.8934, -5.290645224,
    0.894,  -4.974284616, 0.8957, -4.64454848,  0.9047, -4.290560426, 0.9129, -3.885055584,
    0.9209, -3.408378962, 0.9219, -3.13200249,  0.7739, -8.726767166, 0.7681, -8.66695597,
    0.7665, -8.511026475, 0.7703, -8.165388579, 0.7702, -7.886056648, 0.7761, -7.588043762,
    0.7809, -7.283412422, 0.7961, -6.995678626, 0.8253, -6.691862621, 0.8602, -6.392544977,
    0.8809, -6.067374056, 0.8301, -6.684029655, 0.8664, -6.378719832, 0.8834, -6.065855188,
    0.8898, -5.752272167, 0.8964, -5.132414673, 0.8963, -4.811352704, 0.9074, -4.098269308,
    0.9119, -3.66174277,  0.9228, -3.2644011};

Equation power_row(double x, double y, std::size_t degree) {
  Equation e;
  double power = 1;
  for (std::size_t k = 0; k <= degree; ++k, power *= x) e.terms.push_back({k, power});
  e.observed = y;
  return e;
}

void expect_relative(double value, double certified, double relative) {
  EXPECT_NEAR(value, certified, std::abs(certified) * relative);
}

TEST(PublishedAdjust, NistNorris) {
  std::vector<Equation> rows;
  for (std::size_t i = 0; i < 36; ++i) rows.push_back(power_row(kNorrisX[i], kNorrisY[i], 1));
  const auto fit = *least_squares(2, rows);
  expect_relative(fit.unknowns[0], -0.262323073774029, 1e-11);
  expect_relative(fit.unknowns[1], 1.00211681802045, 1e-13);
  const double s0 = *fit.sigma0();
  expect_relative(s0, 0.884796396144373, 1e-12);
  expect_relative(s0 * std::sqrt(fit.covariance(0, 0)), 0.232818234301152, 1e-12);
  expect_relative(s0 * std::sqrt(fit.covariance(1, 1)), 0.429796848199937e-03, 1e-12);
  expect_relative(fit.sum_of_squares, 26.6173985294224, 1e-12);
  std::vector<Equation> mean;
  for (const Equation& row : rows) mean.push_back({{{0, 1}}, row.observed, 1});
  const double about_mean = least_squares(1, mean)->sum_of_squares;
  expect_relative(1 - fit.sum_of_squares / about_mean, 0.999993745883712, 1e-14);
}

TEST(PublishedAdjust, NistLongley) {
  std::vector<Equation> rows;
  for (std::size_t i = 0; i < 16; ++i) {
    Equation e{{{0, 1}}, kLongley[7 * i], 1};
    for (std::size_t k = 1; k < 7; ++k) e.terms.push_back({k, kLongley[7 * i + k]});
    rows.push_back(e);
  }
  const auto fit = *least_squares(7, rows);
  const double value[] = {-3482258.63459582, 15.0618722713733,  -0.358191792925910e-01,
                          -2.02022980381683, -1.03322686717359, -0.511041056535807e-01,
                          1829.15146461355};
  const double sd[] = {890420.383607373,  84.9149257747669,  0.334910077722432e-01,
                       0.488399681651699, 0.214274163161675, 0.226073200069370,
                       455.478499142212};
  for (std::size_t k = 0; k < 7; ++k) {
    expect_relative(fit.unknowns[k], value[k], 1e-11);
    expect_relative(*fit.sigma0() * std::sqrt(fit.covariance(k, k)), sd[k], 1e-11);
  }
  expect_relative(*fit.sigma0(), 304.854073561965, 1e-12);
}

TEST(PublishedAdjust, NistFilip) {
  std::vector<Equation> rows;
  for (std::size_t i = 0; i < 82; ++i)
    rows.push_back(power_row(kFilip[2 * i + 1], kFilip[2 * i], 10));
  const auto fit = *least_squares(11, rows);
  const double value[] = {-1467.48961422980,      -2772.17959193342,     -2316.37108160893,
                          -1127.97394098372,      -354.478233703349,     -75.1242017393757,
                          -10.8753180355343,      -1.06221498588947,     -0.670191154593408e-01,
                          -0.246781078275479e-02, -0.402962525080404e-04};
  for (std::size_t k = 0; k < 11; ++k) expect_relative(fit.unknowns[k], value[k], 1e-7);
  // the tenth powers themselves are rounded to doubles before they come in
  expect_relative(*fit.sigma0(), 0.334801051324544e-02, 1e-8);
}

TEST(PublishedAdjust, NistWampler1) {
  std::vector<Equation> rows;
  for (int x = 0; x <= 20; ++x) {
    const double v = x;
    rows.push_back(power_row(v, 1 + v * (1 + v * (1 + v * (1 + v * (1 + v)))), 5));
  }
  const auto fit = *least_squares(6, rows);
  for (const double b : fit.unknowns) EXPECT_NEAR(b, 1, 1e-11);
  EXPECT_NEAR(*fit.sigma0(), 0, 1e-9);
}

TEST(PublishedAdjust, NistNoInt1) {
  std::vector<Equation> rows;
  for (int x = 60; x <= 70; ++x) rows.push_back({{{0, static_cast<double>(x)}}, x + 70.0, 1});
  const auto fit = *least_squares(1, rows);
  expect_relative(fit.unknowns[0], 2.07438016528926, 1e-14);
  expect_relative(*fit.sigma0() * std::sqrt(fit.covariance(0, 0)), 0.165289256198347e-01, 1e-12);
  expect_relative(*fit.sigma0(), 3.56753034006338, 1e-13);
}

}  // namespace
}  // namespace squaredig::adjust
