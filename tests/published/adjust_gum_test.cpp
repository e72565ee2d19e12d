// Uncertainty examples of the GUM, a line by orthogonal distances, and means that lose digits.
#include <gtest/gtest.h>

#include <cmath>

#include "adjust/distributions.h"
#include "adjust/least_squares.h"

namespace squaredig::adjust {
namespace {

// GUM-1: JCGM 100:2008, annex H.1, end gauge: result quoted, degrees of freedom and U99 from
// memory, recomputed. The parts, in nm: standard, length of the comparison, expansion, temperature.
TEST(PublishedGum, EndGauge) {
  const double d = std::sqrt(5.8 * 5.8 + 3.9 * 3.9 + 6.7 * 6.7);
  const double expansion = 50.000623e6 * 1e-6 / std::sqrt(3.0) * 0.1;  // theta -0.1, d_alpha
  const double temperature = 50.000623e6 * 11.5e-6 * 0.05 / std::sqrt(3.0);
  std::vector<Equation> inputs;
  const double parts[] = {25, d, expansion, temperature};
  for (std::size_t i = 0; i < 4; ++i) inputs.push_back({{{i, 1}}, 0, parts[i]});
  const auto known = *least_squares(4, inputs);
  double variance = 0;
  for (std::size_t i = 0; i < 4; ++i) variance += known.covariance(i, i);
  const double u = std::sqrt(variance);
  EXPECT_NEAR(50.000623 + 215e-6, 50.000838, 1e-9);  // mm
  EXPECT_NEAR(d, 9.7, 0.05);
  EXPECT_NEAR(temperature, 16.6, 0.05);
  EXPECT_NEAR(expansion, 2.9, 0.05);
  EXPECT_NEAR(u, 31.66, 0.02);
  const double d_freedom =
      std::pow(d, 4) / (std::pow(5.8, 4) / 24 + std::pow(3.9, 4) / 5 + std::pow(6.7, 4) / 8);
  const double freedom =
      std::pow(u, 4) / (std::pow(25, 4) / 18 + std::pow(d, 4) / d_freedom +
                        std::pow(expansion, 4) / 50 + std::pow(temperature, 4) / 2);
  EXPECT_NEAR(freedom, 16.75, 0.05);
  const double t99 = std::sqrt(fisher_quantile(0.99, 1, std::floor(freedom)));
  EXPECT_NEAR(t99, 2.92, 0.005);
  EXPECT_NEAR(t99 * u, 92.5, 0.2);
}

// GUM-2: annex H.2, simultaneous resistance and reactance, second approach: raw data from memory,
// results quoted.
TEST(PublishedGum, ResistanceAndReactance) {
  const double v[] = {5.007, 4.994, 5.005, 4.990, 4.999};
  const double i[] = {19.663e-3, 19.639e-3, 19.640e-3, 19.685e-3, 19.678e-3};
  const double phi[] = {1.0456, 1.0438, 1.0468, 1.0428, 1.0433};
  const auto mean_of = [&](auto f, double value, double sigma) {
    std::vector<Equation> rows;
    for (std::size_t k = 0; k < 5; ++k) rows.push_back({{{0, 1}}, f(v[k] / i[k], phi[k]), 1});
    const auto mean = *least_squares(1, rows);
    EXPECT_NEAR(mean.unknowns[0], value, 0.0006);
    EXPECT_NEAR(*mean.sigma0() * std::sqrt(mean.covariance(0, 0)), sigma, 0.0006);
  };
  mean_of([](double z, double a) { return z * std::cos(a); }, 127.732, 0.071);
  mean_of([](double z, double a) { return z * std::sin(a); }, 219.847, 0.295);
  mean_of([](double z, double) { return z; }, 254.260, 0.236);
  // correlation of two values by the regression of one on the other
  const auto r_of = [&](auto f, auto g) {
    std::vector<Equation> mean, line;
    for (std::size_t k = 0; k < 5; ++k) {
      mean.push_back({{{0, 1}}, g(k), 1});
      line.push_back({{{0, 1}, {1, f(k)}}, g(k), 1});
    }
    const auto about_mean = *least_squares(1, mean), about_line = *least_squares(2, line);
    return std::copysign(std::sqrt(1 - about_line.sum_of_squares / about_mean.sum_of_squares),
                         about_line.unknowns[1]);
  };
  const auto volts = [&](std::size_t k) { return v[k]; };
  const auto amperes = [&](std::size_t k) { return i[k]; };
  const auto angle = [&](std::size_t k) { return phi[k]; };
  const auto impedance = [&](std::size_t k) { return v[k] / i[k]; };
  const auto resistance = [&](std::size_t k) { return v[k] / i[k] * std::cos(phi[k]); };
  const auto reactance = [&](std::size_t k) { return v[k] / i[k] * std::sin(phi[k]); };
  EXPECT_NEAR(r_of(volts, amperes), -0.36, 0.006);
  EXPECT_NEAR(r_of(volts, angle), 0.86, 0.006);
  EXPECT_NEAR(r_of(amperes, angle), -0.65, 0.006);
  EXPECT_NEAR(r_of(resistance, reactance), -0.588, 6e-4);
  EXPECT_NEAR(r_of(resistance, impedance), -0.485, 6e-4);
  EXPECT_NEAR(r_of(reactance, impedance), 0.993, 6e-4);
}

// GUM-3: annex H.3, calibration of a thermometer; quoted.
TEST(PublishedGum, Thermometer) {
  const double t[] = {21.521, 22.012, 22.512, 23.003, 23.507, 23.999,
                      24.513, 25.002, 25.503, 26.010, 26.511};
  const double b[] = {-0.171, -0.169, -0.166, -0.159, -0.164, -0.165,
                      -0.156, -0.157, -0.159, -0.161, -0.160};
  std::vector<Equation> rows;
  for (std::size_t k = 0; k < 11; ++k) rows.push_back({{{0, 1}, {1, t[k] - 20}}, b[k], 1});
  const auto line = *least_squares(2, rows);
  const double s = *line.sigma0();
  EXPECT_NEAR(line.unknowns[0], -0.1712, 5e-5);
  EXPECT_NEAR(line.unknowns[1], 0.00218, 5e-6);
  EXPECT_NEAR(s * std::sqrt(line.covariance(0, 0)), 0.0029, 5e-5);
  EXPECT_NEAR(s * std::sqrt(line.covariance(1, 1)), 0.00067, 5e-6);
  EXPECT_NEAR(line.covariance(0, 1) / std::sqrt(line.covariance(0, 0) * line.covariance(1, 1)),
              -0.930, 5e-4);
  EXPECT_NEAR(s, 0.0035, 5e-5);
  const double at_30 = line.unknowns[0] + 10 * line.unknowns[1];
  const double u_30 = s * std::sqrt(line.covariance(0, 0) + 20 * line.covariance(0, 1) +
                                    100 * line.covariance(1, 1));
  EXPECT_NEAR(at_30, -0.1494, 5e-5);
  EXPECT_NEAR(u_30, 0.0041, 5e-5);
}

// ADJ-8: Neitzel and Petrovic 2008, zfv 133, table 3 (quoted): the line by orthogonal distances,
// both coordinates observed; y on x alone gives 3, -1 and 2.0.
TEST(PublishedAdjust, LineByOrthogonalDistances) {
  const double x[] = {0, 1, 2, 3}, y[] = {0, 1, 4, 9};
  double a = 3, b = -1, at[] = {0, 1, 2, 3};
  double squares = 0;
  for (int turn = 0; turn < 200; ++turn) {
    std::vector<Equation> rows;
    for (std::size_t k = 0; k < 4; ++k) {
      rows.push_back({{{2 + k, 1}}, x[k] - at[k], 1});
      rows.push_back({{{0, at[k]}, {1, 1}, {2 + k, a}}, y[k] - a * at[k] - b, 1});
    }
    const auto step = *least_squares(6, rows);
    a += step.unknowns[0];
    b += step.unknowns[1];
    for (std::size_t k = 0; k < 4; ++k) at[k] += step.unknowns[2 + k];
    squares = step.sum_of_squares;
  }
  EXPECT_NEAR(a, 3.241804, 6e-7);
  EXPECT_NEAR(b, -1.362705, 6e-7);
  EXPECT_NEAR(squares, 0.372946, 6e-7);
}

// NIST-6, NIST-7: NIST StRD NumAcc1 and NumAcc4, certified; quoted. TRAP-12: a one-pass sum of
// squares of the raw values gives variance -2.0.
TEST(PublishedAdjust, MeansOfNumbersThatLoseDigits_trap_12) {
  const auto mean_of = [](const std::vector<double>& values) {
    std::vector<Equation> rows;
    for (const double v : values) rows.push_back({{{0, 1}}, v - values[0], 1});
    const auto mean = *least_squares(1, rows);
    return std::pair(values[0] + mean.unknowns[0], *mean.sigma0());
  };
  const auto first = mean_of({10000001, 10000003, 10000002});
  EXPECT_DOUBLE_EQ(first.first, 10000002);
  EXPECT_NEAR(first.second, 1, 1e-14);
  std::vector<double> values = {10000000.2};
  for (int i = 0; i < 500; ++i) values.insert(values.end(), {10000000.1, 10000000.3});
  const auto fourth = mean_of(values);
  EXPECT_NEAR(fourth.first, 10000000.2, 2e-9);
  EXPECT_NEAR(fourth.second, 0.1, 1e-8);
  double sum = 0, squares = 0;
  for (const double v : values) {
    sum += v;
    squares += v * v;
  }
  const auto n = static_cast<double>(values.size());
  EXPECT_GT(std::abs((squares - sum * sum / n) / (n - 1) - 0.01), 0.1);
}

}  // namespace
}  // namespace squaredig::adjust
