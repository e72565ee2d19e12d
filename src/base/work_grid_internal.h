// The ground a machine works to put a place right.
//
// What: a machine works no narrower than its width. The floor is laid out in small steps along and
//   square to A-B, nine of them to the width. A step to be put right is taken by the square of nine
//   steps that has it and the most of the others, within the floor's extent; of equals by the one
//   that has it in its middle. What the squares cover is worked; what hangs together is one patch.
// Frame and units: site frame, metres; steps along and square to A-B.
// Requires: a width above zero.
// Laws: work.1 every place marked is worked; work.2 what is worked is a union of squares of at
//   least the width, on a rectangular floor wholly inside it.
// Accuracy: steps are a ninth of the width or a little more; a step is put right as a whole.
// Source: definition.
#pragma once

#include "base/landscape_internal.h"

namespace squaredig::base {

class WorkGrid {
 public:
  WorkGrid(const Floor& floor, const TankAxes& axes, double width);

  // Marks the ground under a piece to be put right.
  void mark(const Piece& piece);
  // Works the squares round what is marked, and numbers what hangs together from 0.
  int work();
  // The number of the patch a piece reaches; nothing where it reaches none.
  std::optional<int> reached(const Piece& piece) const;
  // Convex parts of a patch inside the floor: any, and such as share whole edges.
  std::vector<geometry::Polygon> parts(int patch) const { return runs(patch, Corners::Few); }
  std::vector<geometry::Polygon> outline(int patch) const;

 private:
  enum class Corners { Few, AtEveryStep };
  static constexpr int kSteps = 9;  // odd: a square has a middle one

  template <class Visit>
  void steps_under(const Piece& piece, const Visit& visit) const;
  std::size_t index(int column, int row) const {
    return static_cast<std::size_t>(row) * static_cast<std::size_t>(columns_) +
           static_cast<std::size_t>(column);
  }
  std::vector<int> counted() const;
  std::pair<int, int> best_square(int column, int row, const std::vector<int>& sums) const;
  void spread(int column, int row, int number);
  std::vector<geometry::Polygon> runs(int patch, Corners corners) const;

  TankAxes axes_;
  std::vector<geometry::Polygon> floor_;  // convex parts
  double along0_ = 0, in0_ = 0;
  double step_along_ = 1, step_in_ = 1;
  int columns_ = 1, rows_ = 1;
  std::vector<char> marked_;
  std::vector<int> patch_;  // by step; -1: not worked
};

}  // namespace squaredig::base
