#include <algorithm>
#include <cmath>

#include "pegs/parts_internal.h"

namespace squaredig::pegs {
namespace {

// Variance of a string's sideways place at one of its corners, for pegs of variance one: the string
// is drawn between its two pegs, so the nearer peg counts more.
std::optional<double> string_variance(const design::Tank& tank,
                                      const std::vector<ReferencePeg>& pegs, std::size_t side,
                                      GridPoint corner) {
  const auto* first = find_peg(pegs, peg_name({side, Which::First}));
  const auto* second = find_peg(pegs, peg_name({(side + 1) % tank.sides(), Which::Second}));
  if (first == nullptr || second == nullptr) return std::nullopt;
  const double t = distance(first->at, corner) / distance(first->at, second->at);
  return (1 - t) * (1 - t) + t * t;
}

std::optional<Ratio> strength(const design::Tank& tank, const std::vector<ReferencePeg>& pegs,
                              std::size_t corner) {
  const std::size_t behind = (corner + tank.sides() - 1) % tank.sides();
  const auto a = string_variance(tank, pegs, corner, tank.corners[corner]);
  const auto b = string_variance(tank, pegs, behind, tank.corners[corner]);
  const double crossing = sine(interior_angle(tank.corners, corner));
  if (!a || !b || crossing == 0) return std::nullopt;
  return Ratio::of(std::sqrt(*a + *b) / std::abs(crossing));
}

// Of two lines: at most 90 degrees.
Angle crossing_of(Angle interior) {
  const double turn = std::fmod(interior.in_degrees(), 180.0);
  return Angle::degrees(std::min(turn, 180.0 - turn));
}

}  // namespace

std::vector<Corner> corners_of(const Work& work, const std::vector<ReferencePeg>& pegs,
                               Ratio combined) {
  const design::Tank& tank = work.tank();
  std::vector<Corner> corners;
  for (std::size_t i = 0; i < tank.sides(); ++i) {
    Corner c;
    c.name = design::Tank::corner_name(i);
    c.at = {tank.corners[i], tank.underside.at(tank.corners[i])};
    c.dig_level = tank.dig_level.at(tank.corners[i]);
    c.interior_angle = interior_angle(tank.corners, i);
    c.crossing_angle = crossing_of(c.interior_angle);
    c.sigma_per_peg_sigma = strength(tank, pegs, i);
    for (const ReferencePeg& peg : pegs)
      if (peg.corner == c.name)
        c.recovery.push_back(
            {peg.name, peg.beyond_corner, geodesy::to_ground_length(peg.beyond_corner, combined)});
    corners.push_back(std::move(c));
  }
  return corners;
}

}  // namespace squaredig::pegs
