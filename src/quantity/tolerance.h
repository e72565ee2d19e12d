// What a specification permits: how far above and how far below, both typed positive.
// Ratio, Force, UnitWeight, Mass and Density: plain measures that must not mix with lengths.
// Accuracy: one rounding per operation. Errors: none.
// Source: SI; definition.
#pragma once

#include "quantity/length.h"

namespace squaredig {

struct Tolerance {
  Length high;
  Length low;
  friend constexpr bool operator==(const Tolerance&, const Tolerance&) = default;
};

class Ratio : public Measure<Ratio> {
 public:
  static constexpr Ratio of(double r) { return make(r); }
  static constexpr Ratio percent(double p) { return make(p / 100); }
  constexpr double value() const { return value_; }
  constexpr double in_percent() const { return value_ * 100; }
};

class Force : public Measure<Force> {
 public:
  static constexpr Force kilonewtons(double kn) { return make(kn); }
  constexpr double in_kilonewtons() const { return value_; }
};

class UnitWeight : public Measure<UnitWeight> {
 public:
  static constexpr UnitWeight kilonewtons_per_cubic_metre(double w) { return make(w); }
  constexpr double in_kilonewtons_per_cubic_metre() const { return value_; }
};

class Mass : public Measure<Mass> {
 public:
  static constexpr Mass tonnes(double t) { return make(t); }
  constexpr double in_tonnes() const { return value_; }
};

class Density : public Measure<Density> {
 public:
  static constexpr Density tonnes_per_cubic_metre(double d) { return make(d); }
  constexpr double in_tonnes_per_cubic_metre() const { return value_; }
};

}  // namespace squaredig
