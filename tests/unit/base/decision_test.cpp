#include <gtest/gtest.h>

#include "base/decision_internal.h"

namespace squaredig::base {
namespace {

Length mm(double v) { return Length::millimetres(v); }

TEST(Decision, QuantileAtHalfIsZero) { EXPECT_EQ(normal_quantile(Ratio::of(0.5)), 0); }

TEST(Decision, ThreeVerdictsOfAnUpperLimit) {
  EXPECT_EQ(at_most(mm(4), mm(10), mm(6)), Verdict::Conforms);  // exactly inside counts
  EXPECT_EQ(at_most(mm(4.1), mm(10), mm(6)), Verdict::NotProven);
  EXPECT_EQ(at_most(mm(16), mm(10), mm(6)), Verdict::NotProven);
  EXPECT_EQ(at_most(mm(16.1), mm(10), mm(6)), Verdict::DoesNotConform);
}

TEST(Decision, ThreeVerdictsOfALowerLimit) {
  EXPECT_EQ(at_least(mm(-4), mm(-10), mm(6)), Verdict::Conforms);
  EXPECT_EQ(at_least(mm(-4.1), mm(-10), mm(6)), Verdict::NotProven);
  EXPECT_EQ(at_least(mm(-16.1), mm(-10), mm(6)), Verdict::DoesNotConform);
}

TEST(Decision, BothSides) {
  const auto verdict = [](double value) {
    return decided("level mean", Bound::BothSides, mm(value), Amount(mm(5)), Amount(mm(1))).verdict;
  };
  EXPECT_EQ(verdict(4), Verdict::Conforms);
  EXPECT_EQ(verdict(-4), Verdict::Conforms);
  EXPECT_EQ(verdict(-4.5), Verdict::NotProven);
  EXPECT_EQ(verdict(-6.5), Verdict::DoesNotConform);
}

TEST(Decision, NoLimitIsNotAskedAndNoValueIsNotProven) {
  EXPECT_EQ(decided("flatness", Bound::AtMost, mm(50), std::nullopt, mm(1)).verdict,
            Verdict::NotAsked);
  EXPECT_EQ(decided("flatness", Bound::AtMost, std::nullopt, Amount(mm(5)), std::nullopt).verdict,
            Verdict::NotProven);
}

TEST(Decision, OverallAfterTheRule) {
  const auto check = [](const char* name, Verdict v) {
    Check c;
    c.name = name;
    c.verdict = v;
    return c;
  };
  const Check good = check("level high", Verdict::Conforms);
  const Check open = check("flatness", Verdict::NotProven);
  const Check bad = check("fall", Verdict::DoesNotConform);
  const Check holes = check("coverage", Verdict::DoesNotConform);
  const Check unasked = check("straightedge", Verdict::NotAsked);
  EXPECT_EQ(overall({good, unasked}), Verdict::Conforms);
  EXPECT_EQ(overall({good, open}), Verdict::NotProven);
  EXPECT_EQ(overall({good, holes}), Verdict::NotProven);
  EXPECT_EQ(overall({open, bad, holes}), Verdict::DoesNotConform);
}

}  // namespace
}  // namespace squaredig::base
