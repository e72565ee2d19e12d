// Pegs as they were measured, the strings through them, and what the crossing strings re-make.
#pragma once

#include <functional>
#include <set>

#include "pegs/parts_internal.h"

namespace squaredig::pegs {

// The pegs of a tank by place in one fixed order: A1, A2, B1, B2, ...
struct PegSet {
  std::vector<std::optional<GridPoint>> at;  // nothing: not measured, or left out
  std::size_t corners() const { return at.size() / 2; }
};
constexpr std::size_t number_of(PegSpot spot) {
  return 2 * spot.corner + (spot.which == Which::Second ? 1 : 0);
}
constexpr PegSpot spot_of(std::size_t number) {
  return {number / 2, number % 2 == 0 ? Which::First : Which::Second};
}

// The crossing of the two strings at a corner; nothing where a peg is missing or the strings cross
// at less than one degree.
std::optional<GridPoint> remade_corner(const PegSet& pegs, std::size_t corner);

// One thing that pegs as set can be judged by: one or two components that should be zero.
struct Deviation {
  std::string name;
  std::optional<Length> limit;
  std::vector<std::size_t> pegs;  // whose places it depends on
  // Nothing where it cannot be told from these pegs.
  std::function<std::optional<std::vector<double>>(const PegSet&)> components;
};
std::vector<Deviation> deviations_of(const Work& work, const PegsResult& design,
                                     const PegSet& designed);

// The length of the components.
std::optional<double> size_of(const Deviation& deviation, const PegSet& pegs);

// The fewest pegs that, put back to where they were designed, bring every deviation inside its
// limit; among equally few those that leave least. `searched_all` is false where the search was cut
// short and the answer was built peg by peg.
struct Moves {
  std::vector<std::size_t> pegs;
  bool searched_all = true;
};
Moves fewest_moves(const std::vector<Deviation>& deviations, const PegSet& measured,
                   const PegSet& designed);

}  // namespace squaredig::pegs
