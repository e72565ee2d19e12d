// Length, Area and Volume. Units are spelled at the door: metres, square metres, cubic metres.
// A volume of soil says in which state it was measured: in the ground (bank), loose or compacted;
// the three never mix, and change into one another only through a stated factor.
//
// Accuracy: one rounding per operation.
// Errors: none.
// Source: SI; the bank, loose and compacted measures of earthwork are common practice, no source.
#pragma once

#include "quantity/measure.h"

namespace squaredig {

class Length : public Measure<Length> {
 public:
  static constexpr Length metres(double m) { return make(m); }
  static constexpr Length millimetres(double mm) { return make(mm / 1000); }
  constexpr double in_metres() const { return value_; }
  constexpr double in_millimetres() const { return value_ * 1000; }
};

class Area : public Measure<Area> {
 public:
  static constexpr Area square_metres(double m2) { return make(m2); }
  constexpr double in_square_metres() const { return value_; }
};

// A volume of space, before anyone says what stuff fills it.
class Volume : public Measure<Volume> {
 public:
  static constexpr Volume cubic_metres(double m3) { return make(m3); }
  constexpr double in_cubic_metres() const { return value_; }
};

template <class State>
class SoilVolume : public Measure<SoilVolume<State>> {
 public:
  static constexpr SoilVolume cubic_metres(double m3) { return SoilVolume::make(m3); }
  static constexpr SoilVolume filling(Volume v) { return SoilVolume::make(v.in_cubic_metres()); }
  constexpr double in_cubic_metres() const { return this->value_; }
};
struct InTheGround;
struct Loosened;
struct Rolled;
using BankVolume = SoilVolume<InTheGround>;
using LooseVolume = SoilVolume<Loosened>;
using CompactedVolume = SoilVolume<Rolled>;

constexpr Area operator*(Length a, Length b) {
  return Area::square_metres(a.in_metres() * b.in_metres());
}
constexpr Volume operator*(Area a, Length h) {
  return Volume::cubic_metres(a.in_square_metres() * h.in_metres());
}
constexpr Length operator/(Volume v, Area a) {
  return Length::metres(v.in_cubic_metres() / a.in_square_metres());
}

}  // namespace squaredig
