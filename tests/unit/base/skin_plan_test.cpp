#include <gtest/gtest.h>

#include <algorithm>
#include <random>

#include "unit/base/base_fixture.h"

namespace squaredig::base {
namespace {

using testing::BaseFixture;
using testing::mm;
using testing::named;

constexpr unsigned kSeed = 20260321;

// A level base with nothing on it, 20 mm of bedding wanted, from 15 to 30 mm taken.
BaseFixture level_base() {
  BaseFixture base;
  base.gap = 2;
  for (const double along : {-2.0, 26.0})
    for (const double across : {-2.0, 11.6}) base.add(along, across, 0);
  return base;
}

// A pyramid on a square of 2 m. Its contour at a share s of its height is a square of 2 (1 - s) m.
void add_pyramid(BaseFixture& base, double along, double across, double height_mm) {
  for (const double u : {-1.0, 1.0})
    for (const double v : {-1.0, 1.0}) base.add(along + u, across + v, 0);
  base.add(along, across, height_mm);
}

bool has_finding(const BaseResult& r, const std::string& code) {
  return std::any_of(r.head.findings.begin(), r.head.findings.end(),
                     [&](const Finding& f) { return f.code == code; });
}

std::string finding(const BaseResult& r, const std::string& code) {
  for (const Finding& f : r.head.findings)
    if (f.code == code) return f.text;
  return {};
}

TEST(SkinPlan, ABumpLeavesASquareTooThin) {
  BaseFixture base = level_base();
  add_pyramid(base, 12, 4.8, 20);
  const BaseResult r = base.check();
  ASSERT_EQ(r.skin->too_thin->size(), 1u);
  EXPECT_TRUE(r.skin->too_thick->empty());
  const SkinPatch& patch = r.skin->too_thin->front();
  // a quarter of the height is bedding to spare: 2 * 0.75 m square
  EXPECT_NEAR(patch.area.in_square_metres(), 1.5 * 1.5, 1e-7);
  EXPECT_NEAR(patch.worst.in_millimetres(), 0, 1e-6);
  EXPECT_NEAR(patch.along_ab.in_metres(), 12, 1e-7);
  EXPECT_NEAR(patch.across_ab.in_metres(), 4.8, 1e-7);
  ASSERT_EQ(patch.rings.size(), 1u);
  ASSERT_EQ(patch.rings[0].size(), 4u);
  const design::Tank tank = base.planned().tank;
  for (const GridPoint corner : patch.rings[0]) {
    EXPECT_NEAR(std::abs(tank.along_ab(corner).in_metres() - 12), 0.75, 1e-7);
    EXPECT_NEAR(std::abs(tank.across_ab(corner).in_metres() - 4.8), 0.75, 1e-7);
  }
  EXPECT_EQ(finding(r, "bedding_too_thin"),
            "the bedding would be thinner than the least, 15.0 mm, in one place, 2.25 m2 of the "
            "footprint; thinnest 0.0 mm, 12.00 m along A-B, 4.80 m in");
}

TEST(SkinPlan, DipsLeaveSquaresTooThickLargestFirst) {
  BaseFixture base = level_base();
  add_pyramid(base, 5, 4.8, -20);
  add_pyramid(base, 15, 4.8, -25);
  const BaseResult r = base.check();
  EXPECT_TRUE(r.skin->too_thin->empty());
  ASSERT_EQ(r.skin->too_thick->size(), 2u);
  EXPECT_NEAR(r.skin->too_thick->at(0).area.in_square_metres(), 1.2 * 1.2, 1e-7);
  EXPECT_NEAR(r.skin->too_thick->at(0).worst.in_millimetres(), 45, 1e-6);
  EXPECT_NEAR(r.skin->too_thick->at(1).area.in_square_metres(), 1, 1e-7);
  EXPECT_NEAR(r.skin->too_thick->at(1).worst.in_millimetres(), 40, 1e-6);
  EXPECT_NEAR(r.skin->too_thick->at(1).along_ab.in_metres(), 5, 1e-7);
  EXPECT_NE(finding(r, "bedding_too_thick").find("in 2 places, 2.44 m2"), std::string::npos);
}

TEST(SkinPlan, OfABumpBesideTheTankOnlyWhatReachesUnderItCounts) {
  BaseFixture base = level_base();
  add_pyramid(base, 18, -0.5, 20);
  const BaseResult r = base.check();
  ASSERT_EQ(r.skin->too_thin->size(), 1u);
  const SkinPatch& patch = r.skin->too_thin->front();
  // the square of 1.5 m reaches 0.25 m in; on the tank's face the pyramid stands at half its height
  EXPECT_NEAR(patch.area.in_square_metres(), 1.5 * 0.25, 1e-7);
  EXPECT_NEAR(patch.worst.in_millimetres(), 10, 1e-6);
  EXPECT_NEAR(patch.along_ab.in_metres(), 18, 0.5 + 1e-7);  // it is level there for a metre
  EXPECT_NEAR(patch.across_ab.in_metres(), 0, 1e-7);
}

TEST(SkinPlan, ABumpOutsideTheTankIsNoConcernOfTheSkin) {
  BaseFixture base = level_base();
  add_pyramid(base, 18, -0.9, 20);  // its square ends 0.15 m short of the tank
  const BaseResult r = base.check();
  EXPECT_TRUE(r.skin->too_thin->empty());
  EXPECT_FALSE(has_finding(r, "bedding_too_thin"));
}

TEST(SkinPlan, ALimitThatWasNotEnteredHasNoPlan) {
  const BaseFixture base = [] {
    BaseFixture b = level_base();
    add_pyramid(b, 12, 4.8, 20);
    return b;
  }();
  PlannedBase planned = base.planned();
  planned.least = std::nullopt;
  const BaseResult r = check_base(base.input, planned);
  EXPECT_FALSE(r.skin->too_thin);
  EXPECT_TRUE(r.skin->too_thick);
  EXPECT_NE(r.skin->shift_words.find("takes both the least and the most"), std::string::npos);
}

TEST(SkinPlan, PatchesAreThereWhereTheCheckFailsItsLimit_base_7) {
  for (unsigned i = 0; i < 20; ++i) {
    std::mt19937 random(kSeed + i);
    std::normal_distribution<double> uneven(0, 1 + 0.3 * i);
    BaseFixture base;
    base.add_grid(1.2, [&](double, double) { return uneven(random); });
    const BaseResult r = base.check();
    const auto thinner = [](const auto& a, const auto& b) { return a.worst < b.worst; };
    const double thinnest = mm(named(r, "bedding thinnest").value);
    const double thickest = mm(named(r, "bedding thickest").value);
    const auto& thin = *r.skin->too_thin;
    const auto& thick = *r.skin->too_thick;
    ASSERT_EQ(thin.empty(), thinnest >= 15) << "seed " << kSeed << ", case " << i;
    ASSERT_EQ(thick.empty(), thickest <= 30) << "seed " << kSeed << ", case " << i;
    if (!thin.empty()) {
      EXPECT_NEAR(std::min_element(thin.begin(), thin.end(), thinner)->worst.in_millimetres(),
                  thinnest, 1e-6);
    }
    if (!thick.empty()) {
      EXPECT_NEAR(std::max_element(thick.begin(), thick.end(), thinner)->worst.in_millimetres(),
                  thickest, 1e-6);
    }
  }
}

PlannedBase with_pipes(const BaseFixture& base) {
  PlannedBase planned = base.planned();
  planned.inverts = {{"inlet", Elevation::metres(63.150)}, {"outlet", Elevation::metres(62.450)}};
  return planned;
}

TEST(Shift, TellsWhereEachEndLeavesTheInverts) {
  BaseFixture base = level_base();
  add_pyramid(base, 12, 4.8, 6);  // bedding 14 mm: the tank goes up at least 1 mm
  add_pyramid(base, 5, 4.8, -8);  // bedding 28 mm: and at most 2 mm
  const BaseResult r = check_base(base.input, with_pipes(base));
  ASSERT_TRUE(r.skin->shift_that_fits);
  EXPECT_NEAR(r.skin->shift_that_fits->first.in_millimetres(), 1, 1e-6);
  EXPECT_NEAR(r.skin->shift_that_fits->second.in_millimetres(), 2, 1e-6);
  ASSERT_EQ(r.skin->inverts.size(), 2u);
  EXPECT_EQ(r.skin->inverts[1].name, "outlet");
  EXPECT_EQ(r.skin->inverts[1].planned, Elevation::metres(62.450));
  EXPECT_NEAR(r.skin->inverts[1].at_from.in_metres(), 62.451, 1e-9);
  EXPECT_NEAR(r.skin->inverts[1].at_to.in_metres(), 62.452, 1e-9);
  EXPECT_EQ(
      r.skin->shift_words,
      "with the tank shifted in level by +1.0 mm to +2.0 mm, up positive, the bedding keeps "
      "from 15.0 mm to 30.0 mm everywhere without digging; inverts go with it: \"inlet\" planned "
      "63.1500 would be 63.1510 to 63.1520; \"outlet\" planned 62.4500 would be 62.4510 to "
      "62.4520");
  EXPECT_EQ(finding(r, "tank_shift"), r.skin->shift_words);
}

TEST(Shift, OfNoneSaysWhatItTakes) {
  BaseFixture base = level_base();
  add_pyramid(base, 12, 4.8, 10);
  add_pyramid(base, 5, 4.8, -6);  // 16 mm apart where 15 are allowed
  const BaseResult r = check_base(base.input, with_pipes(base));
  EXPECT_FALSE(r.skin->shift_that_fits);
  EXPECT_TRUE(r.skin->inverts.empty());
  EXPECT_NE(r.skin->shift_words.find("it varies by 16.0 mm where 15.0 mm are allowed; trimming"),
            std::string::npos);
}

TEST(Shift, OfABaseThatFitsAsPlannedIsNoFinding) {
  const BaseResult r = check_base(level_base().input, with_pipes(level_base()));
  EXPECT_NE(r.skin->shift_words.find("as planned included"), std::string::npos);
  EXPECT_FALSE(has_finding(r, "tank_shift"));
}

}  // namespace
}  // namespace squaredig::base
