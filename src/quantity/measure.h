// The two kinds of number everything is said in: a Measure (a difference: adds, scales) and a
// Datum (a position on a scale: differences of two are measures, sums do not exist).
//
// Requires: nothing; NaN and infinity are kept out where numbers enter, not here.
// Laws: measure.1  a derived type is the size of a double;
//       measure.2  two types never mix: each operator takes and gives its own type.
// Accuracy: one rounding per operation. Errors: none; wrong code does not compile.
// Source: definition.
#pragma once

#include <compare>

namespace squaredig {

template <class Self>
class Measure {
 public:
  constexpr Measure() = default;
  friend constexpr Self operator+(Self a, Self b) { return make(a.value_ + b.value_); }
  friend constexpr Self operator-(Self a, Self b) { return make(a.value_ - b.value_); }
  friend constexpr Self operator-(Self a) { return make(-a.value_); }
  friend constexpr Self operator*(Self a, double k) { return make(a.value_ * k); }
  friend constexpr Self operator*(double k, Self a) { return make(a.value_ * k); }
  friend constexpr Self operator/(Self a, double k) { return make(a.value_ / k); }
  friend constexpr double operator/(Self a, Self b) { return a.value_ / b.value_; }
  friend constexpr auto operator<=>(Self a, Self b) { return a.value_ <=> b.value_; }
  friend constexpr bool operator==(Self a, Self b) { return a.value_ == b.value_; }
  constexpr Self& operator+=(Self b) { return value_ += b.value_, static_cast<Self&>(*this); }
  constexpr Self& operator-=(Self b) { return value_ -= b.value_, static_cast<Self&>(*this); }
  friend constexpr Self abs(Self a) { return make(a.value_ < 0 ? -a.value_ : a.value_); }

 protected:
  static constexpr Self make(double value) {
    Self self;
    self.value_ = value;
    return self;
  }
  double value_ = 0;
};

template <class Self, class Difference>
class Datum {
 public:
  constexpr Datum() = default;
  friend constexpr Difference operator-(Self a, Self b) {
    return Difference::metres(a.value_ - b.value_);
  }
  friend constexpr Self operator+(Self a, Difference d) { return make(a.value_ + d.in_metres()); }
  friend constexpr Self operator-(Self a, Difference d) { return make(a.value_ - d.in_metres()); }
  friend constexpr auto operator<=>(Self a, Self b) { return a.value_ <=> b.value_; }
  friend constexpr bool operator==(Self a, Self b) { return a.value_ == b.value_; }

 protected:
  static constexpr Self make(double value) {
    Self self;
    self.value_ = value;
    return self;
  }
  double value_ = 0;
};

}  // namespace squaredig
