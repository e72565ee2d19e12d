// The two slopes of the trade, which are reciprocals of each other and so must never mix.
// Fall: drop per run, 0 = level, said in percent. Batter: run per rise, 0 = vertical, said "1.5:1".
//
// Laws: slope.1  a Fall and a Batter do not convert into each other without being asked by name.
// Accuracy: one rounding per operation. Errors: none.
// Source: batter as run per unit rise and cross-fall in percent are common practice, no source.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "quantity/angle.h"

namespace squaredig {

class Fall : public Measure<Fall> {
 public:
  static constexpr Fall percent(double p) { return make(p / 100); }
  static constexpr Fall drop_per_run(double ratio) { return make(ratio); }
  constexpr double in_percent() const { return value_ * 100; }
  constexpr double drop_per_run() const { return value_; }
};

class Batter {
 public:
  constexpr Batter() = default;  // vertical
  // Requires: run_per_rise >= 0 and finite.
  static constexpr Batter run_per_rise(double ratio) {
    Batter b;
    b.run_ = ratio;
    return b;
  }
  constexpr double run_per_rise() const { return run_; }
  constexpr bool vertical() const { return run_ == 0; }
  // Steepness above the horizontal: 90 degrees for vertical, 45 for 1:1.
  Angle above_horizontal() const;
  // "1.5:1"
  std::string text() const;
  // "1.5 across for each 1 up (33.7 degrees)", "vertical (90 degrees)"
  std::string words() const;
  // Reads "1.5:1", "0:1", "3:2"; nothing where the text is not run:rise with rise > 0 <= run.
  static std::optional<Batter> parse(std::string_view text);
  friend constexpr bool operator==(Batter, Batter) = default;

 private:
  double run_ = 0;
};

}  // namespace squaredig
