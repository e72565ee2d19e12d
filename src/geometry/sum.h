// A compensated sum: the rounding that each addition loses is kept and added at the end.
//
// Frame and units: those of the terms. Laws: sum.1  1 + 1e100 - 1e100 - 1 + 2 sums to 2.
// Accuracy: one rounding of the exact sum, plus n^2 epsilon^2 of the sum of magnitudes.
// Errors: none. Source: Neumaier's form of Kahan's summation.
#pragma once

#include <cmath>

namespace squaredig::geometry {

class Sum {
 public:
  void add(double term) {
    const double next = total_ + term;
    lost_ += std::abs(total_) >= std::abs(term) ? (total_ - next) + term : (term - next) + total_;
    total_ = next;
  }
  double value() const { return total_ + lost_; }

 private:
  double total_ = 0;
  double lost_ = 0;
};

}  // namespace squaredig::geometry
