#include <algorithm>
#include <cmath>
#include <numeric>

#include "adjust/least_squares.h"
#include "pegs/tape_internal.h"

namespace squaredig::pegs {
namespace {

constexpr std::size_t kFixed = static_cast<std::size_t>(-1);

// Which unknown each end's easting and northing is. The first line's first end is at rest and its
// second end moves along the line alone: an unknown of its own for both coordinates.
struct Datum {
  std::vector<std::size_t> e, n;
  std::size_t unknowns = 0;
  std::size_t sliding = kFixed;
  double slide_e = 0, slide_n = 0;
};

Datum datum_of(const std::vector<TapeLine>& lines, const TapeShape& shape) {
  Datum d;
  d.e.assign(shape.e.size(), kFixed);
  d.n.assign(shape.e.size(), kFixed);
  const std::size_t rest = lines.front().from;
  d.sliding = lines.front().to;
  const double de = shape.e[d.sliding] - shape.e[rest];
  const double dn = shape.n[d.sliding] - shape.n[rest];
  const double length = std::hypot(de, dn);
  d.slide_e = de / length;
  d.slide_n = dn / length;
  d.e[d.sliding] = d.n[d.sliding] = d.unknowns++;
  for (std::size_t i = 0; i < d.e.size(); ++i)
    if (i != rest && i != d.sliding) {
      d.e[i] = d.unknowns++;
      d.n[i] = d.unknowns++;
    }
  return d;
}

void add_terms(const Datum& d, std::size_t end, double by_e, double by_n, adjust::Equation& row) {
  if (d.e[end] == kFixed) return;
  if (end == d.sliding) {
    row.terms.push_back({d.e[end], by_e * d.slide_e + by_n * d.slide_n});
    return;
  }
  row.terms.push_back({d.e[end], by_e});
  row.terms.push_back({d.n[end], by_n});
}

adjust::Equation equation_of(const TapeLine& line, const Datum& d, const TapeShape& shape) {
  const double de = shape.e[line.to] - shape.e[line.from];
  const double dn = shape.n[line.to] - shape.n[line.from];
  const double length = std::hypot(de, dn);
  adjust::Equation row;
  row.observed = line.horizontal - length;
  add_terms(d, line.to, de / length, dn / length, row);
  add_terms(d, line.from, -de / length, -dn / length, row);
  return row;
}

// Moves the shape; gives the greatest step.
double move(TapeShape& shape, const Datum& d, const std::vector<double>& by) {
  double greatest = 0;
  for (std::size_t i = 0; i < shape.e.size(); ++i) {
    if (d.e[i] == kFixed) continue;
    const bool slides = i == d.sliding;
    const double step_e = slides ? by[d.e[i]] * d.slide_e : by[d.e[i]];
    const double step_n = slides ? by[d.e[i]] * d.slide_n : by[d.n[i]];
    shape.e[i] += step_e;
    shape.n[i] += step_n;
    greatest = std::max({greatest, std::abs(step_e), std::abs(step_n)});
  }
  return greatest;
}

double length_in(const TapeShape& shape, const TapeLine& line) {
  return std::hypot(shape.e[line.to] - shape.e[line.from], shape.n[line.to] - shape.n[line.from]);
}

// How far the lengths of a shape are from the design's, all of them.
double from_design(const TapeShape& shape, const std::vector<TapeLine>& lines) {
  double sum = 0;
  for (const TapeLine& line : lines) {
    const double off = length_in(shape, line) - line.design;
    sum += off * off;
  }
  return std::sqrt(sum);
}

// The lines whose normalised residual is as great as the greatest, within what one length in doubt
// bends the geometry.
std::vector<std::size_t> equally_suspect(const std::vector<double>& normalised) {
  constexpr double kAsGreat = 0.95;
  double greatest = 0;
  for (const double w : normalised) greatest = std::max(greatest, std::abs(w));
  std::vector<std::size_t> suspects;
  for (std::size_t i = 0; i < normalised.size(); ++i)
    if (greatest > 0 && std::abs(normalised[i]) >= kAsGreat * greatest) suspects.push_back(i);
  return suspects;
}

}  // namespace

std::optional<TapeShape> shape_of(const std::vector<TapeLine>& lines,
                                  const std::vector<GridPoint>& designed, double ground_per_grid,
                                  std::optional<std::size_t> without) {
  constexpr int kMostRounds = 50;
  constexpr double kDone = 1e-10;
  std::vector<TapeLine> used;
  for (std::size_t i = 0; i < lines.size(); ++i)
    if (i != without) used.push_back(lines[i]);
  if (used.empty()) return std::nullopt;
  TapeShape shape;
  for (const GridPoint& p : designed) {
    shape.e.push_back((p.easting - designed[0].easting).in_metres() * ground_per_grid);
    shape.n.push_back((p.northing - designed[0].northing).in_metres() * ground_per_grid);
  }
  const Datum d = datum_of(used, shape);
  for (int round = 0; round < kMostRounds; ++round) {
    std::vector<adjust::Equation> rows;
    rows.reserve(used.size());
    for (const TapeLine& line : used) rows.push_back(equation_of(line, d, shape));
    const auto estimates = adjust::least_squares(d.unknowns, rows);
    if (!estimates) return std::nullopt;
    shape.freedom = estimates->freedom;
    shape.normalised.clear();
    for (const auto& o : estimates->observations)
      shape.normalised.push_back(o.normalised.value_or(0));
    const double step = move(shape, d, estimates->unknowns);
    if (!std::isfinite(step)) return std::nullopt;
    if (step < kDone) return shape;
  }
  return std::nullopt;
}

TapeDoubt doubt(const std::vector<TapeLine>& lines, const std::vector<GridPoint>& designed,
                double ground_per_grid, const std::vector<double>& limits) {
  TapeDoubt result;
  std::vector<double> left(lines.size());
  bool any = false;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const auto others = shape_of(lines, designed, ground_per_grid, i);
    result.by_the_others.push_back(others ? std::optional(length_in(*others, lines[i]))
                                          : std::nullopt);
    if (!others) continue;
    left[i] = from_design(*others, lines);
    any = any || std::abs(lines[i].horizontal - *result.by_the_others[i]) > limits[i];
  }
  if (!any) return result;
  // A length wrong beyond any shape leaves no shape of all: then every length is suspect.
  const auto all = shape_of(lines, designed, ground_per_grid, std::nullopt);
  std::vector<std::size_t> suspects(lines.size());
  std::iota(suspects.begin(), suspects.end(), std::size_t{0});
  if (all) suspects = equally_suspect(all->normalised);
  std::erase_if(suspects, [&](std::size_t i) { return !result.by_the_others[i]; });
  // Where the lengths alone cannot tell, the one without which the shape comes nearest to the
  // design.
  std::sort(suspects.begin(), suspects.end(), [&](std::size_t a, std::size_t b) {
    return left[a] != left[b] ? left[a] < left[b] : a < b;
  });
  if (suspects.empty()) return result;
  if (suspects.size() == 1 || 2 * left[suspects[0]] < left[suspects[1]])
    result.wrong = suspects[0];
  else
    for (const std::size_t i : suspects)
      if (left[i] <= 2 * left[suspects[0]]) result.tied.push_back(i);
  return result;
}

}  // namespace squaredig::pegs
