// What the compiler must refuse, asked through concepts for every pair of quantities. The list in
// tests/compile shows the same as lines of code.
#include <gtest/gtest.h>

#include <string>
#include <tuple>

#include "quantity/angle.h"
#include "quantity/slope.h"
#include "quantity/tolerance.h"

namespace squaredig {
namespace {

template <class A, class B>
concept CanAdd = requires(A a, B b) {
  a + b;
};
template <class A, class B>
concept CanSubtract = requires(A a, B b) {
  a - b;
};
template <class A, class B>
concept CanCompare = requires(A a, B b) {
  a == b;
};
template <class A, class B>
concept CanOrder = requires(A a, B b) {
  a < b;
};
template <class A, class B>
concept CanAssign = requires(A a, B b) {
  a = b;
};

using Measures = std::tuple<Length, Area, Volume, BankVolume, LooseVolume, CompactedVolume, Angle,
                            Fall, Ratio, Force, UnitWeight, Density>;
using All = std::tuple<Length, Area, Volume, BankVolume, LooseVolume, CompactedVolume, Angle, Fall,
                       Ratio, Force, UnitWeight, Density, Bearing, Easting, Northing, Elevation,
                       Batter, double, int>;

template <class Tuple, class Visit>
constexpr void each(Visit visit) {
  [&]<std::size_t... I>(std::index_sequence<I...>) {
    (visit(std::type_identity<std::tuple_element_t<I, Tuple>>{}), ...);
  }
  (std::make_index_sequence<std::tuple_size_v<Tuple>>{});
}

// How many pairs (measure, any other type) break the rule.
constexpr int mixing_pairs() {
  int broken = 0;
  each<Measures>([&](auto left) {
    each<All>([&](auto right) {
      using A = typename decltype(left)::type;
      using B = typename decltype(right)::type;
      if constexpr (!std::is_same_v<A, B>) {
        // a length may be added to or taken from a position, a turn to or from a bearing: there the
        // position stands on the left, so nothing is allowed here
        broken +=
            CanAdd<A, B> + CanSubtract<A, B> + CanCompare<A, B> + CanOrder<A, B> + CanAssign<A, B>;
      }
    });
  });
  return broken;
}

constexpr int wrong_sizes() {
  int wrong = 0;
  each<Measures>(
      [&](auto type) { wrong += sizeof(typename decltype(type)::type) != sizeof(double); });
  return wrong;
}

TEST(Measure, EveryMeasureIsTheSizeOfADouble_measure_1) {
  static_assert(sizeof(Length) == sizeof(double));
  static_assert(wrong_sizes() == 0);
  EXPECT_EQ(wrong_sizes(), 0);
}

TEST(Measure, NoTwoTypesAddCompareOrAssign_measure_2) {
  static_assert(mixing_pairs() == 0);
  // the same questions are answered yes where they should be, so the concepts do ask something
  static_assert(CanAdd<Length, Length> && CanSubtract<Area, Area> && CanCompare<Fall, Fall>);
  static_assert(CanOrder<Force, Force> && CanAssign<Density, Density>);
  EXPECT_EQ(mixing_pairs(), 0);
  EXPECT_EQ((Length::metres(1.5) + Length::millimetres(500)).in_metres(), 2.0);
}

TEST(Position, ElevationsSubtractToALengthAndNeverAdd_position_1) {
  static_assert(!CanAdd<Elevation, Elevation> && !CanAdd<Easting, Easting>);
  static_assert(!CanSubtract<Easting, Northing> && !CanSubtract<Elevation, Northing>);
  static_assert(!CanCompare<Easting, Northing> && !CanAssign<Northing, Easting>);
  static_assert(!CanAdd<Elevation, Area> && !CanAdd<Elevation, double>);
  static_assert(std::is_same_v<decltype(Elevation{} - Elevation{}), Length>);
  static_assert(std::is_same_v<decltype(Elevation{} + Length{}), Elevation>);
  EXPECT_EQ(Elevation::metres(64.25) - Elevation::metres(62.0), Length::metres(2.25));
}

TEST(Slope, FallAndBatterConvertOnlyByName_slope_1) {
  static_assert(!CanAssign<Fall, Batter> && !CanAssign<Batter, Fall>);
  static_assert(!std::is_constructible_v<Fall, Batter> && !std::is_constructible_v<Batter, Fall>);
  static_assert(!std::is_constructible_v<Fall, double> && !std::is_constructible_v<Batter, double>);
  static_assert(!CanCompare<Fall, Batter> && !CanAdd<Fall, Batter>);
  // 1 in 2 said both ways: the reciprocal is asked for by name
  EXPECT_EQ(Fall::drop_per_run(0.5).drop_per_run(), 1 / Batter::run_per_rise(2).run_per_rise());
}

TEST(Soil, VolumesOfDifferentStateNeverMix) {
  static_assert(!CanAdd<BankVolume, LooseVolume> && !CanCompare<BankVolume, CompactedVolume>);
  static_assert(!CanAssign<LooseVolume, BankVolume> && !std::is_convertible_v<Volume, BankVolume>);
  EXPECT_EQ(BankVolume::filling(Area::square_metres(6) * Length::metres(2)).in_cubic_metres(), 12);
}

TEST(Length, ProductsAreAreasAndVolumes) {
  static_assert(std::is_same_v<decltype(Length{} * Length{}), Area>);
  static_assert(std::is_same_v<decltype(Area{} * Length{}), Volume>);
  static_assert(std::is_same_v<decltype(Volume{} / Area{}), Length>);
  EXPECT_EQ((Length::metres(3) * Length::metres(4)).in_square_metres(), 12);
}

}  // namespace
}  // namespace squaredig
