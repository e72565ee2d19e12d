#include <cmath>

#include "pegs/remade_internal.h"

namespace squaredig::pegs {
namespace {

struct Vector {
  double e = 0;
  double n = 0;
};
Vector between(GridPoint a, GridPoint b) {
  return {(b.easting - a.easting).in_metres(), (b.northing - a.northing).in_metres()};
}
double cross(Vector a, Vector b) { return a.e * b.n - a.n * b.e; }

// The pegs whose places decide a corner: both ends of its two strings.
void add_corner_pegs(std::size_t corner, std::size_t corners, std::vector<std::size_t>& pegs) {
  const std::size_t ahead = (corner + 1) % corners;
  const std::size_t behind = (corner + corners - 1) % corners;
  for (const PegSpot spot : {PegSpot{corner, Which::First}, PegSpot{ahead, Which::Second},
                             PegSpot{behind, Which::First}, PegSpot{corner, Which::Second}})
    pegs.push_back(number_of(spot));
}

Deviation corner_deviation(const Work& work, std::size_t i) {
  Deviation d;
  const GridPoint target = work.tank().corners[i];
  d.name = "corner " + design::Tank::corner_name(i);
  d.limit = work.input.tolerance;
  add_corner_pegs(i, work.tank().sides(), d.pegs);
  d.components = [i, target](const PegSet& pegs) -> std::optional<std::vector<double>> {
    const auto at = remade_corner(pegs, i);
    if (!at) return std::nullopt;
    const Vector off = between(target, *at);
    return std::vector{off.e, off.n};
  };
  return d;
}

// How far a peg stands from where the recovery distance says, along its string.
Deviation along_deviation(const Work& work, const ReferencePeg& peg, PegSpot spot) {
  Deviation d;
  d.name = "peg " + peg.name + " along";
  d.limit = work.input.tolerance;
  d.pegs = {number_of(spot)};
  const Angle way = outward(work.tank(), spot).from_north();
  const GridPoint designed = peg.at;
  d.components = [=](const PegSet& pegs) -> std::optional<std::vector<double>> {
    const auto& at = pegs.at[number_of(spot)];
    if (!at) return std::nullopt;
    const Vector off = between(designed, *at);
    return std::vector{off.e * sine(way) + off.n * cosine(way)};
  };
  return d;
}

Deviation length_deviation(const Work& work, std::string name, std::size_t i, std::size_t j,
                           std::optional<Length> limit) {
  Deviation d;
  d.name = std::move(name);
  d.limit = limit;
  add_corner_pegs(i, work.tank().sides(), d.pegs);
  add_corner_pegs(j, work.tank().sides(), d.pegs);
  const double designed = distance(work.tank().corners[i], work.tank().corners[j]).in_metres();
  d.components = [=](const PegSet& pegs) -> std::optional<std::vector<double>> {
    const auto a = remade_corner(pegs, i);
    const auto b = remade_corner(pegs, j);
    if (!a || !b) return std::nullopt;
    return std::vector{distance(*a, *b).in_metres() - designed};
  };
  return d;
}

// The diagonals' difference against the design's, of four corners.
Deviation diagonals_deviation(const Work& work) {
  Deviation d;
  d.name = "diagonal difference";
  d.limit = work.input.diagonal_tolerance;
  for (std::size_t number = 0; number < 8; ++number) d.pegs.push_back(number);
  const auto& c = work.tank().corners;
  const double designed = (distance(c[0], c[2]) - distance(c[1], c[3])).in_metres();
  d.components = [designed](const PegSet& pegs) -> std::optional<std::vector<double>> {
    std::vector<GridPoint> at;
    for (std::size_t i = 0; i < 4; ++i) {
      const auto corner = remade_corner(pegs, i);
      if (!corner) return std::nullopt;
      at.push_back(*corner);
    }
    return std::vector{(distance(at[0], at[2]) - distance(at[1], at[3])).in_metres() - designed};
  };
  return d;
}

}  // namespace

std::optional<GridPoint> remade_corner(const PegSet& pegs, std::size_t corner) {
  constexpr double kLeastSine = 0.0174524;  // one degree
  const std::size_t n = pegs.corners();
  const auto& a1 = pegs.at[number_of({corner, Which::First})];
  const auto& b2 = pegs.at[number_of({(corner + 1) % n, Which::Second})];
  const auto& d1 = pegs.at[number_of({(corner + n - 1) % n, Which::First})];
  const auto& a2 = pegs.at[number_of({corner, Which::Second})];
  if (!a1 || !b2 || !d1 || !a2) return std::nullopt;
  const Vector u = between(*a1, *b2);
  const Vector v = between(*d1, *a2);
  const double turn = cross(u, v);
  if (std::abs(turn) < kLeastSine * std::hypot(u.e, u.n) * std::hypot(v.e, v.n))
    return std::nullopt;
  const double t = cross(between(*a1, *d1), v) / turn;
  return GridPoint{a1->easting + Length::metres(t * u.e), a1->northing + Length::metres(t * u.n)};
}

std::vector<Deviation> deviations_of(const Work& work, const PegsResult& design,
                                     const PegSet& designed) {
  std::vector<Deviation> all;
  const std::size_t n = work.tank().sides();
  for (std::size_t i = 0; i < n; ++i) all.push_back(corner_deviation(work, i));
  for (std::size_t number = 0; number < designed.at.size(); ++number)
    if (const auto* peg = find_peg(design.reference, peg_name(spot_of(number))))
      all.push_back(along_deviation(work, *peg, spot_of(number)));
  for (std::size_t i = 0; i < n; ++i)
    all.push_back(length_deviation(work, "side " + work.tank().side_name(i), i, (i + 1) % n,
                                   work.input.side_tolerance));
  for (std::size_t i = 0; i + 2 < n; ++i)
    for (std::size_t j = i + 2; j < n; ++j)
      if (i != 0 || j != n - 1)
        all.push_back(length_deviation(
            work, "diagonal " + design::Tank::corner_name(i) + design::Tank::corner_name(j), i, j,
            work.input.diagonal_tolerance));
  if (n == 4) all.push_back(diagonals_deviation(work));
  return all;
}

std::optional<double> size_of(const Deviation& deviation, const PegSet& pegs) {
  const auto parts = deviation.components(pegs);
  if (!parts) return std::nullopt;
  return parts->size() == 1 ? std::abs((*parts)[0]) : std::hypot((*parts)[0], (*parts)[1]);
}

}  // namespace squaredig::pegs
