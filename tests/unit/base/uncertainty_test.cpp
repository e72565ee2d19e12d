// Each uncertainty against its definition: every height is moved by itself, what the value answers
// is squared, weighed and summed; the shared part moves all at once.
#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <random>

#include "unit/base/base_fixture.h"

namespace squaredig::base {
namespace {

using testing::BaseFixture;
using testing::named;

constexpr unsigned kSeed = 20260318;
constexpr double kK = 1.6448536269514722;

// Numbers near zero, so that a thousandth of a millimetre is still exact.
BaseFixture rough(int columns, int rows) {
  BaseFixture base;
  base.corner_a = grid_point(0, 0);
  base.bearing = 0;
  base.fall_percent = 0;
  base.underside = 0.02;
  base.length = 1.5 * (columns - 1), base.width = 1.5 * (rows - 1);
  base.module_along = 0;
  base.input.straightedge = Straightedge{Length::metres(3), Length::millimetres(5)};
  std::mt19937 random(kSeed);
  std::normal_distribution<double> uneven(0, 4);
  for (int r = 0; r < rows; ++r)
    for (int c = 0; c < columns; ++c) base.add(1.5 * c, 1.5 * r, uneven(random));
  return base;
}

double value_of(const BaseResult& r, const char* name) {
  const Amount a = named(r, name).value.value();
  if (const auto* fall = std::get_if<Fall>(&a)) return fall->in_percent();
  return std::get<Length>(a).in_millimetres();
}

double uncertainty_of(const BaseResult& r, const char* name) {
  const Amount a = named(r, name).uncertainty.value();
  if (const auto* fall = std::get_if<Fall>(&a)) return fall->in_percent();
  return std::get<Length>(a).in_millimetres();
}

double by_definition(const BaseFixture& base, const char* name) {
  constexpr double kStep = 0.001;
  const double before = value_of(base.check(), name);
  const auto answer = [&](const std::function<bool(std::size_t)>& moved) {
    BaseFixture other = base;
    for (std::size_t i = 0; i < other.input.points.size(); ++i)
      if (moved(i))
        other.input.points.points[i].at.height =
            other.input.points.points[i].at.height + Length::millimetres(kStep);
    return (value_of(other.check(), name) - before) / kStep;
  };
  double squares = 0;
  for (std::size_t i = 0; i < base.input.points.size(); ++i) {
    const double one = answer([&](std::size_t k) { return k == i; });
    squares += one * one * 4;  // sigma 2 mm
  }
  const double all = answer([](std::size_t) { return true; });
  return kK * std::sqrt(squares + all * all * 4);  // shared 2 mm
}

TEST(Uncertainty, IsTheAnswerToEachHeight) {
  BaseFixture base = rough(5, 4);
  base.input.straightedge = std::nullopt;  // slow, and asked below by itself
  for (const char* name : {"level high", "level low", "level mean", "flatness", "fall",
                           "bedding thinnest", "bedding thickest"})
    EXPECT_NEAR(uncertainty_of(base.check(), name), by_definition(base, name),
                1e-4 * uncertainty_of(base.check(), name))
        << name << ", seed " << kSeed;
}

TEST(Uncertainty, OfTheStraightedgeIsTheAnswerToEachHeight) {
  const BaseFixture base = rough(4, 3);
  EXPECT_NEAR(uncertainty_of(base.check(), "straightedge"), by_definition(base, "straightedge"),
              2e-3 * uncertainty_of(base.check(), "straightedge"));
}

TEST(Uncertainty, WhatDoesNotFeelTheSharedPart) {
  BaseFixture base = rough(5, 4);
  base.module_along = 1.2;
  const BaseResult before = base.check();
  base.input.sigma_common = Length::millimetres(50);
  const BaseResult after = base.check();
  for (const char* name : {"flatness", "straightedge", "stack gap", "fall"})
    EXPECT_EQ(uncertainty_of(before, name), uncertainty_of(after, name)) << name;
  for (const char* name : {"level high", "level mean", "bedding thinnest"})
    EXPECT_GT(uncertainty_of(after, name), 80) << name;
}

// Nine points on a floor that wants eighty: judged, but not proven, and the checks say why.
TEST(Uncertainty, NinePointsGiveAVerdictAndSayWhy) {
  BaseFixture base;
  base.ask_for_all();
  base.input.sigma_height = base.input.sigma_common = Length::millimetres(2);
  for (const double along : {0.0, 12.0, 24.0})
    for (const double across : {0.0, 4.8, 9.6}) base.add(along, across, 2);
  const BaseResult r = base.check();
  EXPECT_EQ(r.verdict, Verdict::NotProven);
  EXPECT_EQ(named(r, "coverage").verdict, Verdict::DoesNotConform);
  EXPECT_NE(named(r, "coverage").words.find("further points would close all"), std::string::npos);
  EXPECT_GT(r.holes.size(), 30u);
  const Check& high = named(r, "level high");
  EXPECT_EQ(high.verdict, Verdict::NotProven);
  EXPECT_NE(high.words.find("once its standard uncertainty is below 1.82 mm, now 2.83 mm"),
            std::string::npos)
      << high.words;
  for (const Check& check : r.checks)
    if (check.verdict == Verdict::NotProven) {
      EXPECT_FALSE(check.words.empty()) << check.name;
    }
}

}  // namespace
}  // namespace squaredig::base
