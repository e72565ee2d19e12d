#include <algorithm>
#include <cmath>

#include "pegs/remade_internal.h"
#include "quantity/number_text.h"

namespace squaredig::pegs {
namespace {

constexpr double kOneSided = 1.645;  // normal quantile of 0.95

// What was measured, with the standard deviation of each coordinate where the file states one.
struct Measured {
  PegSet pegs;
  std::vector<std::optional<Length>> sigma;
  std::size_t without_sigma = 0;
};

PegSet designed_set(const Work& work, const PegsResult& design) {
  PegSet set;
  for (const PegSpot spot : all_spots(work.tank())) {
    const auto* peg = find_peg(design.reference, peg_name(spot));
    set.at.push_back(peg != nullptr ? std::optional(peg->at) : std::nullopt);
  }
  return set;
}

// Everything that is set out and no reference peg, with the direction its deltas are told along: a
// corner's leading side, a pipe's side, A-B for a shaft.
struct OtherPoint {
  std::string name;
  GridPoint at;
  Bearing way;
};
std::vector<OtherPoint> other_points(const Work& work, const PegsResult& design) {
  std::vector<OtherPoint> others;
  const design::Tank& tank = work.tank();
  for (std::size_t i = 0; i < design.corners.size(); ++i)
    others.push_back({design.corners[i].name, design.corners[i].at.at, tank.side_bearing(i)});
  for (const PipePoint& pipe : design.pipes)
    for (std::size_t i = 0; i < tank.sides(); ++i)
      if (tank.side_name(i) == pipe.side)
        others.push_back({pipe.name, pipe.at, tank.side_bearing(i)});
  for (const ShaftPoint& shaft : design.shafts) others.push_back({shaft.name, shaft.at, tank.ab});
  return others;
}

void tell_strangers(const PegsResult& design, const std::vector<OtherPoint>& others,
                    const PointTable& table, ResultHead& head) {
  std::set<std::string_view> known;
  for (const ReferencePeg& peg : design.reference) known.insert(peg.name);
  for (const OtherPoint& other : others) known.insert(other.name);
  std::set<std::string_view> seen;
  std::vector<std::string_view> strangers;
  for (std::size_t i = 0; i < table.size(); ++i) {
    const std::string_view name = table.label(i);
    if (!known.contains(name))
      strangers.push_back(name);
    else if (!seen.insert(name).second)
      head.findings.push_back(
          {"as-set-twice", "As set: " + quoted(name) +
                               " was measured more than once; the first measurement is used."});
  }
  if (strangers.empty()) return;
  head.cautions.push_back("As set: " + std::to_string(strangers.size()) + " measured " +
                          (strangers.size() == 1 ? "point is" : "points are") +
                          " nothing that is set out and left aside, the first " +
                          quoted(strangers.front()) + ".");
}

Measured measured_set(const Work& work, const PegSet& designed, ResultHead& head) {
  const PointTable& table = *work.input.as_set;
  Measured m;
  for (std::size_t number = 0; number < designed.at.size(); ++number) {
    const std::string name = peg_name(spot_of(number));
    const auto row = table.find(name);
    const bool wanted = designed.at[number].has_value();
    m.pegs.at.push_back(wanted && row ? std::optional(table.points[*row].at.at) : std::nullopt);
    m.sigma.push_back(wanted && row ? table.points[*row].sigma_plan() : std::nullopt);
    if (wanted && !row)
      head.findings.push_back(
          {"as-set-missing",
           "As set: peg " + name + " was not measured; what depends on it is not proven."});
    if (wanted && row && !m.sigma.back()) ++m.without_sigma;
  }
  if (m.without_sigma > 0)
    head.assumed.push_back("As set: no sigma_plan_mm is stated for " +
                           std::to_string(m.without_sigma) +
                           " of the pegs; their positions are taken as without error.");
  return m;
}

// The offset of a measured point along a bearing and to its right.
PegDelta delta_of(std::string name, GridPoint measured, GridPoint designed, Bearing way) {
  PegDelta d;
  d.name = std::move(name);
  d.measured = measured;
  d.delta_e = measured.easting - designed.easting;
  d.delta_n = measured.northing - designed.northing;
  const double s = sine(way.from_north());
  const double c = cosine(way.from_north());
  d.along = d.delta_e * s + d.delta_n * c;
  d.across = d.delta_e * c - d.delta_n * s;
  return d;
}

std::vector<PegDelta> deltas_of(const Work& work, const std::vector<OtherPoint>& others,
                                const PegSet& designed, const PegSet& measured) {
  std::vector<PegDelta> deltas;
  for (std::size_t number = 0; number < measured.at.size(); ++number)
    if (measured.at[number])
      deltas.push_back(delta_of(peg_name(spot_of(number)), *measured.at[number],
                                *designed.at[number], outward(work.tank(), spot_of(number))));
  const PointTable& table = *work.input.as_set;
  for (const OtherPoint& other : others)
    if (const auto row = table.find(other.name))
      deltas.push_back(delta_of(other.name, table.points[*row].at.at, other.at, other.way));
  return deltas;
}

// Standard deviation of a deviation: by differences over each peg's coordinates, in the direction
// in which it is greatest.
double sigma_of(const Deviation& deviation, const Measured& m) {
  constexpr double kStep = 0.001;
  double ee = 0, en = 0, nn = 0;
  const std::set<std::size_t> pegs(deviation.pegs.begin(), deviation.pegs.end());
  for (const std::size_t peg : pegs) {
    if (!m.sigma[peg]) continue;
    for (const Length step_e : {Length::metres(kStep), Length{}}) {
      const Length step_n = Length::metres(kStep) - step_e;
      PegSet up = m.pegs, down = m.pegs;
      up.at[peg] = GridPoint{up.at[peg]->easting + step_e, up.at[peg]->northing + step_n};
      down.at[peg] = GridPoint{down.at[peg]->easting - step_e, down.at[peg]->northing - step_n};
      const auto a = deviation.components(up);
      const auto b = deviation.components(down);
      if (!a || !b) continue;
      const double s = m.sigma[peg]->in_metres() / (2 * kStep);
      const double first = ((*a)[0] - (*b)[0]) * s;
      const double second = a->size() > 1 ? ((*a)[1] - (*b)[1]) * s : 0;
      ee += first * first;
      en += first * second;
      nn += second * second;
    }
  }
  return std::sqrt((ee + nn + std::hypot(ee - nn, 2 * en)) / 2);
}

Verdict judged(double value, double limit, double uncertainty) {
  if (value + uncertainty <= limit) return Verdict::Conforms;
  return value - uncertainty > limit ? Verdict::DoesNotConform : Verdict::NotProven;
}

Check check_of(const Deviation& deviation, const Measured& m) {
  Check check;
  check.name = deviation.name;
  check.limit = deviation.limit;
  const auto value = size_of(deviation, m.pegs);
  if (!value) {
    check.verdict = deviation.limit ? Verdict::NotProven : Verdict::NotAsked;
    return check;
  }
  check.value = Length::metres(*value);
  const double u = kOneSided * sigma_of(deviation, m);
  if (std::any_of(deviation.pegs.begin(), deviation.pegs.end(),
                  [&](std::size_t peg) { return m.sigma[peg].has_value(); }))
    check.uncertainty = Length::metres(u);
  if (deviation.limit) check.verdict = judged(*value, deviation.limit->in_metres(), u);
  return check;
}

void add_remade(const Work& work, const PegsResult& design, const PegSet& measured,
                AsSetResult& result) {
  std::vector<GridPoint> corners;
  for (std::size_t i = 0; i < work.tank().sides(); ++i) {
    const auto at = remade_corner(measured, i);
    if (!at) continue;
    const GridPoint target = work.tank().corners[i];
    result.corners.push_back({design::Tank::corner_name(i), *at, at->easting - target.easting,
                              at->northing - target.northing, distance(target, *at)});
    corners.push_back(*at);
  }
  const std::size_t n = work.tank().sides();
  if (corners.size() != n) return;
  result.sides = sides_of(corners, design.scale.combined);
  result.diagonals = diagonals_of(corners, design.scale.combined);
  if (n == 4) result.diagonal_difference = result.diagonals[0].grid - result.diagonals[1].grid;
  double greatest = 0;
  for (std::size_t i = 0; i < n; ++i)
    greatest = std::max(
        greatest,
        std::abs(
            (interior_angle(corners, i) - interior_angle(work.tank().corners, i)).in_seconds()));
  result.out_of_square = Angle::seconds(greatest);
}

// "Move peg A1 30.0 mm toward corner A and 4.0 mm to the right, seen from the corner."
std::string words_of(const PegMove& move) {
  const std::string corner = move.name.substr(0, move.name.size() - 1);
  std::string text = "Move peg " + move.name;
  if (abs(move.along) >= Length::millimetres(0.05))
    text += " " + millimetres_text(abs(move.along)) +
            (move.along < Length{} ? " toward corner " : " away from corner ") + corner;
  if (abs(move.across) >= Length::millimetres(0.05))
    text += std::string(abs(move.along) >= Length::millimetres(0.05) ? " and" : "") + " " +
            millimetres_text(abs(move.across)) +
            (move.across < Length{} ? " to the left" : " to the right") + ", seen from corner " +
            corner;
  return text + ".";
}

void add_moves(const std::vector<Deviation>& deviations, const PegSet& measured,
               const PegSet& designed, AsSetResult& result) {
  const Moves moves = fewest_moves(deviations, measured, designed);
  for (const std::size_t number : moves.pegs) {
    const std::string name = peg_name(spot_of(number));
    const auto delta = std::find_if(result.points.begin(), result.points.end(),
                                    [&](const PegDelta& d) { return d.name == name; });
    result.moves.push_back({name, -delta->along, -delta->across});
    result.moves_words += (result.moves_words.empty() ? "" : " ") + words_of(result.moves.back());
  }
  if (!moves.searched_all) result.moves_words += " Found peg by peg: fewer moves may do.";
}

Verdict overall(const std::vector<Check>& checks) {
  const auto any = [&](Verdict v) {
    return std::any_of(checks.begin(), checks.end(),
                       [&](const Check& c) { return c.verdict == v; });
  };
  if (any(Verdict::DoesNotConform)) return Verdict::DoesNotConform;
  if (any(Verdict::NotProven)) return Verdict::NotProven;
  return any(Verdict::Conforms) ? Verdict::Conforms : Verdict::NotAsked;
}

// What is outside, worst first, and what to do about it.
void tell_outside(const AsSetResult& result, ResultHead& head) {
  if (result.verdict != Verdict::DoesNotConform) return;
  const Check* worst = nullptr;
  for (const Check& check : result.checks)
    if (check.verdict == Verdict::DoesNotConform &&
        (worst == nullptr || check.value / *check.limit > worst->value / *worst->limit))
      worst = &check;
  head.findings.push_back({"as-set", "As set: " + worst->name + " is " +
                                         millimetres_text(worst->value) + " off (permitted " +
                                         millimetres_text(*worst->limit) + "). " +
                                         result.moves_words});
}

}  // namespace

AsSetResult check_as_set(const Work& work, const PegsResult& design, ResultHead& head) {
  const auto others = other_points(work, design);
  tell_strangers(design, others, *work.input.as_set, head);
  const PegSet designed = designed_set(work, design);
  const Measured measured = measured_set(work, designed, head);
  AsSetResult result;
  result.points = deltas_of(work, others, designed, measured.pegs);
  add_remade(work, design, measured.pegs, result);
  const auto deviations = deviations_of(work, design, designed);
  for (const Deviation& d : deviations) result.checks.push_back(check_of(d, measured));
  result.verdict = overall(result.checks);
  add_moves(deviations, measured.pegs, designed, result);
  tell_outside(result, head);
  return result;
}

}  // namespace squaredig::pegs
