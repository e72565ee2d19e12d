#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "unit/base/base_fixture.h"

namespace squaredig::base {
namespace {

using testing::BaseFixture;
using testing::mm;
using testing::named;

// Local numbers near zero: what is tested is the rule, not the places of a grid coordinate.
BaseFixture near_zero() {
  BaseFixture base;
  base.corner_a = grid_point(0, 0);
  base.bearing = 0;
  base.underside = 0;
  base.fall_percent = 0;
  base.input.stack_gap_tolerance = Length::millimetres(5);
  return base;
}

// Two planes meeting in a ridge on a joint: derived, slope difference times height.
TEST(StackGap, TwoPatchesAtAKnownAngle) {
  for (const double turn : {6.0, -6.0, 0.5}) {  // mm per metre
    BaseFixture base = near_zero();
    const auto height = [&](double along, double) { return -turn * std::abs(along - 12) / 2; };
    for (const double along : {-0.2, 12.0, 24.2})
      for (const double across : {-0.2, 3.0, 9.8}) base.add(along, across, height(along, across));
    const BaseResult r = base.check();
    const Joint& worst = *r.stack_gap->widest;
    EXPECT_NEAR(worst.opening.in_metres(), turn / 1000 * 1.32, 1e-9);  // a hump opens at the top
    EXPECT_NEAR(mm(named(r, "stack gap").value), std::abs(turn) * 1.32, 1e-6);
    EXPECT_EQ(worst.column, 10);
    EXPECT_EQ(worst.to_column, 11);
    EXPECT_EQ(worst.row, worst.to_row);
  }
}

TEST(StackGap, ARidgeAlongTheTankOpensBetweenRows) {
  BaseFixture base = near_zero();
  for (const double along : {-0.2, 12.0, 24.2})
    for (const double across : {-0.2, 4.8, 9.8})
      base.add(along, across, -3 * std::abs(across - 4.8));
  const BaseResult r = base.check();
  EXPECT_NEAR(r.stack_gap->widest->opening.in_metres(), 0.006 * 1.32, 1e-9);
  EXPECT_EQ(r.stack_gap->widest->row, 8);
  EXPECT_EQ(r.stack_gap->widest->to_row, 9);
}

TEST(StackGap, APlaneBaseOfAnyTiltHasNone) {
  std::mt19937 random(20260312);
  std::uniform_real_distribution<double> unit(-1, 1);
  for (int i = 0; i < 20; ++i) {
    BaseFixture base = near_zero();
    const double a = 10 * unit(random), b = 10 * unit(random);
    for (int k = 0; k < 40; ++k) {
      const double along = 12 + 12 * unit(random), across = 4.8 + 4.8 * unit(random);
      base.add(along, across, a * along + b * across);
    }
    for (const double along : {-0.2, 24.2})
      for (const double across : {-0.2, 9.8}) base.add(along, across, a * along + b * across);
    EXPECT_NEAR(mm(named(base.check(), "stack gap").value), 0, 1e-9) << "seed 20260312, case " << i;
  }
}

// On z = -s^2 / 2R the best plane of a rectangle has the slope at its middle, so neighbours differ
// by the unit's size / R: the joint opens by size times height / R.
TEST(StackGap, ASphereLikeBaseAgreesWithTheory) {
  BaseFixture base = near_zero();
  base.length = 12, base.width = 4.8;
  const double radius = 400;
  base.add_grid(0.1, [&](double along, double across) {
    const double x = along - 6, y = across - 2.4;
    return -1000 * (x * x + y * y) / (2 * radius);
  });
  const BaseResult r = base.check();
  // the surveyed surface is a polyhedron of 0.1 m facets
  EXPECT_NEAR(r.stack_gap->widest->opening.in_metres(), 1.2 * 1.32 / radius, 2e-6);
  for (const Joint& j : r.stack_gap->joints) {
    const double size = j.row == j.to_row ? 1.2 : 0.6;
    EXPECT_NEAR(j.opening.in_metres(), size * 1.32 / radius, 2e-6);
  }
  EXPECT_EQ(r.stack_gap->columns, 10);
  EXPECT_EQ(r.stack_gap->rows, 8);
  EXPECT_EQ(r.stack_gap->joints.size(), 9u * 8 + 10 * 7);
}

// Every joint along the ridge opens alike, by 6 mm per metre times 1.32 m = 7.92 mm; the others are
// shut.
TEST(StackGap, JointsOverTheToleranceAreListed) {
  BaseFixture base = near_zero();
  for (const double along : {-0.2, 12.0, 24.2})
    for (const double across : {-0.2, 4.8, 9.8}) base.add(along, across, -3 * std::abs(along - 12));
  const StackGap over = *base.check().stack_gap;
  EXPECT_EQ(over.listed_over, Length::millimetres(5));
  ASSERT_EQ(over.listed.size(), 16u);
  for (const Joint& j : over.listed) {
    EXPECT_EQ(j.column, 10);
    EXPECT_EQ(j.to_column, 11);
    EXPECT_NEAR(j.opening.in_millimetres(), 7.92, 1e-6);
  }
  base.input.stack_gap_tolerance = Length::millimetres(8);  // none: the widest all the same
  EXPECT_EQ(base.check().stack_gap->listed.size(), 1u);
  base.input.stack_gap_tolerance = std::nullopt;
  const StackGap half = *base.check().stack_gap;
  EXPECT_NEAR(half.listed_over.in_millimetres(), 3.96, 1e-6);
  EXPECT_EQ(half.listed.size(), 16u);
}

TEST(StackGap, ARemainderIsAFinding) {
  BaseFixture base = near_zero();
  base.length = 24.5;
  base.add_grid(1.5, [](double, double) { return 0.0; });
  const BaseResult r = base.check();
  ASSERT_EQ(r.head.findings.size(), 1u);
  EXPECT_EQ(r.head.findings[0].code, "stack_remainder");
  EXPECT_NE(r.head.findings[0].text.find("4.800 m2"), std::string::npos) << r.head.findings[0].text;
  EXPECT_EQ(r.stack_gap->columns, 20);
  base.length = 24.0004;  // less than a millimetre is none
  EXPECT_TRUE(base.check().head.findings.empty());
}

TEST(StackGap, WithoutModuleItIsNotComputed) {
  BaseFixture base = near_zero();
  base.module_along = 0;
  base.add_grid(1.5, [](double, double) { return 0.0; });
  const BaseResult r = base.check();
  EXPECT_FALSE(r.stack_gap);
  EXPECT_FALSE(named(r, "stack gap").value);
  EXPECT_EQ(named(r, "stack gap").verdict, Verdict::NotProven);
}

// The uncertainty against its definition: the answer to each height by itself.
TEST(StackGap, UncertaintyIsTheAnswerToEachHeight) {
  BaseFixture base = near_zero();
  std::mt19937 random(20260313);
  std::normal_distribution<double> uneven(0, 3);
  base.length = 6, base.width = 3;
  base.add_grid(1.5, [&](double, double) { return uneven(random); });
  const BaseResult r = base.check();
  const auto worst = [](const BaseResult& result, const Joint& j) {
    for (const Joint& other : result.stack_gap->joints)
      if (other.column == j.column && other.row == j.row && other.to_row == j.to_row)
        return other.opening.in_millimetres();
    return 0.0;
  };
  const Joint joint = *r.stack_gap->widest;
  double squares = 0;
  for (std::size_t i = 0; i < base.input.points.size(); ++i) {
    BaseFixture raised = base;
    Elevation& z = raised.input.points.points[i].at.height;
    z = z + Length::millimetres(1);
    const double moved = worst(raised.check(), joint) - joint.opening.in_millimetres();
    squares += moved * moved * 4;  // sigma 2 mm
  }
  EXPECT_NEAR(mm(named(r, "stack gap").uncertainty), 1.6448536269514722 * std::sqrt(squares), 1e-6);
}

}  // namespace
}  // namespace squaredig::base
