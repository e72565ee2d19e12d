// Taped lengths as a net: each length is one observation of the places of its two ends.
#pragma once

#include "pegs/parts_internal.h"

namespace squaredig::pegs {

// Ends by number; lengths in metres on the ground.
struct TapeLine {
  std::string name;
  std::size_t from = 0;
  std::size_t to = 0;
  double horizontal = 0;
  double design = 0;
};

// A shape that lengths fix: the ends' places, the first end at rest, the first line's direction
// too.
struct TapeShape {
  std::vector<double> e, n;
  std::vector<double> normalised;  // of each line used, residual over its standard deviation
  std::size_t freedom = 0;
};

// The least-squares shape of the lines but `without` (none: all); nothing where they do not fix it.
std::optional<TapeShape> shape_of(const std::vector<TapeLine>& lines,
                                  const std::vector<GridPoint>& designed, double ground_per_grid,
                                  std::optional<std::size_t> without);

// What the other lengths say of each length, and which one is most likely wrong.
struct TapeDoubt {
  std::vector<std::optional<double>> by_the_others;
  std::optional<std::size_t> wrong;
  std::vector<std::size_t> tied;  // where more than one explains the misfit as well
};
// A length is in doubt where it is more than its limit off what the others say.
TapeDoubt doubt(const std::vector<TapeLine>& lines, const std::vector<GridPoint>& designed,
                double ground_per_grid, const std::vector<double>& limits);

}  // namespace squaredig::pegs
